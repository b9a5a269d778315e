#include "schedule/plan.h"

#include "model/crew_time.h"
#include "model/lookup.h"
#include "model/wiping.h"
#include "schedule/crew/choice.h"
#include "schedule/crew/outcome.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

/// Minutes of every day that the day's own tasks take: those listed before any other task, and those after.
std::pair<int, int> dayEnds(const model::Content& content, const model::Crew& crew) {
  base::Hours morning, evening;
  bool isMorning = true;
  for (const auto& t : content.tasks) {
    if (t.measure != model::Measure::Day) isMorning = false;
    else (isMorning ? morning : evening) += t.hoursEach;
  }
  return {static_cast<int>(crewMinutes(morning, crew)), static_cast<int>(crewMinutes(evening, crew))};
}

Calendar calendarOf(const model::JobInputs& c, const model::Content& content) {
  const auto [morning, evening] = dayEnds(content, c.job.crew);
  return {c.job, c.region, morning, evening};
}

/// Minutes of a day with a coat that follow the last stroke: the last strip is wiped off, then what is done
/// for the whole job after the coats (the rags); at least the first, where the hours do not hold both.
std::vector<int> afterCoats(const model::JobInputs& c, const Work& work) {
  const int wiping = c.product ? model::wipeOffMinutes(c.product->times) : 0;
  int clearing = 0;
  for (const auto& piece : work.whole) {
    if (work.firstCoatRank && piece.rank > *work.firstCoatRank) clearing += piece.minutes;
  }
  return {wiping + clearing, wiping};
}

/// All that a plan is made from.
struct Desk {
  Calendar calendar;
  base::Date start;
  Work work;
  OpenHours open;
  DryingClock drying;
  SessionMaker maker;
  base::LocalTime now;

  Desk(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
       const Bounds& bounds)
      : calendar(calendarOf(c, content)),
        start(bounds.from.value_or(c.job.start)),
        work(workOf(e, content, c.job.crew)),
        open(c, calendar, start, afterCoats(c, work)),
        drying(c),
        maker(c, calendar, open, drying) {}
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;
};

bool canBePlanned(Desk& desk, const model::Content& content, const model::Estimate& e,
                  base::Diagnostics& messages) {
  const auto& job = desk.maker.job().job;
  const auto& calendar = desk.calendar;
  const Span coating = desk.open.bounds();
  const base::SourcePos nowhere;
  if (!calendar.hasTime(calendar.day(), desk.start)) {
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
  if (!wet.isZero() && !calendar.hasTime(coating, desk.start)) {
    messages.error(nowhere, "coating", "the hours for coating lie outside the crew's working hours",
                   "give the hours of the day fit for coating, like 'coating: 13:00-17:00'");
    return false;
  }
  constexpr int workdaysOfAYear = 260;
  const bool isLong = crewMinutes(all, job.crew) / calendar.workable(calendar.day()) > workdaysOfAYear;
  if (isLong ||
      (!wet.isZero() && crewMinutes(wet, job.crew) / calendar.workable(coating) > workdaysOfAYear)) {
    messages.error(nowhere, "crew", "the work would take more than a year", "check the sizes, or add people");
    return false;
  }
  desk.now = calendar.next({desk.start, 0}, calendar.day());
  return true;
}

/// Wiping off and packing down that end after the crew's hours: on how many days, and the latest.
void warnOfOvertime(const model::Plan& plan, const model::JobInputs& c, const model::Content& content,
                    const Calendar& calendar, base::Diagnostics& messages) {
  if (!c.product) return;
  const int packing = c.job.crew.endMinutes - calendar.day().until;
  int latest = 0, days = 0;
  base::LocalTime end;
  for (const auto day : plan.days) {
    const auto wiping = model::wipingOn(plan, content, c.product->times, day);
    if (!wiping || wiping->until <= calendar.day().until) continue;
    ++days;
    if (wiping->until <= latest) continue;
    latest = wiping->until;
    end = base::plusMinutes({day, 0}, latest + packing);
  }
  if (days == 0) return;
  const std::string more = days > 1 ? ", the latest of " + std::to_string(days) + " days" : "";
  messages.warn({}, "crew.hours",
                "wiping off and packing down end at " + base::isoClock(end.minutes) + " on " +
                    base::isoDate(end.day) + more + ", after the crew's hours end at " +
                    base::isoClock(c.job.crew.endMinutes),
                "give the crew longer hours, or end the coats sooner with 'coating:'");
}

}  // namespace

model::Plan makePlan(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
                     base::Diagnostics& messages, const Bounds& bounds) {
  Desk desk(c, content, e, bounds);
  if (!canBePlanned(desk, content, e, messages)) return {};
  const model::Plan plan = planOf(bestCourse(desk.work, desk.maker, e, desk.now), desk.maker, desk.now);
  warnOf(plan, c, bounds.by, messages);
  warnOfOvertime(plan, c, content, desk.calendar, messages);
  return plan;
}

std::vector<model::Alternative> otherStarts(const model::JobInputs& c, const model::Content& content,
                                            const model::Estimate& e, const Bounds& bounds) {
  base::Diagnostics messages;
  Desk desk(c, content, e, bounds);
  if (!canBePlanned(desk, content, e, messages)) return {};
  return alternativesTo(bestCourse(desk.work, desk.maker, e, desk.now), desk.work, desk.maker, e, desk.now);
}

}  // namespace schedule
