// How hot it feels to people at work.
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

/// The same in the sun; 'gain' as bodyGain() has it, W/m2. Steadman (1994), with radiation.
double apparentTemperatureInSun(double airCelsius, double humidity, double wind, double gain);

/// What a person in the open gains from sun and sky, W/m2 of the body's surface, never below 0; 'sunlight'
/// and 'skylight' as model::Hour has them, the sun's apparent elevation in degrees. An estimate of our own,
/// its numbers from memory: a quarter of the body faces the sun, half of it the sky and half the ground,
/// which gives back a fifth; skin and clothes take up 0.7 of it, and 80 W/m2 are lost as heat to sky and
/// ground.
double bodyGain(double sunlight, double skylight, double apparentElevation);

/// Bands of the heat index of the National Weather Service, from memory: 80, 90, 103 and 125 F. For the
/// apparent temperature the same bounds are our own choice.
model::HeatBand heatBand(double feltCelsius);

/// Highest wet bulb globe temperature in C, average of an hour, for people used to the heat at work of so
/// many watts: 56.7 - 11.5 log10 W. NIOSH 2016-106, Criteria for a Recommended Standard: Occupational
/// Exposure to Heat and Hot Environments (2016). It is read off a meter: air and humidity alone do not give
/// it.
double wetBulbGlobeLimit(double watts);

/// Hours of a shift in the heat on a person's first days of it, from 1: new to it 20 % a day more each day,
/// back after a week or longer 50, 60, 80 and 100 %. NIOSH, Protecting Your Workers from Heat Stress (2014).
double hoursInHeat(int day, double shift, bool isNew);

/// Watts of hard work such as sanding: a class of ISO 8996, from memory.
inline constexpr double hardWork = 415;

}  // namespace safety
