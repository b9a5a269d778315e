#include "schedule/weather/weather_samples.h"

#include "base/units.h"
#include "schedule/weather/air.h"
#include "schedule/weather/boards.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

using model::WeatherSource;

/// The sun's upper edge at the horizon, as daylight() has it.
constexpr double riseElevation = -0.8333;

constexpr double hoursOfQuarter = 0.25;

/// Quarters are added up in doubles: some thousandths of a second.
constexpr double slack = 1e-6;

constexpr std::chrono::days longestDrying{5};

void addWeather(WeatherSample& m, const AirAt& known, double rainPart) {
  m.source = known.source;
  m.air = known.air;
  m.air.rain *= rainPart;
  m.dewPoint = dewPoint(m.air.celsius, m.air.humidity);
  m.woodMoisture = equilibriumMoisture(m.air.celsius, m.air.humidity);
  m.sunlight = cloudedIrradiance(clearSkyIrradiance(m.sunElevation), m.air.cloud);
  m.drying = hoursOfQuarter / dryingHours(1, m.air.celsius, m.air.humidity);
}

void addMoistureOfDay(std::vector<WeatherSample>& moments) {
  constexpr std::size_t day = 24 * 4;
  double sum = 0;
  int known = 0;
  const auto count = [&](const WeatherSample& m, int sign) {
    if (m.source == WeatherSource::None) return;
    sum += sign * m.woodMoisture;
    known += sign;
  };
  for (std::size_t i = 0; i < moments.size(); ++i) {
    count(moments[i], 1);
    if (i >= day) count(moments[i - day], -1);
    if (known > 0) moments[i].moistureOfDay = sum / known;
  }
}

/// The part of the drying after rain that boards get done in this quarter.
double driedIn(const WeatherSample& m, double moistureLimit) {
  if (m.source == WeatherSource::None) return hoursOfQuarter / dryingInUnknownAir;
  const auto hours = washedWoodHours(leastDryingAfterRain, m.air.celsius, m.air.humidity, moistureLimit);
  return hours ? hoursOfQuarter / *hours : 0;
}

void addWetBoards(std::vector<WeatherSample>& moments, double moistureLimit) {
  constexpr std::size_t day = 24 * 4;
  double rain = 0;   // of the last 24 hours, mm
  double dried = 1;  // of the way from wet through to dry
  double sinceDrizzle = driesAfterDrizzle;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    WeatherSample& m = moments[i];
    rain += m.air.rain - (i >= day ? moments[i - day].air.rain : 0);
    if (m.air.rain > 0) {
      sinceDrizzle = 0;
      if (rain >= wettingRain - slack) dried = 0;
    }
    m.isWetFromRain = dried < 1 - slack || sinceDrizzle < driesAfterDrizzle;
    if (m.air.rain > 0) continue;
    sinceDrizzle += hoursOfQuarter;
    if (dried < 1) dried += driedIn(m, moistureLimit);
  }
}

}  // namespace

WeatherSamples::WeatherSamples(const model::JobInputs& c)
    : place_(placeOf(c.job.site)),
      rainPart_(15.0 / std::max(15, c.job.forecast.stepMinutes)),
      weather_(c),
      sun_(place_.value_or(Place{})),
      clock_(c.job.site.timezone) {}

const WeatherSample& WeatherSamples::at(std::chrono::sys_seconds t) {
  if (known_.empty() || t < known_.front().at) known_ = {make(t)};
  const auto index = static_cast<std::size_t>((t - known_.front().at) / quarter);
  while (known_.size() <= index) known_.push_back(make(known_.back().at + quarter));
  return known_[index];
}

WeatherSample WeatherSamples::make(std::chrono::sys_seconds t) {
  WeatherSample m;
  m.at = t;
  m.clock = clock_.at(t).minutes;
  if (!place_) return m;
  const double elevation = sun_.elevation(t);
  m.sunElevation = apparentElevation(elevation);
  m.isLight = elevation >= riseElevation;
  const AirAt known = weather_.at(t);
  if (known.source != WeatherSource::None) addWeather(m, known, rainPart_);
  else m.isBeyondForecast = weather_.isGiven();
  return m;
}

std::vector<WeatherSample> momentsOf(const model::JobInputs& c, std::chrono::sys_seconds from,
                                     std::chrono::sys_seconds until, WeatherSamples& line) {
  std::vector<WeatherSample> moments;
  const auto& times = c.product->times;
  const double drying = base::floating(std::max(times.touchDry, times.rainSafe));
  double dried = 0, latest = 0;  // of a coat that ends at 'until'; the moment at which it is done counts too
  moments.reserve(static_cast<std::size_t>((until + std::chrono::days{1} - from) / quarter));
  for (auto t = from; t <= until || (dried < drying + slack && t <= until + longestDrying); t += quarter) {
    moments.push_back(line.at(t));
    dried += latest;
    if (t >= until) latest = moments.back().drying;
  }
  addMoistureOfDay(moments);
  addWetBoards(moments, base::floating(c.product->limits.moistureMax));
  return moments;
}

std::size_t driedBy(const std::vector<WeatherSample>& moments, std::size_t end, double dataSheetHours) {
  double hours = 0;
  std::size_t i = end;
  while (i + 1 < moments.size() && hours < dataSheetHours - slack) hours += moments[i++].drying;
  return i;
}

}  // namespace schedule
