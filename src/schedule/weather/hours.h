// Which hours are fit for laying a coat, deck by deck, and why the others are not.
#pragma once

#include "base/diagnostic.h"
#include "model/plan.h"

namespace schedule {

class WeatherSamples;

/// Errors where a forecast's steps are not of one length by the tz database, or name an hour that does not
/// exist. Line 2 of 'file' holds the first step. Says nothing in a time zone that is not known.
void checkForecast(const model::Job& job, const std::string& file, base::Diagnostics& messages);

/// A warning where the forecast holds no day on site.
void checkForecastDays(const model::Job& job, const model::Plan& plan, const std::string& file,
                       base::Diagnostics& messages);

/// Every full hour of the days from 'from' to 'until' (not included) for every deck that is coated, by time,
/// then deck. An hour is fit when every gate holds from its first minute to its last; dew and rain are looked
/// for until the product is touch dry and rain safe. The forecast counts where it reaches; beyond it the
/// usual weather of the month, without rain; where neither is given the hour is fit when it is light
/// (WeatherSource::None). Times are the site's clock.
std::vector<model::Hour> fitHours(const model::JobInputs& c, base::Date from, base::Date until);

/// The same for days after days: 'line' is of this case and knows the moments of the days before.
std::vector<model::Hour> fitHours(const model::JobInputs& c, base::Date from, base::Date until,
                                  WeatherSamples& line);

/// Sunrise and sunset of each day by the site's clock.
std::vector<model::SunDay> daylightOf(const model::Site& site, base::Date from, base::Date until);

/// The air at a moment: between two steps of the forecast, or of a usual day; nothing where neither is given.
struct AirAt {
  model::Air air;
  model::WeatherSource source = model::WeatherSource::None;
};
AirAt airAt(const model::JobInputs& c, base::LocalTime at);

}  // namespace schedule
