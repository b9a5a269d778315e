#include "schedule/weather/distance.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace schedule {

double kilometres(Place a, Place b) {
  const auto radians = [](double d) { return d * std::numbers::pi / 180; };
  const double y = std::sin(radians(b.latitude - a.latitude) / 2),
               x = std::sin(radians(b.longitude - a.longitude) / 2);
  const double h = y * y + std::cos(radians(a.latitude)) * std::cos(radians(b.latitude)) * x * x;
  return 2 * 6371 * std::asin(std::min(1.0, std::sqrt(h)));
}

}  // namespace schedule
