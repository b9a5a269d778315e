// How much fresh air solvent vapour needs. Orders of magnitude for roofed and walled places, no design of a
// ventilation; outdoors none of it is needed.
#pragma once

#include <utility>
#include <vector>

namespace safety {

/// Litres a mole of gas takes at a temperature and 101 325 Pa: R T / p, R = 8.314462618 J/(mol K).
double molarVolume(double celsius);

/// m3 of vapour an hour from so many grams an hour at 20 C.
double vapourVolume(double gramsPerHour, double molarMass);

/// mg/m3 of so many parts in a million at 25 C: ppm M / 24.45.
double milligramsPerCubicMetre(double ppm, double molarMass);

/// m3/h of fresh air that keep a concentration in ppm: K G 10^6 / C. ACGIH, Industrial Ventilation (formula
/// on secondary pages). 'mixing' is K, 1 (perfect) to 10 (poor).
double airUnderLimit(double vapourPerHour, double ppm, double mixing);
/// The same for a limit in mg/m3 and grams an hour.
double airUnderMassLimit(double gramsPerHour, double milligrams, double mixing);

/// cubic feet a minute by the form in US units: 403 SG 10^6 ER K / (M C), ER in pints a minute. ACGIH,
/// Industrial Ventilation (secondary page); 403 belongs to 70 F.
double airUnderLimitUs(double pintsPerMinute, double specificGravity, double molarMass, double ppm,
                       double mixing);

/// m3/h of fresh air that keep the vapour under a part of its lower explosive limit: G 100 Sf / (LEL B).
/// ACGIH, Industrial Ventilation; 'safetyFactor' 4 keeps it under 25 %, 10 to 12 where air is poorly mixed; B
/// is 1 up to 121 C, from memory. The limit in % of the air's volume: the lowest the SDS names, for tables
/// differ by almost a factor of two.
double airUnderExplosion(double vapourPerHour, double lowerLimit, double safetyFactor, double b = 1);

/// Cubic feet of air for a gallon of solvent to stay under 25 % of the lower explosive limit: 4 (100 - LEL) V
/// / LEL. 29 CFR 1910.94(c)(6)(ii).
double airPerGallon(double vapourPerGallon, double lowerLimit);

/// The additive rule for solvents that harm the same organs: sum of concentration / limit, 1 = at the limit.
double mixtureIndex(const std::vector<std::pair<double, double>>& concentrationsAndLimits);

}  // namespace safety
