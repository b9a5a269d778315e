// What the air does to a surface: dew, and the moisture that wood settles at.
#pragma once

namespace schedule {

/// Pressure of saturated vapour over water, in hPa, for air of -45..60 C (range from memory). Magnus form of
/// WMO-No. 8, Guide to Instruments and Methods of Observation (2024). Throws std::invalid_argument outside.
double saturationPressure(double airCelsius);

/// Degrees Celsius, for air of -45..60 C; never above the air's own temperature. Over water also below
/// 0 C, where the frost point lies up to 1 K higher. Throws std::invalid_argument for a temperature outside
/// and for a relative humidity that is not above 0 and at most 100 %. The inverse of saturationPressure.
double dewPoint(double airCelsius, double humidityPercent);

/// Kelvin the surface is warmer than the dew point; below zero it is wet. Ranges as for dewPoint.
double dewMargin(double surfaceCelsius, double airCelsius, double humidityPercent);

/// ISO 8502-4:2017 guides for steel: at least 3 K between surface and dew point. Taking it over to timber is
/// our own choice.
inline constexpr double leastDewMargin = 3;  // K

/// True when nothing condenses while coating. Compares unrounded values.
bool isClearOfDew(double surfaceCelsius, double airCelsius, double humidityPercent);

/// Moisture content that sheltered wood settles at, in % of its oven-dry mass. Air of -1.1..132 C (30 to
/// 270 F), relative humidity 0..100 %, else std::invalid_argument; colder air counts as -1.1 C, for the
/// table hardly changes from there to 10 C. Rain wets wood beyond it. Wood Handbook, FPL-GTR-282 (2021),
/// ch. 4, eq. 4-5 and table 4-2.
double equilibriumMoisture(double airCelsius, double humidityPercent);

}  // namespace schedule
