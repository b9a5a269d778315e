#include "schedule/plan.h"

#include "model/crew_time.h"
#include "model/lookup.h"
#include "schedule/crew/outcome.h"

namespace schedule {
namespace {

/// Minutes of every day that the day's own tasks take so many people: those listed before any other task, and
/// those after.
std::pair<int, int> dayEnds(const model::Content& content, int people) {
  int morning = 0, evening = 0;
  bool isMorning = true;
  for (const auto& t : content.tasks) {
    if (t.measure != model::Measure::Day) isMorning = false;
    else (isMorning ? morning : evening) += static_cast<int>(model::crewMinutes(t.hoursEach, people));
  }
  return {morning, evening};
}

bool canBePlanned(const Desk& desk, const model::Content& content, const model::Estimate& e, base::Date start,
                  base::Diagnostics& messages) {
  constexpr int leastDay = 15;  // minutes
  const auto& calendar = desk.calendar;
  const Span coating = desk.open.bounds();
  const base::SourcePos nowhere;
  if (calendar.capacity() < leastDay || !calendar.hasWorkdays(start)) {
    messages.error(nowhere, "crew",
                   "leaves no time to work: setting up and packing down fill the day, or every day is off",
                   "give longer 'hours', or take days out of 'off'");
    return false;
  }
  base::Hours all, wet;
  for (const auto& line : e.labour) {
    all += line.hours;
    if (taskOf(content, line.task).isPerCoat) wet += line.hours;
  }
  if (!wet.isZero() && coating.until - coating.from < leastDay) {
    messages.error(nowhere, "coating", "the hours for coating lie outside the crew's working hours",
                   "give the hours of the day fit for coating, like 'coating: 13:00-17:00'");
    return false;
  }
  constexpr int workdaysOfAYear = 260;
  const auto& crew = desk.c.job.crew;
  const bool isLong = model::crewMinutes(all, crew.people) / calendar.capacity() > workdaysOfAYear;
  if (isLong || (!wet.isZero() &&
                 model::crewMinutes(wet, crew.people) / (coating.until - coating.from) > workdaysOfAYear)) {
    messages.error(nowhere, "crew", "the work would take more than a year", "check the sizes, or add people");
    return false;
  }
  return true;
}

}  // namespace

model::Plan makePlan(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
                     base::Diagnostics& messages, const Bounds& bounds) {
  std::vector<Calendar> calendars;
  for (int people = 1; people <= c.job.crew.people; ++people) {
    const auto [morning, evening] = dayEnds(content, people);
    calendars.emplace_back(c.job, c.region, morning, evening);
  }
  const AccessGraph graph(c.job);
  const base::Date start = bounds.from.value_or(c.job.start);
  OpenHours open(c, calendars.back(), start);
  DryingClock drying(c);
  const Desk desk{c, calendars, calendars.back(), graph, open, drying};
  if (!canBePlanned(desk, content, e, start, messages)) return {};
  std::vector<std::optional<Row>> rows(c.job.areas.size());
  for (const auto& placed : placedAsGiven(c.job.areas)) {
    auto& row = rows[placed.index] = rowOf(placed, c.job.areas[placed.index]);
    if (row) findReach(*row, graph.areas()[placed.index]);
  }
  const Found found = cheapest(desk, content, e, rows, start);
  if (found.best.empty()) {
    messages.error({}, "coating",
                   "no day holds a coat, not even of a part of an area, with all that belongs to it",
                   "give the crew longer 'hours', longer hours for 'coating:', or more people");
    return {};
  }
  const model::Plan plan = planOf(found, desk, content, e, start);
  warnOf(plan, c, bounds.by, messages);
  return plan;
}

}  // namespace schedule
