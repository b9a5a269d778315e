// Units as weather files write them.
#pragma once

#include "forecast/series.h"

namespace forecast {

/// A value in C, %, % of the sky, m/s or mm is value * factor + offset.
struct Unit {
  double factor = 1, offset = 0;

  double of(double value) const { return value * factor + offset; }
};

/// What follows the last colon of 'text', small and capital letters alike: 'wmoUnit:degC', '°F', 'km/h'. A
/// sign of degrees that a wrong encoding has broken does no harm. Nothing for a unit we do not know.
std::optional<Unit> unitOf(Element element, const std::string& text);

/// 'air temperature'.
std::string nameOf(Element element);

/// Nothing where one is missing or none of the globe.
std::optional<model::Coordinates> placeAt(std::optional<double> north, std::optional<double> east);

}  // namespace forecast
