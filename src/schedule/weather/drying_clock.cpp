#include "schedule/weather/drying_clock.h"

#include "schedule/weather/boards.h"

#include <algorithm>
#include <cmath>

namespace schedule {

using std::chrono::hours;
using std::chrono::sys_seconds;

DryingClock::DryingClock(const model::JobInputs& c)
    : c_(c), weather_(c), isKnown_(placeOf(c.job.site) && weather_.isGiven()) {}

double DryingClock::slownessAt(sys_seconds hour) {
  const auto [found, isNew] = slowness_.try_emplace(hour.time_since_epoch() / hours{1}, 1);
  if (!isNew) return found->second;
  const AirAt known = weather_.at(hour + std::chrono::minutes{30});
  if (known.source != model::WeatherSource::None)
    found->second = dryingHours(1, known.air.celsius, known.air.humidity);
  return found->second;
}

base::Hours DryingClock::elapsed(base::LocalTime end, base::Hours sheet) {
  if (!isKnown_) return sheet;
  constexpr double second = 1.0 / 3600, quarters = 4;
  constexpr std::int64_t quarterHour = 250'000;  // millionths
  double left = static_cast<double>(sheet.millionths) / 1e6, lost = 0;
  for (sys_seconds t = localToUtc(c_.job.site.timezone, end); left > 0;) {
    const auto hour = std::chrono::floor<hours>(t);
    const double slowness = slownessAt(hour),
                 here = static_cast<double>((hour + hours{1} - t).count()) * second;
    const double dried = std::min(left, here / slowness);
    lost += dried * (slowness - 1);
    left = here / slowness < left ? left - dried : 0;
    t = hour + hours{1};
  }
  return sheet + base::Hours{quarterHour * static_cast<std::int64_t>(std::ceil((lost - second) * quarters))};
}

double DryingClock::dries(base::LocalTime hour) {
  return isKnown_ ? 1 / slownessAt(std::chrono::floor<hours>(localToUtc(c_.job.site.timezone, hour))) : 1;
}

base::LocalTime DryingClock::dryAt(base::LocalTime end, base::Hours sheet) {
  return after(c_.job.site.timezone, end, elapsed(end, sheet));
}

}  // namespace schedule
