// Figures in plain ASCII, for the office's record of how a number came about.
#pragma once

#include "base/units.h"
#include "model/content.h"

#include <string>

namespace model {

/// '74.87', '12', '0.5': at most so many decimals, no zeros at the end.
std::string plain(std::int64_t millionths, int decimals = 2);
template <class Unit>
std::string plain(base::Quantity<Unit> q, int decimals = 2) {
  return plain(q.millionths, decimals);
}

/// '74.87 m2', or '805.9 ft2' in US customary units.
std::string plainArea(base::Area a, UnitSystem units);
/// '12.5 C', or '54.5 F' in US customary units.
std::string plainTemperature(base::Temperature t, UnitSystem units);
/// '125 mL', or '4.23 fl oz' in US customary units.
std::string plainVolume(base::Volume v, UnitSystem units);
/// '12.25 L', or '3.24 gal' in US customary units.
std::string plainLitres(base::Volume v, UnitSystem units);

}  // namespace model
