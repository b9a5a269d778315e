#include "schedule/crew/dates.h"

#include "schedule/weather/drying_clock.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

/// Nobody is sent onto a deck in the dark: from eight in the evening the next morning is meant. The first
/// wash is told by its day alone.
base::LocalTime waking(base::LocalTime t) {
  constexpr int morning = 7 * 60, evening = 20 * 60;
  if (t.minutes >= evening) return {t.day + std::chrono::days{1}, morning};
  return {t.day, std::max(t.minutes, morning)};
}

/// So many hours after the last coat. In an hour that comes twice by the clock the later one is meant, told
/// as its end. Whole days end at the same time of the day where clocks go back meanwhile; where they go
/// forward it would be an hour too soon.
base::LocalTime waited(const std::string& zone, base::LocalTime from, base::Hours wait) {
  base::LocalTime at = after(zone, from, wait);
  if (between(zone, from, at) < wait) at = base::plusMinutes(at, 60);
  const std::int64_t day = base::Hours::whole(24).millionths;
  if (wait.millionths % day != 0) return at;
  return std::max(at, {from.day + std::chrono::days{wait.millionths / day}, from.minutes});
}

}  // namespace

void addDates(model::Plan& plan, const model::JobInputs& c, const Calendar& calendar) {
  std::erase_if(plan.events, [](const model::Event& e) { return e.coat == 0; });
  using model::Moment;
  const auto& zone = c.job.site.timezone;
  const auto& times = c.product->times;
  DryingClock drying(c);
  const auto add = [&](Moment what, base::LocalTime at) { plan.events.push_back({what, 0, at, 0, {}}); };
  const auto dried = [&](base::Hours sheet) {
    return waited(zone, plan.finished, drying.elapsed(plan.finished, sheet));
  };
  add(Moment::Walk, waking(dried(times.walk)));
  add(Moment::Furniture, waking(dried(times.furniture)));
  add(Moment::Rugs, waking(dried(times.rugs)));
  add(Moment::FirstWash, dried(times.firstWash));
  base::Date visit = base::plusMonths(plan.finished.day, times.maintenanceMonths);
  while (!calendar.isWorkday(visit)) visit += std::chrono::days{1};
  add(Moment::Maintenance, {visit, c.job.crew.startMinutes});
  std::stable_sort(plan.events.begin(), plan.events.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  for (auto& event : plan.events) event.utcOffsetMinutes = utcOffset(zone, event.at);
}

}  // namespace schedule
