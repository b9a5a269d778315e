// The steps of a forecast out of what a file says.
#pragma once

#include "forecast/series.h"

namespace forecast {

/// What is to be told about a forecast that can be used.
struct Note {
  std::string message, hint;
};

/// 'from -40 to 55' for a value that no weather has where people lay coats; nothing for one that may be. In
/// our units. Humidity a little above 100 is rounding.
std::optional<std::string> rangeMissed(Element element, double value);

/// Steps as long as the shortest between two moments of the series: longer ones are shared out, moments
/// straight between their neighbours and rain evenly. Up to two hours of missing values are bridged so,
/// missing rain is not: the forecast ends there. 'cloud' (0 to 100) counts where the file has none. Times in
/// notes are those of the zone. Throws Refusal.
model::Forecast makeForecast(Series series, std::optional<double> cloud, const std::string& zone,
                             std::vector<Note>& notes);

}  // namespace forecast
