// Exact quantities as printed figures, in the number form of the reader.
#pragma once

#include "base/units.h"

#include <string>

namespace base {

/// A count of millionths as a decimal number with 0 to 6 places, halves rounded away from zero, digits of
/// the whole part in groups of three: 1'234'565'000 with 2 places is '1,234.57'. A negative number that does
/// not round to zero has a minus sign (U+2212).
std::string decimal(std::int64_t millionths, int places, const std::string& point, const std::string& group);

/// Square metres or square feet in millionths, cut off so that 'decimal' is the only rounding.
std::int64_t inSquareMetres(Area a);
std::int64_t inSquareFeet(Area a);
/// An area as people say it, of millionths of a square metre or foot: one decimal, none from 100 on, two
/// below 1.
std::string roundArea(std::int64_t millionths, const std::string& point, const std::string& group);
/// Metres in millionths, cut off likewise.
std::int64_t inMetres(Length l);

/// Feet and inches to the nearest quarter of an inch: 40'-6", 7'-0½", 8". Zero or above.
std::string feetAndInches(Length l);

}  // namespace base
