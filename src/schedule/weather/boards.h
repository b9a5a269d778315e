// How hot boards get in the sun, and how heat, cold and damp change the times of a data sheet. Estimates for
// planning: on site an infrared thermometer and a moisture meter decide.
#pragma once

#include <optional>

namespace schedule {

/// Sun and sky on level ground under a clear sky, W/m2; the sun's apparent elevation in degrees, -90..90,
/// 0 below the horizon. Haurwitz, Insolation in relation to cloudiness and cloud density, Journal of
/// Meteorology 2 (1945).
double clearSkyIrradiance(double apparentElevation);

/// The same under cloud, W/m2. 'cloud' is the covered part of the sky, 0..1; else std::invalid_argument.
/// Kasten and Czeplak, Solar and terrestrial radiation dependent on the amount and type of cloud, Solar
/// Energy 24 (1980).
double cloudedIrradiance(double clearSky, double cloud);

/// The part of clouded irradiance that comes from the whole sky, not straight from the sun: 0.3 + 0.7
/// cloud^2, 0.3..1. Kasten and Czeplak (1980), from memory.
double diffusePart(double cloud);

/// What lies above the boards.
enum class Cover {
  Sun,    // open sky, the sun on the boards
  Shade,  // open sky, the sun behind a wall or trees
  Roof    // neither sun nor sky: the boards are as warm as the air
};

struct SkyAbove {
  Cover cover = Cover::Sun;
  double apparentElevation = 0;  // of the sun, degrees
  double cloud = 0;              // 0..1
};

/// Shares of sunlight that wood takes up, 0..1. From memory: 0.5 light grey weathered, 0.7 oiled mid-brown,
/// 0.85 dark.
inline constexpr double absorptanceWeathered = 0.5, absorptanceOiled = 0.7, absorptanceDark = 0.85;

/// Temperature of level boards, C: the sol-air temperature of the ASHRAE Handbook, Fundamentals (chapter on
/// nonresidential cooling loads; a secondary page). A thin insulated surface in balance in a light summer
/// wind of about 3.4 m/s: a good upper estimate for boards in sun. Throws std::invalid_argument for shares
/// outside 0..1; air -45..60 C, elevation in degrees -90..90.
double boardTemperature(double airCelsius, double absorptance, SkyAbove sky);

/// The same for the 'sunlight' of cloudedIrradiance, W/m2.
double boardTemperature(double airCelsius, double absorptance, Cover cover, double sunlight, double cloud);

/// What they are likely to have on a usual day of a month, C: its mean cloud is a mix of clear and covered
/// skies, and boards with air beneath lose warmth there too, 6.1 W/m2K into still air (ASHRAE Handbook,
/// Fundamentals, heat flow downwards; from memory). 'clearSky' as clearSkyIrradiance. Throws likewise.
double likelyBoardTemperature(double airCelsius, double absorptance, Cover cover, double clearSky,
                              double cloud);

/// Hours a coat takes to reach what the data sheet promises for 20 C: twice as long for each 10 K colder, and
/// from 80 % relative humidity up to twice as long at 100 %; never shorter than the data sheet. Cold from
/// memory, a common rule of thumb; that damp slows is common practice, how much is our own choice. For
/// 0..40 C; what is too cold or too damp is the product's own limit. Throws std::invalid_argument for a
/// humidity outside 0..100.
double dryingHours(double dataSheetHours, double airCelsius, double humidityPercent);

/// How long a coat stays workable: half as long for each 10 K of surface above 20 C, in the unit given; never
/// longer than the data sheet. Our own choice, from memory, for surfaces up to 60 C.
double openTime(double dataSheetTime, double surfaceCelsius);

/// Hours until washed boards are down to so much moisture (% of oven-dry mass), but never fewer than
/// 'leastHours'; nothing where the air keeps them above it for good. Our own choice: the surface starts at
/// 30 % (fibre saturation, Wood Handbook, FPL-GTR-282 (2021), ch. 4) and nears the equilibrium in this air
/// evenly, such that 18 % takes 36 h at 20 C and 65 % (boards dry 24 to 48 h after rain, from memory); twice
/// as long for each 10 K colder, not faster when warmer. Ranges as for equilibriumMoisture.
std::optional<double> washedWoodHours(double leastHours, double airCelsius, double humidityPercent,
                                      double limitPercent);

/// Boards wetted by rain dry as washed ones do, a day at least: 24 to 48 h are common practice (trade memory,
/// no source). From how much rain on is our own choice: up to half a millimetre in 24 hours is no more than a
/// heavy dew leaves (from memory); it stays on top and is gone two hours after its last drop.
inline constexpr double wettingRain = 0.5;          // mm in the 24 hours before
inline constexpr double driesAfterDrizzle = 2;      // h
inline constexpr double leastDryingAfterRain = 24;  // h
inline constexpr double dryingInUnknownAir = 48;    // h, where the forecast ends before the boards are dry

}  // namespace schedule
