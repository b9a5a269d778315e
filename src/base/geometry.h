// Outlines on a plan, exactly: points on a grid of nanometres, every test in 128-bit integers (256-bit where
// a distance is squared twice). Coordinates stay within 100 km of the origin.
#pragma once

#include "base/fixed.h"

#include <array>
#include <span>
#include <vector>

namespace base {

struct Pt {
  std::int64_t x = 0, y = 0;
  friend constexpr bool operator==(const Pt&, const Pt&) = default;
};

/// A closed outline; the last point joins the first. The order of the points, clockwise or not, is free.
using Outline = std::span<const Pt>;

struct Disc {
  Pt centre;
  std::int64_t diameter = 0;
};

enum class Where { Inside, Edge, Outside };

/// Twice the enclosed area, never negative (shoelace formula).
Wide twiceArea(Outline outline);
/// The points without those that repeat their predecessor; a last point equal to the first goes as well.
std::vector<Pt> withoutRepeats(Outline outline);
/// At least three different points, some area, and no edge meets another except at its own ends.
bool isSimple(Outline outline);

Where locate(Outline outline, Pt p);
/// The edge counts as inside.
inline bool contains(Outline outline, Pt p) { return locate(outline, p) != Where::Outside; }

/// No part of the first lies outside the second; edges may touch. Outlines are simple.
bool isWithin(Outline inner, Outline outer);
bool isWithin(Outline inner, Disc outer);
bool isWithin(Disc inner, Outline outer);
bool isWithin(Disc inner, Disc outer);

/// Both have some area in common; edges may touch. Outlines are simple.
bool overlap(Outline a, Outline b);
bool overlap(Disc a, Outline b);
bool overlap(Disc a, Disc b);

/// Largest whole number whose square is not above n; n >= 0.
Wide squareRoot(Wide n);
/// The same of a * b, which need not fit into 128 bits; neither is negative.
Wide squareRootOfProduct(Wide a, Wide b);
/// Corners of a triangle with side a along the top from left to right, b going on from its right end and c
/// back to its left end, moved so that the box around it starts at (0, 0). The sides close.
std::array<Pt, 3> triangleCorners(std::int64_t a, std::int64_t b, std::int64_t c);

}  // namespace base
