#include "sheets/day_work.h"

#include "model/lookup.h"

#include <algorithm>

namespace sheets {
namespace {

/// Shifts that make one line of the day: all of a coat on a deck; the passes of one task on a deck; short
/// pieces of one task on several decks.
struct Line {
  std::vector<const model::Shift*> shifts;
  const model::Task* task = nullptr;  // of the first
};

bool belongs(const model::Shift& next, const Line& line, const Computed& x) {
  constexpr int shortPiece = 30;  // minutes
  const auto& last = *line.shifts.back();
  const auto& task = model::taskOf(x.content, next.task);
  if (!next.deck || !last.deck) return false;
  const bool isOneDeck = std::all_of(line.shifts.begin(), line.shifts.end(),
                                     [&](const auto* s) { return s->deck == next.deck; });
  if (isOneDeck)
    return (task.isPerCoat && line.task->isPerCoat && next.pass == last.pass) ||
           (task.isPerPass && next.task == last.task);
  const auto isShort = [](const model::Shift& s) { return s.end.minutes - s.start.minutes <= shortPiece; };
  return next.task == last.task && next.pass == last.pass && !model::laysProduct(task) && isShort(next) &&
         isShort(last);
}

std::vector<Line> linesOf(const Day& day, const Computed& x) {
  std::vector<Line> lines;
  for (const auto* s : day.shifts) {
    if (!lines.empty() && belongs(*s, lines.back(), x)) lines.back().shifts.push_back(s);
    else lines.push_back({{s}, &model::taskOf(x.content, s->task)});
  }
  return lines;
}

/// 'sand, 40 and 60 grit' 'blow clean, cut in 07:55, oil 08:25'
std::string whatText(const Line& line, const Computed& x, const Words& w) {
  const bool isOneTask = std::all_of(line.shifts.begin(), line.shifts.end(),
                                     [&](const auto* s) { return s->task == line.task->id; });
  if (!isOneTask) {
    std::string s;
    for (const auto* shift : line.shifts) {
      const auto& name = model::taskOf(x.content, shift->task).name;
      s += s.empty() ? name : ", " + w("day.step", {{"task", name}, {"time", w.clock(shift->start.minutes)}});
    }
    return s;
  }
  if (!line.task->isPerPass) return line.task->name;
  std::vector<std::string> grits;
  for (const auto* shift : line.shifts) {
    const auto grit = std::to_string(shift->pass);
    if (std::find(grits.begin(), grits.end(), grit) == grits.end()) grits.push_back(grit);
  }
  return w("day.grit", {{"task", line.task->name}, {"grit", w.joined(grits)}});
}

/// The name of one deck, the letters of more.
std::string whereText(const Line& line, const Computed& x, const Words& w) {
  constexpr std::size_t mostNamed = 1;
  std::vector<std::string> names, letters;
  for (const auto* s : line.shifts) {
    if (!s->deck) continue;
    const auto name = deckName(x, *s->deck);
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    names.push_back(name);
    letters.push_back(deckLetter(*s->deck));
  }
  return w.joined(names.size() > mostNamed ? letters : names);
}

/// What still stands on the boards is wiped off a while after each strip: from the first to the last of the
/// day. Nothing for a product that is not wiped.
model::ClockSpan wipingOff(const Day& day, const Computed& x) {
  const auto wait = static_cast<int>(x.c.product->times.wipeOff.millionths * 60 / 1'000'000);
  if (wait == 0 || day.coats.empty()) return {};
  model::ClockSpan span{24 * 60, 0};
  for (const auto& coat : day.coats) {
    span.from = std::min(span.from, coat.strips.empty() ? coat.from : coat.strips.front().start);
    span.until = std::max(span.until, coat.until);
  }
  return {span.from + wait, span.until + wait};
}

std::string coatedLetters(const Day& day, const Words& w) {
  std::vector<std::string> letters;
  for (const auto& coat : day.coats) {
    const auto letter = deckLetter(coat.deck);
    if (std::find(letters.begin(), letters.end(), letter) == letters.end()) letters.push_back(letter);
  }
  return w.joined(letters);
}

}  // namespace

std::string deckName(const Computed& x, std::size_t deck) {
  return deckLetter(deck) + "\u00A0" + x.c.job.areas[deck].name;
}

std::string span(int from, int until, const Words& w) {
  std::string start = w.clock(from);
  const std::string end = w.clock(until);
  const auto half = start.find("\u00A0");  // before 'am' or 'pm'
  if (half != std::string::npos && end.ends_with(start.substr(half))) start.resize(half);
  return w("day.span", {{"from", start}, {"to", end}});
}

std::string stripsText(const DayCoat& coat, const Computed& x, const Words& w) {
  if (coat.edge == nullptr) return {};
  if (coat.strips.empty()) return w("strips.none");
  const bool isStairs = std::holds_alternative<model::Stairs>(x.c.job.areas[coat.deck].shape);
  const std::string kind = isStairs ? "strips.treads." : "strips.boards.";
  const auto& strips = coat.strips;
  std::vector<std::int64_t> boards;
  for (const auto& s : strips) boards.push_back(s.strip->boards);
  if (isStairs && boards.size() == 1) return w(coat.edge->startsAtEnd ? "strips.top_down" : "strips.foot_up");
  if (boards.size() == 1) return w.counted("strips.boards.single", boards[0]);
  const auto count = std::to_string(boards.size());
  const bool isEven = std::all_of(boards.begin(), boards.end() - 1, [&](auto n) { return n == boards[0]; });
  const auto [least, most] = std::minmax_element(boards.begin(), boards.end());
  if (!isEven)
    return w(kind + "range",
             {{"count", count}, {"range", w.range(std::to_string(*least), std::to_string(*most))}});
  const auto equal = w.counted(kind + "equal", boards[0], {{"count", count}});
  return boards.back() == boards[0]
             ? equal
             : w("strips.last", {{"strips", equal}, {"last", std::to_string(boards.back())}});
}

std::string litresText(std::int64_t steps, const Words& w) {
  return w.volumeNumber(steps) + "\u00A0" + w.volumeUnit();
}

std::string degreesText(double celsius, const Words& w) {
  return w.temperature(
      base::Temperature::whole(static_cast<std::int64_t>(celsius + (celsius < 0 ? -0.5 : 0.5))));
}

std::string degreesText(double least, double most, const Words& w) {
  const auto low = degreesText(least, w), high = degreesText(most, w);
  if (low == high) return low;
  return w("day.temperatures", {{"from", low.substr(0, low.find("\u00A0"))}, {"to", high}});
}

FactList workFacts(const Day& day, const Computed& x, const Words& w) {
  FactList rows;
  const auto row = [&](const std::string& time, const std::string& what, const std::string& where) {
    rows.push_back({{"time", time},
                    {"what", capitalised(what)},
                    {"where", where},
                    {"strips", ""},
                    {"area", ""},
                    {"rate", ""},
                    {"litres", ""}});
  };
  std::vector<std::string> morning, evening;
  bool isMorning = true;
  for (const auto& task : x.content.tasks) {
    if (task.measure != model::Measure::Day) isMorning = false;
    else (isMorning ? morning : evening).push_back(task.name);
  }
  const auto& crew = x.c.job.crew;
  const auto lines = linesOf(day, x);
  constexpr std::size_t fullPage = 6;  // below the chart of the hours
  const bool hasRoom = day.coats.empty() || lines.size() < fullPage;
  if (!morning.empty() && hasRoom) row(w.clock(crew.startMinutes), w.joined(morning), "");
  for (const auto& line : lines) {
    const auto& first = *line.shifts.front();
    row(span(first.start.minutes, line.shifts.back()->end.minutes, w), whatText(line, x, w),
        whereText(line, x, w));
    const bool laysSurface = std::any_of(line.shifts.begin(), line.shifts.end(), [&](const auto* shift) {
      const auto& task = model::taskOf(x.content, shift->task);
      return model::laysProduct(task) && task.measure == model::Measure::Wetted;
    });
    for (const auto& coat : day.coats) {
      if (!laysSurface || coat.deck != first.deck || coat.coat != first.pass) continue;
      rows.back()[3].second = stripsText(coat, x, w);
      rows.back()[4].second = w.area(coat.area);
      rows.back()[5].second = w.roundSpread(coat.need->rate);
      rows.back()[6].second = litresText(coat.litres, w);
    }
  }
  int end = day.shifts.empty() ? crew.startMinutes : day.shifts.back()->end.minutes;
  if (const auto wiping = wipingOff(day, x); wiping.until > wiping.from) {
    const auto wait = x.c.product->times.wipeOff;
    row(span(wiping.from, wiping.until, w),
        w("day.wipe_off", {{"wait", wait == base::Hours::whole(1) ? w("waits.an_hour") : w.wait(wait)}}),
        coatedLetters(day, w));
    end = std::max(end, wiping.until);
  }
  if (!evening.empty() && hasRoom) row(w.clock(end), w.joined(evening), "");
  return rows;
}

}  // namespace sheets
