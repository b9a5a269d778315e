#include "sheets/facts/day_work.h"

#include "model/crew_time.h"
#include "model/wiping.h"

#include <algorithm>

namespace sheets {
namespace {

/// Shifts that make one line of the day: all of a coat on a deck; the passes of one task on a deck; short
/// pieces of one task on several decks.
struct Line {
  std::vector<model::Shift> shifts;
  const model::Task* task = nullptr;  // of the first

  int from() const { return shifts.front().start.minutes; }
  int until() const {
    int last = 0;
    for (const auto& shift : shifts) last = std::max(last, shift.end.minutes);
    return last;
  }
};

bool belongs(const model::Shift& next, const Line& line, const model::JobResult& x) {
  constexpr int shortPiece = 30;  // minutes
  const auto& last = line.shifts.back();
  const auto& task = model::taskOf(x.content, next.task);
  if (!next.deck || !last.deck) return false;
  const bool isOneDeck =
      std::all_of(line.shifts.begin(), line.shifts.end(), [&](const auto& s) { return s.deck == next.deck; });
  if (isOneDeck && task.isPerCoat) return line.task->isPerCoat && next.pass == last.pass;
  if (last.end < next.start) return false;
  if (isOneDeck) return task.isPerPass && next.task == last.task;
  const auto isShort = [](const model::Shift& s) { return s.end.minutes - s.start.minutes <= shortPiece; };
  return next.task == last.task && next.pass == last.pass && !model::laysProduct(task) && isShort(next) &&
         isShort(last);
}

/// A coat stays in one line with its litres; wiping has a line of its own.
std::vector<Line> linesOf(const Day& day, const model::JobResult& x) {
  std::vector<Line> lines;
  for (const auto* shift : day.shifts) {
    const auto& task = model::taskOf(x.content, shift->task);
    if (task.isWiping) continue;
    const auto own = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
      return task.isPerCoat && line.task->isPerCoat && belongs(*shift, line, x);
    });
    if (own != lines.end()) own->shifts.push_back(*shift);
    else if (!lines.empty() && !task.isPerCoat && belongs(*shift, lines.back(), x))
      lines.back().shifts.push_back(*shift);
    else lines.push_back({{*shift}, &task});
  }
  return lines;
}

/// 'sand, 40 and 60 grit' 'clear dust, cut in 07:55, oil 08:25'
std::string whatText(const Line& line, const model::JobResult& x, const Formatter& w) {
  const bool isOneTask = std::all_of(line.shifts.begin(), line.shifts.end(),
                                     [&](const auto& s) { return s.task == line.task->id; });
  if (!isOneTask) {
    std::string s;
    for (const auto& shift : line.shifts) {
      const auto& name = model::taskOf(x.content, shift.task).name;
      s += s.empty() ? name : ", " + w("day.step", {{"task", name}, {"time", w.clock(shift.start.minutes)}});
    }
    return s;
  }
  if (!line.task->isPerPass) return line.task->name;
  std::vector<std::string> grits;
  for (const auto& shift : line.shifts) {
    const auto grit = std::to_string(shift.pass);
    if (std::find(grits.begin(), grits.end(), grit) == grits.end()) grits.push_back(grit);
  }
  return w("day.grit", {{"task", line.task->name}, {"grit", w.joined(grits)}});
}

/// The name of one deck, the letters of more.
std::string whereText(const Line& line, const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t mostNamed = 1;
  std::vector<std::string> names, letters;
  for (const auto& s : line.shifts) {
    if (!s.deck) continue;
    const auto name = deckName(x, *s.deck);
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    names.push_back(name);
    letters.push_back(deckLetter(*s.deck));
  }
  return w.joined(names.size() > mostNamed ? letters : names);
}

/// Setting up or packing down: the tasks of every day before all others, or after them.
struct DailyTasks {
  std::vector<std::string> names;
  base::Hours hours;
};

struct DayEnds {
  DailyTasks morning, evening;
};

DayEnds dayEnds(const model::Content& content) {
  DayEnds ends;
  bool isMorning = true;
  for (const auto& task : content.tasks) {
    if (task.measure != model::Measure::Day) {
      isMorning = false;
      continue;
    }
    auto& tasks = isMorning ? ends.morning : ends.evening;
    tasks.names.push_back(task.name);
    tasks.hours += task.hoursEach;
  }
  return ends;
}

const model::SiteDay& siteDay(const Day& day, const model::JobResult& x) {
  return *std::find_if(x.plan.onSite.begin(), x.plan.onSite.end(),
                       [&](const auto& d) { return d.date == day.date; });
}

/// When packing down begins.
int packingDown(const Day& day, const model::JobResult& x) {
  return siteDay(day, x).home.minutes -
         static_cast<int>(model::crewMinutes(dayEnds(x.content).evening.hours, x.c.job.crew));
}

/// The rests of a day, from the first to begin to the last to end; nothing without one. 'isShared': all rest
/// at the same time.
struct Rest {
  model::ClockSpan span;
  bool isShared = true;
};
std::optional<Rest> restOf(const Day& day, const model::JobResult& x) {
  std::optional<Rest> rest;
  for (const auto& duty : x.plan.duties) {
    const auto& s = duty.shift;
    if (duty.what != model::Duty::What::Rest || s.start.day != day.date) continue;
    const bool isAll = s.people == x.c.job.crew.people;
    if (!rest) rest = Rest{{s.start.minutes, s.end.minutes}, isAll};
    rest->span.from = std::min(rest->span.from, s.start.minutes);
    rest->span.until = std::max(rest->span.until, s.end.minutes);
    rest->isShared = rest->isShared && isAll;
  }
  return rest;
}

std::string coatedLetters(const Day& day, const Formatter& w) {
  std::vector<std::string> letters;
  for (const auto& coat : day.coats) {
    const auto letter = deckLetter(coat.deck);
    if (std::find(letters.begin(), letters.end(), letter) == letters.end()) letters.push_back(letter);
  }
  return w.joined(letters);
}

}  // namespace

std::string deckName(const model::JobResult& x, std::size_t deck) {
  return deckLetter(deck) + "\u00A0" + x.c.job.areas[deck].name;
}

std::string span(int from, int until, const Formatter& w) {
  std::string start = w.clock(from);
  const std::string end = w.clock(until);
  const auto half = start.find("\u00A0");  // before 'am' or 'pm'
  if (half != std::string::npos && end.ends_with(start.substr(half))) start.resize(half);
  return w("day.span", {{"from", start}, {"to", end}});
}

std::optional<model::ClockSpan> breakOf(const Day& day, const model::JobResult& x) {
  const auto rest = restOf(day, x);
  return rest ? std::optional(rest->span) : std::nullopt;
}

model::ClockSpan onSite(const Day& day, const model::JobResult& x) {
  const auto& there = siteDay(day, x);
  return {there.arrive.minutes, there.home.minutes};
}

std::string stripsText(const DayCoat& coat, const model::JobResult& x, const Formatter& w) {
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

std::string litresText(std::int64_t steps, const Formatter& w) {
  return w.volumeNumber(steps) + "\u00A0" + w.volumeUnit();
}

std::string degreesText(double celsius, const Formatter& w) {
  return w.temperature(
      base::Temperature::whole(static_cast<std::int64_t>(celsius + (celsius < 0 ? -0.5 : 0.5))));
}

std::string degreesText(double least, double most, const Formatter& w) {
  const auto low = degreesText(least, w), high = degreesText(most, w);
  if (low == high) return low;
  return w("day.temperatures", {{"from", low.substr(0, low.find("\u00A0"))}, {"to", high}});
}

FactList workFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<std::pair<int, Facts>> rows;  // by their start
  const auto row = [&](int at, const std::string& time, const std::string& what,
                       const std::string& where) -> Facts& {
    rows.push_back({at,
                    {{"time", time},
                     {"what", capitalised(what)},
                     {"where", where},
                     {"strips", ""},
                     {"area", ""},
                     {"rate", ""},
                     {"litres", ""}}});
    return rows.back().second;
  };
  const auto [morning, evening] = dayEnds(x.content);
  const int arrival = onSite(day, x).from;
  if (!morning.names.empty()) row(arrival, w.clock(arrival), w.joined(morning.names), "");
  for (const auto& line : linesOf(day, x)) {
    const auto& first = line.shifts.front();
    Facts& facts =
        row(line.from(), span(line.from(), line.until(), w), whatText(line, x, w), whereText(line, x, w));
    const bool laysSurface = std::any_of(line.shifts.begin(), line.shifts.end(), [&](const auto& shift) {
      const auto& task = model::taskOf(x.content, shift.task);
      return model::laysProduct(task) && task.measure == model::Measure::Wetted;
    });
    for (const auto& coat : day.coats) {
      if (!laysSurface || coat.deck != first.deck || coat.coat != first.pass) continue;
      facts[3].second = stripsText(coat, x, w);
      if (coat.goesOn)
        facts[3].second =
            w("day.goes_on", {{"strips", stripsText(coat, x, w)}, {"day", w.shortDate(*coat.goesOn)}});
      facts[4].second = w.area(coat.area);
      facts[5].second = w.roundSpread(coat.need->rate);
      facts[6].second = litresText(coat.litres, w);
    }
  }
  if (const auto wiping = model::wipingOn(x.plan, x.content, day.date)) {
    const auto wait = x.c.product->times.wipeOff;
    row(wiping->from, span(wiping->from, wiping->until, w),
        w("day.wipe_off", {{"wait", wait == base::Hours::whole(1) ? w("waits.an_hour") : w.wait(wait)}}),
        coatedLetters(day, w));
  }
  if (const auto rest = restOf(day, x)) {
    const char* inTurns = x.c.job.site.isNearWater ? "day.break_in_turns_at_water" : "day.break_in_turns";
    row(rest->span.from, span(rest->span.from, rest->span.until, w),
        w(rest->isShared ? "day.break" : inTurns), "");
  }
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  if (!evening.names.empty()) {
    const bool hasRags = !day.coats.empty() && x.c.product->isDryingOil;
    const std::string what = w.joined(evening.names);
    const int end = packingDown(day, x);
    row(end, w.clock(end), hasRags ? w("day.pack_down_rags", {{"what", what}}) : what, "");
  }
  FactList list;
  for (auto& [at, facts] : rows) list.push_back(std::move(facts));
  return list;
}

}  // namespace sheets
