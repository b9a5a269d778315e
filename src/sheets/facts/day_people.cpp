#include "sheets/facts/day_people.h"

#include "base/joined.h"
#include "model/crew_time.h"
#include "model/lookup.h"
#include "sheets/facts/day_work.h"

#include <algorithm>

namespace sheets {
namespace {

constexpr int shortTurn = 20;  // minutes: what is no longer takes turns with what stands around it

/// One thing a person does: its word, and the strips or areas it is done on.
struct Doing {
  std::string verb;
  std::vector<int> strips;
  std::vector<std::size_t> decks;
};

struct Piece {
  int from = 0, until = 0;
  std::vector<Doing> doings;
  bool isWork = true;
  bool isDaily = false;  // setting up and packing down
  bool isTold = true;
};

bool isWork(const model::Duty& duty) { return duty.what == model::Duty::What::Task; }

std::string verbOf(const model::Duty& duty, const model::JobResult& x, const Formatter& w) {
  if (duty.what == model::Duty::What::Rest) return w("day.verbs.rests");
  if (duty.what == model::Duty::What::Wait) return w("day.verbs.waits");
  const auto& task = model::taskOf(x.content, duty.shift.task);
  if (duty.strip == 0) return task.name;
  if (task.isWiping) return w("day.verbs.wipes");
  return w(task.measure == model::Measure::CutIn ? "day.verbs.cuts_in" : "day.verbs.lays");
}

Piece pieceOf(const model::Duty& duty, const model::JobResult& x, const Formatter& w) {
  Piece piece{duty.shift.start.minutes, duty.shift.end.minutes, {{verbOf(duty, x, w), {}, {}}}, isWork(duty)};
  piece.isTold = duty.what != model::Duty::What::Wait;
  piece.isDaily = piece.isWork && model::taskOf(x.content, duty.shift.task).measure == model::Measure::Day;
  if (duty.strip > 0)
    for (int i = 0; i < duty.strips; ++i) piece.doings[0].strips.push_back(duty.strip + i);
  else if (duty.shift.deck) piece.doings[0].decks = {*duty.shift.deck};
  return piece;
}

bool does(const Piece& piece, const std::string& verb) {
  return std::any_of(piece.doings.begin(), piece.doings.end(), [&](const auto& d) { return d.verb == verb; });
}

void join(Piece& piece, const Piece& next) {
  piece.until = next.until;
  for (const auto& more : next.doings) {
    auto same = std::find_if(piece.doings.begin(), piece.doings.end(),
                             [&](const auto& d) { return d.verb == more.verb; });
    if (same == piece.doings.end()) {
      piece.doings.push_back(more);
      continue;
    }
    for (const int strip : more.strips) base::addOnce(same->strips, strip);
    for (const auto deck : more.decks) base::addOnce(same->decks, deck);
  }
}

/// Neighbours of one word are one piece, and so is what takes turns with a short one in between. Somebody who
/// waits a few minutes for the next strip is told to lay it all the same.
std::vector<Piece> joined(const std::vector<Piece>& pieces) {
  std::vector<Piece> out;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Piece whole = pieces[i];
    for (;;) {
      const bool isNext = i + 1 < pieces.size() && does(whole, pieces[i + 1].doings[0].verb);
      const bool isTurn = i + 2 < pieces.size() && whole.isWork && pieces[i + 2].isWork &&
                          pieces[i + 1].until - pieces[i + 1].from <= shortTurn &&
                          does(whole, pieces[i + 2].doings[0].verb);
      if (!isNext && !isTurn) break;
      if (isTurn && !isNext && pieces[i + 1].isWork) join(whole, pieces[i + 1]);
      i += isNext ? 1 : 2;
      join(whole, pieces[i]);
    }
    out.push_back(std::move(whole));
  }
  return out;
}

std::string lettersOf(const std::vector<std::size_t>& decks, const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t many = 3;
  const bool isAll = decks.size() > many && decks.size() == x.c.job.areas.size();
  return isAll ? w("day.every_letter") : deckLetters(decks, ",\u00A0");
}

std::string wordsOf(const Piece& piece, const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < piece.doings.size(); ++i) {
    const auto& doing = piece.doings[i];
    const auto object = doing.strips.empty() ? lettersOf(doing.decks, x, w) : numberRanges(doing.strips, w);
    const bool sharesObject = i + 1 < piece.doings.size() && doing.strips == piece.doings[i + 1].strips &&
                              doing.decks == piece.doings[i + 1].decks;
    parts.push_back(doing.verb);
    if (!object.empty() && !sharesObject) parts.back() += "\u00A0" + object;
  }
  return base::joined(parts);
}

std::string verbsOf(const Piece& piece) {
  std::vector<std::string> verbs;
  for (const auto& doing : piece.doings) verbs.push_back(doing.verb);
  return base::joined(verbs);
}

std::vector<Piece> piecesOf(std::size_t person, const Day& day, const model::JobResult& x,
                            const Formatter& w) {
  std::vector<Piece> pieces;
  for (const auto& duty : x.plan.duties) {
    const auto& who = duty.shift.who;
    if (duty.shift.start.day == day.date && std::find(who.begin(), who.end(), person) != who.end())
      pieces.push_back(pieceOf(duty, x, w));
  }
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const auto& a, const auto& b) { return a.from < b.from; });
  return joined(pieces);
}

std::string runText(const PersonRun& run, const Formatter& w) {
  return w("day.run", {{"time", w.shortClock(run.from)}, {"what", run.words}});
}

/// How many runs all begin their day with.
std::size_t sharedRuns(const std::vector<PersonRow>& rows) {
  std::size_t count = 0;
  const auto is = [](const PersonRun& a, const PersonRun& b) {
    return a.from == b.from && a.until == b.until && a.words == b.words;
  };
  for (; count < rows.front().runs.size(); ++count)
    for (const auto& row : rows)
      if (count >= row.runs.size() || !is(row.runs[count], rows.front().runs[count])) return count;
  return count;
}

/// Work that makes one line: the same people at one task, over their break, too.
struct Together {
  const model::Duty* first = nullptr;
  int from = 0, until = 0;
  int goesOnAt = 0;  // after the break, where one follows
  std::vector<int> passes;
  std::vector<std::size_t> decks;
  std::vector<std::string> tasks;  // in words, what is joined to it below
};

/// 'Sand, 40 and 60 grit'; the grits only where they are not those that were said before.
std::string taskWords(const Together& line, const std::vector<int>& before, const model::JobResult& x,
                      const Formatter& w) {
  const auto& task = model::taskOf(x.content, line.first->shift.task);
  if (!task.isPerPass || line.passes == before) return task.name;
  std::vector<std::string> grits;
  for (const int pass : line.passes) grits.push_back(std::to_string(pass));
  return w("day.grit", {{"task", task.name}, {"grit", w.joined(grits)}});
}

/// Tasks that follow each other on one area, and are short, are told in one line.
std::vector<Together> shortened(std::vector<Together> lines, const model::JobResult& x, const Formatter& w) {
  constexpr int shortTask = 60;  // minutes
  std::vector<Together> out;
  std::vector<int> said;
  for (auto& line : lines) {
    Together* last = out.empty() ? nullptr : &out.back();
    const bool isJoined = last && last->decks == line.decks &&
                          last->first->shift.who == line.first->shift.who && last->goesOnAt == line.from &&
                          std::min(line.until - line.from, last->until - last->from) < shortTask;
    if (!isJoined) said.clear();
    const auto words = taskWords(line, said, x, w);
    if (model::taskOf(x.content, line.first->shift.task).isPerPass) said = line.passes;
    if (isJoined) {
      last->until = line.until;
      last->goesOnAt = line.goesOnAt;
      last->tasks.push_back(words);
      continue;
    }
    line.tasks = {words};
    out.push_back(std::move(line));
  }
  return out;
}

bool goesOn(const Together& line, const model::Duty& next) {
  const auto& shift = line.first->shift;
  if (shift.task != next.shift.task || shift.who != next.shift.who ||
      next.shift.start.minutes != line.goesOnAt)
    return false;
  // Grits on one area, or one grit on several.
  return line.decks == std::vector{next.shift.deck.value_or(0)} ||
         line.passes == std::vector{next.shift.pass};
}

}  // namespace

std::string numberRanges(std::vector<int> numbers, const Formatter& w) {
  std::sort(numbers.begin(), numbers.end());
  std::vector<std::string> ranges;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t j = i;
    while (j + 1 < numbers.size() && numbers[j + 1] == numbers[j] + 1) ++j;
    const auto from = std::to_string(numbers[i]), to = std::to_string(numbers[j]);
    ranges.push_back(from);
    if (j == i + 1) ranges.push_back(to);
    if (j > i + 1) ranges.back() = w("day.span", {{"from", from}, {"to", to}});
    i = j + 1;
  }
  return base::joined(ranges);
}

std::string whoText(const std::vector<std::size_t>& who, const model::JobResult& x, const Formatter& w) {
  const auto& crew = x.c.job.crew;
  const auto people = static_cast<std::size_t>(crew.people);
  if (who.size() == 2 && people == 2) return w("day.both");
  if (who.size() == people && people > 1)
    return w.counted("day.everybody", crew.people, {{"words", w.spelled(crew.people)}});
  std::vector<std::string> first;
  for (std::size_t i = 0; i < people; ++i) {
    const auto name = i < crew.names.size() ? crew.names[i] : "";
    first.push_back(name.substr(0, name.find(' ')));
  }
  std::vector<std::string> names;
  for (const auto person : who) {
    const bool isUnique =
        !first[person].empty() && std::count(first.begin(), first.end(), first[person]) == 1;
    names.push_back(isUnique ? first[person] : model::personName(crew, person, w("day.person")));
  }
  return w.joined(names);
}

std::vector<PersonRow> peopleOf(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<PersonRow> rows;
  for (std::size_t person = 0; person < static_cast<std::size_t>(x.c.job.crew.people); ++person) {
    PersonRow row{model::personName(x.c.job.crew, person, w("day.person")), {}};
    for (const auto& piece : piecesOf(person, day, x, w))
      row.runs.push_back({piece.from, piece.until, verbsOf(piece), wordsOf(piece, x, w), piece.isWork,
                          piece.isTold && (row.runs.empty() || !piece.isDaily)});
    if (!row.runs.empty()) rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<PersonText> rowTexts(const std::vector<PersonRow>& rows, const model::JobResult& x,
                                 const Formatter& w) {
  std::vector<PersonText> texts;
  if (rows.empty()) return texts;
  const std::size_t shared = rows.size() == 1 ? 0 : sharedRuns(rows);
  const auto add = [&](std::string& text, const PersonRun& run) {
    text += (text.empty() ? "" : ", ") + runText(run, w);
  };
  if (shared > 0) {
    std::vector<std::size_t> everybody;
    for (std::size_t i = 0; i < rows.size(); ++i) everybody.push_back(i);
    texts.push_back({capitalised(whoText(everybody, x, w)), ""});
    for (std::size_t i = 0; i < shared; ++i) add(texts.back().text, rows.front().runs[i]);
  }
  for (const auto& row : rows) {
    texts.push_back({row.name, ""});
    for (std::size_t i = shared; i < row.runs.size(); ++i)
      if (row.runs[i].isTold) add(texts.back().text, row.runs[i]);
    texts.back().text +=
        (texts.back().text.empty() ? "" : ", ") +
        w("day.run", {{"time", w.shortClock(row.runs.back().until)}, {"what", w("day.home")}});
  }
  return texts;
}

std::string noteText(const PersonRun& run, const PersonText& text, const Formatter& w) {
  const auto note = runText(run, w);
  return run.isTold && text.text.find(note) != std::string::npos ? note : "";
}

std::vector<WorkLine> workLines(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<Together> lines;
  for (const auto& duty : x.plan.duties) {
    const auto& shift = duty.shift;
    if (shift.start.day != day.date) continue;
    if (duty.what == model::Duty::What::Rest) {
      for (auto& line : lines)
        if (line.goesOnAt == shift.start.minutes) line.goesOnAt = shift.end.minutes;
      continue;
    }
    if (!isWork(duty) || model::taskOf(x.content, shift.task).measure == model::Measure::Day) continue;
    auto own = std::find_if(lines.begin(), lines.end(), [&](const auto& l) { return goesOn(l, duty); });
    if (own == lines.end()) own = lines.insert(lines.end(), {&duty, shift.start.minutes, 0, 0, {}, {}, {}});
    Together& line = *own;
    line.until = line.goesOnAt = shift.end.minutes;
    base::addOnce(line.passes, shift.pass);
    if (shift.deck) base::addOnce(line.decks, *shift.deck);
  }
  std::vector<WorkLine> out;
  for (const auto& line : shortened(std::move(lines), x, w)) {
    out.push_back({line.from, line.until, capitalised(base::joined(line.tasks, "; ")),
                   lettersOf(line.decks, x, w), whoText(line.first->shift.who, x, w)});
  }
  return out;
}

}  // namespace sheets
