#include "plan/plan.h"

#include "model/lookup.h"
#include "plan/coats.h"
#include "plan/dates.h"
#include "plan/zone.h"

#include <algorithm>

namespace plan {
namespace {

/// Clock minutes the whole crew needs for some person-hours, rounded up to five: nobody plans finer.
std::int64_t crewMinutes(base::Hours hours, const model::Crew& crew) {
  constexpr std::int64_t step = 5;
  const base::Wide wanted = base::Wide{hours.millionths} * 60;
  return step * base::divide(wanted, base::Wide{1'000'000} * crew.people * step, base::Round::Up);
}

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

/// Hours fit for coating where the job names none. Common practice: boards in the open are too hot after
/// midday, and by the sea the dew goes later.
Span coatingHours(const model::Job& job, Span day) {
  if (job.coatingUntil > 0)
    return {std::max(job.coatingFrom, day.from), std::min(job.coatingUntil, day.until)};
  switch (job.site.exposure) {
    case model::Exposure::Sheltered:
      return day;
    case model::Exposure::Open:
      return {day.from, std::min(day.until, 13 * 60)};
    case model::Exposure::Coastal:
      return {std::max(day.from, 9 * 60), std::min(day.until, 13 * 60)};
  }
  return day;
}

/// A task of a coat lays product when it is measured along the edges or over the surface that takes product;
/// blowing the boards clean before a coat does not.
bool isWet(const model::Task& task) {
  return task.measure == model::Measure::Wetted || task.measure == model::Measure::CutIn;
}

/// The labour sorted by when it is done.
struct Phases {
  std::vector<const model::LabourLine*> before, after;
  std::vector<DeckCoats> coats;
};

void addCoatTask(std::vector<DeckCoats>& decks, const model::LabourLine& line, const CoatTask& task) {
  auto deck = std::find_if(decks.begin(), decks.end(), [&](const auto& d) { return d.deck == *line.deck; });
  if (deck == decks.end()) deck = decks.insert(decks.end(), {*line.deck, {}});
  const auto coat = static_cast<std::size_t>(line.pass);
  if (deck->coats.size() < coat) deck->coats.resize(coat);
  deck->coats[coat - 1].push_back(task);
}

Phases phasesOf(const model::Estimate& e, const model::Content& content, const model::Crew& crew) {
  Phases phases;
  for (const auto& line : e.labour) {
    const auto& task = taskOf(content, line.task);
    const auto minutes = static_cast<int>(crewMinutes(line.hours, crew));
    if (task.measure == model::Measure::Day || minutes == 0) continue;
    if (task.isPerCoat) addCoatTask(phases.coats, line, {task.id, minutes, isWet(task)});
    else (phases.coats.empty() ? phases.before : phases.after).push_back(&line);
  }
  return phases;
}

bool canBePlanned(const model::Case& c, const model::Content& content, const Calendar& calendar, Span coating,
                  const model::Estimate& e, base::Diagnostics& messages) {
  const auto& job = c.job;
  const base::SourcePos nowhere;
  if (!calendar.hasTime(calendar.day(), job.start)) {
    messages.error(nowhere, "crew",
                   "leaves no time to work: setting up and packing down fill the day, or every day is off");
    return false;
  }
  base::Hours all, wet;
  for (const auto& line : e.labour) {
    all += line.hours;
    if (taskOf(content, line.task).isPerCoat) wet += line.hours;
  }
  if (!wet.isZero() && !calendar.hasTime(coating, job.start)) {
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
  return true;
}

}  // namespace

void checkZone(const model::Site& site, base::Diagnostics& messages) {
  if (isZone(site.timezone)) return;
  messages.error(site.timezonePos, "site.timezone", "'" + site.timezone + "' is not a known time zone",
                 "write it as in the tz database, e.g. 'Pacific/Auckland'");
}

model::Plan makePlan(const model::Case& c, const model::Content& content, const model::Estimate& e,
                     base::Diagnostics& messages, const Bounds& bounds) {
  const auto& job = c.job;
  const auto [morning, evening] = dayEnds(content, job.crew);
  const Calendar calendar(job.crew, morning, evening);
  const Span coating = coatingHours(job, calendar.day());
  model::Plan plan;
  checkZone(c.job.site, messages);
  if (!messages.ok() || !canBePlanned(c, content, calendar, coating, e, messages)) return plan;
  plan.coatingFrom = coating.from;
  plan.coatingUntil = coating.until;

  const Phases phases = phasesOf(e, content, job.crew);
  base::LocalTime now = calendar.next({bounds.from.value_or(job.start), 0}, calendar.day());
  const auto place = [&](const model::LabourLine& line, base::LocalTime from) {
    for (const auto& part :
         calendar.fill(from, static_cast<int>(crewMinutes(line.hours, job.crew)), calendar.day())) {
      plan.shifts.push_back({line.task, line.deck, line.pass, part.start, part.end});
      now = part.end;
    }
  };
  // A washed deck has to dry before the next task on it; the crew waits where nothing else comes first in
  // order.
  std::vector<base::LocalTime> dry(job.areas.size(), now);
  for (const auto* line : phases.before) {
    place(*line, line->deck ? std::max(now, dry[*line->deck]) : now);
    const auto& wait = taskOf(content, line->task).dryAfter;
    if (line->deck && !wait.isZero()) dry[*line->deck] = after(job.site.timezone, now, wait);
  }
  if (!phases.coats.empty()) {
    for (const auto d : dry) now = std::max(now, d);
    placeCoats(plan, phases.coats, c, calendar, coating, now);
  }
  plan.finished = now = plan.shifts.empty() ? now : plan.shifts.back().end;
  for (const auto* line : phases.after) place(*line, now);

  if (!phases.coats.empty()) addDates(plan, c, calendar);
  for (const auto& shift : plan.shifts) {
    if (plan.days.empty() || plan.days.back() != shift.start.day) plan.days.push_back(shift.start.day);
  }
  return plan;
}

}  // namespace plan
