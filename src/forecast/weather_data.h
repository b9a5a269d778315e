#pragma once

#include "forecast/series.h"

namespace forecast {

/// Reads XML whose root is 'weatherdata'. Throws Refusal.
Series readWeatherData(const std::string& bytes);

}  // namespace forecast
