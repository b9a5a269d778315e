// A weather file becomes the forecast of a job: Open-Meteo, MET Norway, US National Weather Service, UK Met
// Office, Met Éireann, MetService, or a table by its header.
#pragma once

#include "base/diagnostic.h"
#include "model/weather.h"

#include <optional>
#include <string>

namespace forecast {

struct Wanted {
  std::string zone;             // of the site, in the tz database
  std::optional<double> cloud;  // %, where the file has none
};

/// Tells what a file is by what is in it. Files above 4 MiB, with more than 10,000 steps or nested deeper
/// than 40 are refused. Errors name what is missing and the file to fetch instead; no steps then.
model::Forecast readForecast(const std::string& bytes, const std::string& file, const Wanted& wanted,
                             base::Diagnostics& messages);

}  // namespace forecast
