#include "schedule/weather/air.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace schedule {
namespace {

// WMO-No. 8 (2024), Magnus form over water.
constexpr double pressureAtZero = 6.112;  // hPa
constexpr double slope = 17.62;
constexpr double offset = 243.12;  // C

/// The exponent of the Magnus form.
double exponent(double celsius) {
  if (!(celsius >= -45 && celsius <= 60)) throw std::invalid_argument("air must be -45 to 60 C");
  return slope * celsius / (offset + celsius);
}

}  // namespace

double saturationPressure(double airCelsius) { return pressureAtZero * std::exp(exponent(airCelsius)); }

double dewPoint(double airCelsius, double humidityPercent) {
  const bool isHumidity = humidityPercent > 0 && humidityPercent <= 100;
  if (!isHumidity) throw std::invalid_argument("relative humidity must be above 0 and at most 100 %");
  const double gamma = std::log(humidityPercent / 100) + exponent(airCelsius);
  return std::min(offset * gamma / (slope - gamma), airCelsius);  // 100 % would round to a hair above
}

double dewMargin(double surfaceCelsius, double airCelsius, double humidityPercent) {
  return surfaceCelsius - dewPoint(airCelsius, humidityPercent);
}

bool isClearOfDew(double surfaceCelsius, double airCelsius, double humidityPercent) {
  return dewMargin(surfaceCelsius, airCelsius, humidityPercent) >= leastDewMargin;
}

double equilibriumMoisture(double airCelsius, double humidityPercent) {
  const bool isHumidity = humidityPercent >= 0 && humidityPercent <= 100;
  if (!isHumidity) throw std::invalid_argument("relative humidity must be 0 to 100 %");
  if (!(airCelsius <= 132.3)) throw std::invalid_argument("air must be at most 132 C");
  const double t = std::max(airCelsius, -10.0 / 9);  // 30 F, where the table begins
  const double h = humidityPercent / 100;
  // Coefficients for Celsius: Simpson, Equilibrium Moisture Content of Wood in Outdoor Locations,
  // FPL-RN-0268 (1998).
  const double w = 349 + t * (1.29 + t * 0.0135);
  const double k = 0.805 + t * (0.000736 - t * 0.00000273);
  const double k1 = 6.27 - t * (0.00938 + t * 0.000303);
  const double k2 = 1.91 + t * (0.0407 - t * 0.000293);
  const double kh = k * h;
  const double k1kh = k1 * kh;
  const double k1k2kh2 = k1 * k2 * kh * kh;
  return 1800 / w * (kh / (1 - kh) + (k1kh + 2 * k1k2kh2) / (1 + k1kh + k1k2kh2));
}

}  // namespace schedule
