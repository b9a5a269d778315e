// Sizes of shapes and decks.
#pragma once

#include "model/estimate.h"

namespace estimate {

/// Area and perimeter of one shape. Polygons by the shoelace formula; triangles by Heron's; circles with pi
/// to 16 digits. Lengths are rounded once to the nanometre, areas to the square micrometre. The perimeter of
/// a ring counts both its edges: both are cut in.
struct Flat {
  base::Area area;
  base::Length perimeter;
};
Flat measureShape(const model::Shape& shape);

/// Width and height of the smallest upright box around a shape as it lies on the plan. Stairs lie with their
/// treads across, a triangle with its first side along the top, strips and screens as if laid flat.
model::Place extent(const model::Shape& shape);

/// True when no two edges of the outline touch or cross but at their common corner. At least three points.
bool isSimple(const std::vector<model::Place>& points);

/// Cut-outs lie within the deck and apart from each other.
model::Measures measureDeck(const model::Deck& deck);

/// Sums of the decks; 'across' and 'along' are the largest of them.
model::Measures sumOf(const std::vector<model::Measures>& decks);

}  // namespace estimate
