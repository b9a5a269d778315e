// Coats outside the product's ideal window or outside fit hours, with the reason.
#include "schedule/crew/outcome.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

/// The first day from 'from' on, within a year, with hours that hold so many minutes in the weather that is
/// usual.
std::optional<base::Date> nearestFit(const Desk& desk, std::size_t deck, int minutes, base::Date from) {
  const int wanted = std::min(minutes, 4 * 60);
  for (base::Date day = from; day < from + days{366}; day += days{1}) {
    if (!desk.calendar.isWorkday(day)) continue;
    for (const auto& span : desk.open.on(day, deck, Heed::All)) {
      if (span.until - span.from >= wanted) return day;
    }
  }
  return {};
}

/// Why the second of two coats does not fall into the ideal window.
void giveReason(model::WindowViolation& miss, const LaidCoat& before, const LaidCoat& coat,
                const Desk& desk) {
  const auto& times = desk.c.product->times;
  const auto& zone = desk.c.job.site.timezone;
  miss.why = model::WindowViolation::Why::Access;
  miss.gate = desk.open.trouble(miss.deck, after(zone, before.end, times.recoatIdealFrom),
                                after(zone, before.end, times.recoatIdealTo));
  if (miss.gate) {
    miss.why = model::WindowViolation::Why::Weather;
    return;
  }
  bool isWorkdayBetween = false;
  for (base::Date d = before.end.day + days{1}; d < coat.start.day; d += days{1})
    isWorkdayBetween = isWorkdayBetween || desk.calendar.isWorkday(d);
  if (!isWorkdayBetween)
    miss.why = coat.start.day > before.end.day + days{1} ? model::WindowViolation::Why::DaysOff
                                                         : model::WindowViolation::Why::CoatingHours;
}

}  // namespace

std::optional<model::DayHold> holdOf(const Schedule& schedule, std::size_t i, const Work& work,
                                     const Desk& desk, base::Date start) {
  using Why = model::DayHold::Why;
  const DayPlan& day = schedule.days[i];
  const base::Date before = i > 0 ? schedule.days[i - 1].date : start - days{1};
  if (day.date <= before + days{1}) return {};
  const base::Date free = desk.calendar.workdayBefore(day.date, 1);
  if (free <= before) return model::DayHold{Why::DaysOff, {}, {}};
  const LocalTime evening{free, desk.calendar.day().until};
  for (const auto& boards : schedule.washed) {
    if (boards.washed.day <= before && boards.dry > evening)
      return model::DayHold{Why::BoardsDry, boards.dry, {}};
  }
  for (const auto& coat : schedule.coats) {
    if (coat.start.day != day.date) continue;
    const auto* below = schedule.before(coat);
    if (below && below->recoat > evening) return model::DayHold{Why::CoatDry, below->recoat, {}};
    const auto gate = desk.open.trouble(work.units[coat.unit].deck, {before + days{1}, 0}, {day.date, 0});
    if (gate) return model::DayHold{Why::Weather, {}, gate};
  }
  if (!day.strips.empty()) return {};
  return model::DayHold{Why::BeforeCoat, {}, {}};
}

std::vector<model::WindowViolation> missesOf(const Work& work, const Schedule& schedule, const Desk& desk) {
  const auto& times = desk.c.product->times;
  std::vector<model::WindowViolation> misses;
  for (const auto& coat : schedule.coats) {
    const LaidCoat* before = schedule.before(coat);
    model::WindowViolation miss;
    miss.deck = work.units[coat.unit].deck;
    miss.coat = coat.coat;
    miss.isUnfit = coat.heed != Heed::All;
    bool isMissed = miss.isUnfit;
    if (before) {
      miss.gap = between(desk.c.job.site.timezone, before->end, coat.start);
      miss.isLate = miss.gap > times.recoatIdealTo;
      miss.isPastMax = coat.isLate;
      const bool isOutside = miss.isLate || miss.gap < times.recoatIdealFrom;
      isMissed = isMissed || isOutside;
      if (isOutside) giveReason(miss, *before, coat, desk);
    }
    if (!isMissed) continue;
    if (miss.isUnfit) {
      miss.why = model::WindowViolation::Why::Weather;
      miss.gate = desk.open.trouble(miss.deck, {coat.start.day, 0}, {coat.start.day + days{14}, 0});
      const int minutes = coat.end.minutes - coat.start.minutes;
      miss.nearest = nearestFit(desk, miss.deck, minutes, coat.start.day);
    }
    // A deck in parts is told once.
    const auto same = std::find_if(misses.begin(), misses.end(),
                                   [&](const auto& m) { return m.deck == miss.deck && m.coat == miss.coat; });
    if (same == misses.end()) misses.push_back(miss);
    else if (miss.isPastMax && !same->isPastMax) *same = miss;
  }
  std::stable_sort(misses.begin(), misses.end(), [](const auto& a, const auto& b) {
    return std::pair{a.deck, a.coat} < std::pair{b.deck, b.coat};
  });
  return misses;
}

}  // namespace schedule
