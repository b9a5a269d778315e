#include "plan/moments.h"

#include "plan/air.h"
#include "plan/boards.h"
#include "plan/zone.h"

#include <algorithm>

namespace plan {
namespace {

using model::WeatherSource;

/// The sun's upper edge at the horizon, as daylight() has it.
constexpr double riseElevation = -0.8333;

constexpr double hoursOfQuarter = 0.25;

/// Quarters are added up in doubles: some thousandths of a second.
constexpr double slack = 1e-6;

constexpr std::chrono::days longestDrying{5};

void addWeather(Moment& m, const AirAt& known, double rainPart) {
  m.source = known.source;
  m.air = known.air;
  m.air.rain *= rainPart;
  m.dewPoint = dewPoint(m.air.celsius, m.air.humidity);
  m.woodMoisture = equilibriumMoisture(m.air.celsius, m.air.humidity);
  m.sunlight = cloudedIrradiance(clearSkyIrradiance(m.sunElevation), m.air.cloud);
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
  double rain = 0;   // of the last 24 hours, mm
  double dried = 1;  // of the way from wet through to dry
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
  SunPath sun(place.value_or(Place{}));
  ZoneClock clock(c.job.site.timezone);
  std::vector<Moment> moments;
  const auto& times = c.product->times;
  const double drying = static_cast<double>(std::max(times.touchDry, times.rainSafe).millionths) / 1e6;
  double dried = 0, latest = 0;  // of a coat that ends at 'until'; the moment at which it is done counts too
  moments.reserve(static_cast<std::size_t>((until + std::chrono::days{1} - from) / quarter));
  for (auto t = from; t <= until || (dried < drying + slack && t <= until + longestDrying); t += quarter) {
    Moment m;
    m.at = t;
    m.clock = clock.at(t).minutes;
    if (place) {
      const double elevation = sun.elevation(t);
      m.sunElevation = apparentElevation(elevation);
      m.isLight = elevation >= riseElevation;
      const AirAt known = weather.at(t);
      if (known.source != WeatherSource::None) addWeather(m, known, rainPart);
      else m.isBeyondForecast = weather.isGiven();
    }
    dried += latest;
    if (t >= until) latest = m.drying;
    moments.push_back(m);
  }
  addMoistureOfDay(moments);
  addWetBoards(moments, static_cast<double>(c.product->limits.moistureMax.millionths) / 1e6);
  return moments;
}

std::size_t driedBy(const std::vector<Moment>& moments, std::size_t end, double dataSheetHours) {
  double hours = 0;
  std::size_t i = end;
  while (i + 1 < moments.size() && hours < dataSheetHours - slack) hours += moments[i++].drying;
  return i;
}

}  // namespace plan
