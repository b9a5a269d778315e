// How hot the air feels to people at work, in the shade.
#pragma once

#include "model/exposure.h"

namespace safety {

/// Heat index in F for air in F and a relative humidity of 0..100 %. The algorithm of the US National Weather
/// Service with both adjustments, switched at 79 F and equal to the air up to 40 F as on its web form. Light
/// wind; full sun adds up to 15 F.
double heatIndexFahrenheit(double airFahrenheit, double humidity);
/// The same in C.
double heatIndex(double airCelsius, double humidity);

/// Apparent temperature in C: Steadman, Norms of apparent temperature in Australia, Australian Meteorological
/// Magazine 43 (1994), as the Bureau of Meteorology uses it; wind in m/s at 10 m.
double apparentTemperature(double airCelsius, double humidity, double wind);

/// Bands of the heat index of the National Weather Service, from memory: 80, 90, 103 and 125 F. For the
/// apparent temperature the same bounds are our own choice.
model::HeatBand heatBand(double feltCelsius);

/// Wet bulb globe temperature in C from the three readings of a meter: ISO 7243, outdoors in sun and
/// elsewhere.
double wetBulbGlobeInSun(double naturalWetBulb, double globe, double air);
double wetBulbGlobeInShade(double naturalWetBulb, double globe);

/// Highest wet bulb globe temperature (C, average of an hour) for work of so many watts, by NIOSH 2016-106:
/// 56.7 - 11.5 log10 W for people used to the heat, 59.9 - 14.1 log10 W (from memory) for others.
double wetBulbGlobeLimit(double watts, bool isUsedToHeat);

/// How hard the work is: the classes of ISO 7243:2017, 115, 180, 300, 415 and 520 W.
enum class Effort { Rest, Low, Moderate, High, VeryHigh };

/// Reference value of ISO 7243:2017, table A.1, in C; from memory.
int wetBulbGlobeReference(Effort effort, bool isUsedToHeat);

/// Watts of moderate work such as coating and of hard work such as sanding; ISO 8996's classes, from memory.
inline constexpr double moderateWork = 300, hardWork = 415;

}  // namespace safety
