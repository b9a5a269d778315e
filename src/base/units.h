// The units of the trade. Each is chosen so that metric and US customary sizes are whole counts of its
// millionths: 1/64 in = 396 875 nm, 1 ft2 = 92 903 040 000 um2, 1 gal = 3 785 411 784 nL (NIST SP 811, 2008,
// App. B.8; inch, foot and gallon are exact by definition).
#pragma once

#include "base/fixed.h"

namespace base {

struct Millimetre;
struct SquareMillimetre;
struct Millilitre;
struct Hour;
struct Percent;
struct Piece;
struct Celsius;

using Length = Quantity<Millimetre>;      // millionths are nanometres
using Area = Quantity<SquareMillimetre>;  // millionths are square micrometres
using Volume = Quantity<Millilitre>;      // millionths are nanolitres
using Hours = Quantity<Hour>;
using Share = Quantity<Percent>;  // 5 % is 5 000 000 millionths
using Count = Quantity<Piece>;    // fixings, sheets of abrasive; may be broken until bought
using Temperature = Quantity<Celsius>;

constexpr Length metres(std::int64_t n) { return Length::whole(n * 1000); }
constexpr Length millimetres(std::int64_t n) { return Length::whole(n); }
constexpr Area squareMetres(std::int64_t n) { return Area::whole(n * 1'000'000); }
constexpr Volume litres(std::int64_t n) { return Volume::whole(n * 1000); }
constexpr Volume millilitres(std::int64_t n) { return Volume::whole(n); }

/// width * depth, rounded to the square micrometre.
constexpr Area operator*(Length a, Length b) {
  return {divide(Wide{a.millionths} * b.millionths, 1'000'000, Round::HalfUp)};
}

/// A spreading rate (ISO 4618), kept as the two amounts it was given in: '350 ft2/gal' and a test patch of
/// '1 m2' with '125 mL' are both exact. Both parts are above zero.
struct Spread {
  Area area;
  Volume volume;
};

/// Product needed to cover an area, rounded up to the next nanolitre.
constexpr Volume operator/(Area a, Spread s) {
  return {divide(Wide{a.millionths} * s.volume.millionths, s.area.millionths, Round::Up)};
}

/// q * (1 + share), rounded to the nearest millionth.
template <class Unit>
constexpr Quantity<Unit> increased(Quantity<Unit> q, Share by) {
  constexpr std::int64_t whole = 100'000'000;  // 100 % in millionths
  return {mulDiv(q.millionths, whole + by.millionths, whole, Round::HalfUp)};
}

// As floating point, for physics, statistics and JSON; never for what is bought or billed.

/// In the quantity's own unit: millimetres, hours, percent, degrees Celsius.
template <class Unit>
constexpr double floating(Quantity<Unit> q) {
  return static_cast<double>(q.millionths) / 1e6;
}

constexpr double asMetres(Length l) { return static_cast<double>(l.millionths) / 1e9; }
constexpr double asSquareMetres(Area a) { return static_cast<double>(a.millionths) / 1e12; }
constexpr double asLitres(Volume v) { return static_cast<double>(v.millionths) / 1e9; }

}  // namespace base
