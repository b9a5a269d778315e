#include "schedule/weather/boards.h"

#include "schedule/weather/air.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace schedule {
namespace {

constexpr double filmCoefficient = 17;  // W/m2K: ASHRAE Fundamentals, 3.0 Btu/(h ft2 F), from memory

double share(double value) {
  if (!(value >= 0 && value <= 1)) throw std::invalid_argument("cloud and absorptance must be 0 to 1");
  return value;
}

/// 1 from 20 C up, 2 at 10 C, 4 at 0 C. From memory.
double slowedByCold(double celsius) { return std::exp2(std::max(0.0, 20 - celsius) / 10); }

/// 1 up to 80 %, 1.5 at 90 %, 2 at 100 %. Our own choice.
double slowedByDamp(double humidityPercent) { return 1 + std::max(0.0, humidityPercent - 80) / 20; }

}  // namespace

double clearSkyIrradiance(double apparentElevation) {
  const double height = std::sin(apparentElevation * std::numbers::pi / 180);  // cosine of the zenith angle
  return height > 0 ? 1098 * height * std::exp(-0.059 / height) : 0;
}

double cloudedIrradiance(double clearSky, double cloud) {
  const double covered = share(cloud);
  return clearSky == 0 ? 0 : clearSky * (1 - 0.75 * std::pow(covered, 3.4));  // half of all moments are night
}

double diffusePart(double cloud) { return 0.3 + 0.7 * share(cloud) * cloud; }

double boardTemperature(double airCelsius, double absorptance, SkyAbove sky) {
  return boardTemperature(airCelsius, absorptance, sky.cover,
                          cloudedIrradiance(clearSkyIrradiance(sky.apparentElevation), sky.cloud), sky.cloud);
}

double boardTemperature(double airCelsius, double absorptance, Cover cover, double sunlight, double cloud) {
  constexpr double lossToClearSky = 3.9;  // K, horizontal: ASHRAE Fundamentals, 7 F
  const double warming = share(absorptance) * sunlight / filmCoefficient;
  // ASHRAE has no cloud here; that a covered sky takes less heat is our own straight line.
  const double cooling = lossToClearSky * (1 - cloud);
  switch (cover) {
    case Cover::Sun:
      return airCelsius + warming - cooling;
    case Cover::Shade:
      return airCelsius + warming * diffusePart(cloud) - cooling;
    case Cover::Roof:
      return airCelsius;
  }
  throw std::logic_error("internal error: unknown cover");
}

double likelyBoardTemperature(double airCelsius, double absorptance, Cover cover, double clearSky,
                              double cloud) {
  constexpr double beneath = 6.1;  // W/m2K
  const double upper =
      boardTemperature(airCelsius, absorptance, cover, clearSky * (1 - 0.75 * share(cloud)), cloud);
  const double warming = upper - airCelsius;
  return warming > 0 ? airCelsius + warming * filmCoefficient / (filmCoefficient + beneath) : upper;
}

double dryingHours(double dataSheetHours, double airCelsius, double humidityPercent) {
  const bool isHumidity = humidityPercent >= 0 && humidityPercent <= 100;
  if (!isHumidity) throw std::invalid_argument("relative humidity must be 0 to 100 %");
  return dataSheetHours * slowedByCold(airCelsius) * slowedByDamp(humidityPercent);
}

double openTime(double dataSheetTime, double surfaceCelsius) {
  return dataSheetTime * std::exp2(-std::max(0.0, surfaceCelsius - 20) / 10);
}

std::optional<double> washedWoodHours(double leastHours, double airCelsius, double humidityPercent,
                                      double limitPercent) {
  constexpr double washed = 30;  // % moisture
  if (limitPercent >= washed) return leastHours;
  const auto folds = [](double settled, double limit) {
    return std::log((washed - settled) / (limit - settled));
  };
  const double settled = equilibriumMoisture(airCelsius, humidityPercent);
  if (settled >= limitPercent) return std::nullopt;
  const double hoursPerFold = 36 / folds(equilibriumMoisture(20, 65), 18);  // about 32
  return std::max(leastHours, hoursPerFold * folds(settled, limitPercent) * slowedByCold(airCelsius));
}

}  // namespace schedule
