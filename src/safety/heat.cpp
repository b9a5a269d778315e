#include "safety/heat.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace safety {
namespace {

double fahrenheit(double celsius) { return celsius * 1.8 + 32; }
double celsius(double fahrenheit) { return (fahrenheit - 32) / 1.8; }

double vapourPressure(double air, double humidity) {  // hPa
  return humidity / 100 * 6.105 * std::exp(17.27 * air / (237.7 + air));
}

}  // namespace

double heatIndexFahrenheit(double t, double r) {
  if (t <= 40) return t;
  const double simple = 0.5 * (t + 61 + (t - 68) * 1.2 + 0.094 * r);
  if (simple < 79) return simple;
  double full = -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t -
                0.05481717 * r * r + 0.00122874 * t * t * r + 0.00085282 * t * r * r -
                0.00000199 * t * t * r * r;
  if (r < 13 && t >= 80 && t <= 112) full -= (13 - r) / 4 * std::sqrt((17 - std::abs(t - 95)) / 17);
  if (r > 85 && t >= 80 && t <= 87) full += (r - 85) / 10 * ((87 - t) / 5);
  return full;
}

double heatIndex(double airCelsius, double humidity) {
  return celsius(heatIndexFahrenheit(fahrenheit(airCelsius), humidity));
}

double apparentTemperature(double air, double humidity, double wind) {
  return air + 0.33 * vapourPressure(air, humidity) - 0.70 * wind - 4.00;
}

double apparentTemperatureInSun(double air, double humidity, double wind, double gain) {
  return air + 0.348 * vapourPressure(air, humidity) - 0.70 * wind + 0.70 * gain / (wind + 10) - 4.25;
}

double bodyGain(double sunlight, double skylight, double apparentElevation) {
  const double height = std::sin(apparentElevation * std::numbers::pi / 180);
  if (height <= 0) return 0;
  const double beam = (sunlight - skylight) / height;  // on a surface that faces the sun
  return std::max(0.0, 0.7 * (0.25 * beam + 0.5 * (skylight + 0.2 * sunlight)) - 80);
}

model::HeatBand heatBand(double felt) {
  const double f = fahrenheit(felt);
  if (f >= 125) return model::HeatBand::ExtremeDanger;
  if (f >= 103) return model::HeatBand::Danger;
  if (f >= 90) return model::HeatBand::ExtremeCaution;
  if (f >= 80) return model::HeatBand::Caution;
  return model::HeatBand::None;
}

double wetBulbGlobeLimit(double watts) { return 56.7 - 11.5 * std::log10(watts); }

double hoursInHeat(int day, double shift, bool isNew) {
  constexpr double back[] = {0.5, 0.6, 0.8};
  if (isNew) return shift * std::min(day, 5) / 5;
  return shift * (day > 3 ? 1 : back[day - 1]);
}

}  // namespace safety
