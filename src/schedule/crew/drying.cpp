#include "schedule/crew/drying.h"

#include "schedule/weather/boards.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {

base::LocalTime dryAfter(const Piece& piece, base::LocalTime end, const model::JobInputs& c,
                         OpenHours& open) {
  if (piece.dryAfter.isZero()) return end;
  const auto& zone = c.job.site.timezone;
  const base::LocalTime least = after(zone, end, piece.dryAfter);
  const double limit = static_cast<double>(c.product->limits.moistureMax.millionths) / 1e6;
  if (!open.hasWeather() || limit <= 0) return least;
  constexpr int longest = 14 * 24;
  double dried = 0;  // of the way from wet through to dry
  for (int hour = 0; hour < longest; ++hour) {
    const base::LocalTime t = after(zone, end, base::Hours::whole(hour));
    const model::Hour* air = open.hourAt(t, *piece.deck);
    if (!air) return std::max(least, t);
    const bool isKnown = air->source != model::WeatherSource::None;
    const bool isWet = isShutBy(*air, model::WeatherLimit::Wet);  // it has rained since
    if (!isWet && (dried >= 1 || !isKnown)) return std::max(least, t);
    if (!isKnown) continue;
    if (const auto hours = washedWoodHours(0, air->air.celsius, air->air.humidity, limit);
        hours && *hours > 0)
      dried += 1 / *hours;
  }
  return least;
}

}  // namespace schedule
