// Air and sun over some days in steps of a quarter of an hour: what the gates are judged by.
#pragma once

#include "schedule/weather/sun.h"
#include "schedule/weather/weather_at.h"
#include "schedule/weather/zone.h"

#include <optional>

namespace schedule {

struct WeatherSample {
  std::chrono::sys_seconds at;
  model::Air air;  // its rain is that of this quarter of an hour
  model::WeatherSource source = model::WeatherSource::None;
  bool isBeyondForecast = false;  // weather is given, but not for this moment
  int clock = 0;                  // minutes of the site's day
  double sunElevation = 0;        // degrees, apparent
  double sunlight = 0;            // W/m2 of sun and sky on level ground, through the clouds
  bool isLight = true;            // the sun is up, or nobody knows where the place is
  // These only where the weather is known.
  double dewPoint = 0;       // C
  double woodMoisture = 0;   // %, where sheltered wood settles in this air
  double moistureOfDay = 0;  // %, its mean over the 24 hours before
  double drying = 0;         // hours of the data sheet that a coat dries in this quarter
  // Known from the forecast's rain, also some time beyond it.
  bool isWetFromRain = false;  // boards under open sky have not dried yet, to the product's moisture limit
};

inline constexpr std::chrono::minutes quarter{15};

/// The moments of a site one after another, each worked out once however often it is asked for.
class WeatherSamples {
 public:
  /// 'c' outlives this.
  explicit WeatherSamples(const model::JobInputs& c);
  /// Without what depends on the hours before: the mean of the wood's moisture, and wet boards. Steps are
  /// whole quarters of an hour; a moment before the first one begins the line anew.
  const WeatherSample& at(std::chrono::sys_seconds t);

 private:
  WeatherSample make(std::chrono::sys_seconds t);

  std::optional<Place> place_;
  double rainPart_;  // of a forecast's step that falls in a quarter
  Weather weather_;
  SunPath sun_;
  ZoneClock clock_;
  std::vector<WeatherSample> known_;
};

/// Every quarter of an hour from 'from' on to 'until', and so far beyond as a coat that ends then takes to be
/// touch dry and rain safe, five days at the most: the coldest and dampest air a product takes slows it about
/// fourfold. The wood follows the air slowly: that its
/// moisture is judged by the mean of a day is our own choice. Without latitude and longitude there is no sun,
/// and the weather is not asked. Before 'from' it has not rained.
std::vector<WeatherSample> momentsOf(const model::JobInputs& c, std::chrono::sys_seconds from,
                                     std::chrono::sys_seconds until, WeatherSamples& line);

/// The first moment at which a coat that ends at moment 'end' has dried for so many hours of the data sheet;
/// the last of all where it has not.
std::size_t driedBy(const std::vector<WeatherSample>& moments, std::size_t end, double dataSheetHours);

}  // namespace schedule
