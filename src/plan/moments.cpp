#include "plan/moments.h"

#include "plan/air.h"
#include "plan/boards.h"

#include <algorithm>

namespace plan {
namespace {

using model::WeatherSource;

/// The sun's upper edge at the horizon, as daylight() has it.
constexpr double riseElevation = -0.8333;

constexpr double hoursOfQuarter = 0.25;

void addWeather(Moment& m, const AirAt& known, double rainPart) {
  m.source = known.source;
  m.air = known.air;
  m.air.rain *= rainPart;
  m.dewPoint = dewPoint(m.air.celsius, m.air.humidity);
  m.woodMoisture = equilibriumMoisture(m.air.celsius, m.air.humidity);
  m.drying = hoursOfQuarter / dryingHours(1, m.air.celsius, m.air.humidity);
}

void addMoistureOfDay(std::vector<Moment>& moments) {
  constexpr std::size_t day = 24 * 4;
  double sum = 0;
  int known = 0;
  const auto count = [&](const Moment& m, int sign) {
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
double driedIn(const Moment& m, double moistureLimit) {
  if (m.source == WeatherSource::None) return hoursOfQuarter / dryingInUnknownAir;
  const auto hours = washedWoodHours(leastDryingAfterRain, m.air.celsius, m.air.humidity, moistureLimit);
  return hours ? hoursOfQuarter / *hours : 0;
}

void addWetBoards(std::vector<Moment>& moments, double moistureLimit) {
  constexpr std::size_t day = 24 * 4;
  constexpr double slack = 1e-9;  // a step's rain is cut into quarters and added up again
  double rain = 0;                // of the last 24 hours, mm
  double dried = 1;               // of the way from wet through to dry
  double sinceDrizzle = driesAfterDrizzle;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    Moment& m = moments[i];
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

std::vector<Moment> momentsOf(const model::Case& c, std::chrono::sys_seconds from,
                              std::chrono::sys_seconds until) {
  Weather weather(c);
  const auto place = placeOf(c.job.site);
  const double rainPart = 15.0 / std::max(15, c.job.forecast.stepMinutes);
  std::vector<Moment> moments;
  for (auto t = from; t < until; t += quarter) {
    Moment m;
    m.at = t;
    if (place) {
      const double elevation = sunPosition(*place, t).elevation;
      m.sunElevation = apparentElevation(elevation);
      m.isLight = elevation >= riseElevation;
      const AirAt known = weather.at(t);
      if (known.source != WeatherSource::None) addWeather(m, known, rainPart);
      else m.isBeyondForecast = weather.isGiven();
    }
    moments.push_back(m);
  }
  addMoistureOfDay(moments);
  addWetBoards(moments, static_cast<double>(c.product->limits.moistureMax.millionths) / 1e6);
  return moments;
}

std::size_t driedBy(const std::vector<Moment>& moments, std::size_t end, double dataSheetHours) {
  // A thousandth of a second of slack: quarters added up in doubles.
  constexpr double slack = 1e-6;
  double hours = 0;
  std::size_t i = end;
  while (i + 1 < moments.size() && hours < dataSheetHours - slack) hours += moments[i++].drying;
  return i;
}

}  // namespace plan
