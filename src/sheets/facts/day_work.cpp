#include "sheets/facts/day_work.h"

#include "base/joined.h"
#include "model/lookup.h"

#include <algorithm>

namespace sheets {

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
  std::optional<model::ClockSpan> rest;
  for (const auto& duty : x.plan.duties) {
    const auto& s = duty.shift;
    if (duty.what != model::Duty::What::Rest || s.start.day != day.date) continue;
    if (!rest) rest = model::ClockSpan{s.start.minutes, s.end.minutes};
    rest->from = std::min(rest->from, s.start.minutes);
    rest->until = std::max(rest->until, s.end.minutes);
  }
  return rest;
}

std::string deckLetters(std::vector<std::size_t> decks, const char* between) {
  std::sort(decks.begin(), decks.end());
  std::vector<std::string> letters;
  for (const auto deck : decks) letters.push_back(deckLetter(deck));
  return base::joined(letters, between);
}

std::vector<std::pair<std::string, int>> tasksOf(const Day& day, const model::JobResult& x) {
  std::vector<std::pair<std::string, int>> tasks;
  for (const bool isWholeJob : {false, true}) {
    for (const auto* shift : day.shifts) {
      const auto& task = model::taskOf(x.content, shift->task);
      if ((task.measure == model::Measure::Job) != isWholeJob) continue;
      auto own =
          std::find_if(tasks.begin(), tasks.end(), [&](const auto& t) { return t.first == task.name; });
      if (own == tasks.end()) own = tasks.insert(tasks.end(), {task.name, 0});
      own->second += shift->end.minutes - shift->start.minutes;
    }
    if (!tasks.empty()) break;
  }
  return tasks;
}

model::ClockSpan onSite(const Day& day) { return {day.site->arrive.minutes, day.site->home.minutes}; }

std::string stripsText(const DayCoat& coat, const model::JobResult& x, const Formatter& w) {
  std::vector<std::int64_t> boards;
  for (const auto& s : coat.strips)
    if (s.strip->boards > 0) boards.push_back(s.strip->boards);
  if (boards.empty()) return {};
  const bool isStairs = std::holds_alternative<model::Stairs>(x.c.job.areas[coat.deck].shape);
  const std::string kind = isStairs ? "strips.treads." : "strips.boards.";
  if (isStairs && boards.size() == 1) return w(coat.edge->startsAtEnd ? "strips.top_down" : "strips.foot_up");
  if (boards.size() == 1) return w.counted("strips.boards.single", boards[0]);
  const auto count = std::to_string(boards.size());
  const bool isEven = std::all_of(boards.begin(), boards.end() - 1, [&](auto n) { return n == boards[0]; });
  if (!isEven) return {};
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

}  // namespace sheets
