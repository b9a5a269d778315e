// Shapes as closed lines in site coordinates: what plans are drawn from and boards counted on.
#pragma once

#include "model/job.h"

namespace model {

struct Extent {
  Place from, to;  // upper left and lower right corner

  base::Length width() const { return to.x - from.x; }
  base::Length height() const { return to.y - from.y; }
};

/// A closed line: its corners in order, or a circle when it has none.
struct Loop {
  std::vector<Place> corners;
  Place centre;
  base::Length radius;
  /// Of a line of many corners what each 16 sides in turn cover: who looks for crossings passes over most.
  std::vector<Extent> reaches = {};

  bool isCircle() const { return corners.empty(); }
};

/// What lies within an edge and outside the holes.
struct Outline {
  Loop edge;
  std::vector<Outline> holes;
};

/// A shape from its own corner: the upper left corner of what it covers, and the points' own zero for a
/// polygon. A triangle has its first side along the top; stairs rise along x.
/// Nothing for what has no place on a plan: strips, screens and areas somebody else measured.
std::optional<Outline> outlineOf(const Shape& shape);

/// A deck with its cut-outs, from the deck's own corner.
std::optional<Outline> outlineOf(const Deck& deck);

/// Of what lies around the areas, where it lies on the site.
std::optional<Outline> outlineOf(const Around& one);

Outline moved(const Outline& outline, Place by);
Extent extentOf(const Outline& outline);

/// The stretches of a line across the outline that lie inside it and outside its holes, in order. The line
/// runs along x at height 'at', or along y.
struct Stretch {
  base::Length from, to;
};
std::vector<Stretch> stretches(const Outline& outline, base::Length at, bool alongX);
/// The same, holes and all.
std::vector<Stretch> stretches(const Loop& edge, base::Length at, bool alongX);

/// A place inside the outline and outside its holes, or no farther than 'near' from there along x or y.
bool touches(Place place, const Outline& outline, base::Length near);

/// Whether boards run along x. 'Long side' is the longer side of what the deck covers; on a square they
/// always run along x.
bool runsAlongX(const Extent& extent, Run run);

/// Where boards meet, every n-th of them, clipped to the outline. Counted from the upper or left side.
struct Seam {
  Place from, to;
};
std::vector<Seam> seams(const Outline& outline, const Boards& boards, std::int64_t every);

/// Straight distance of two places.
base::Length distance(Place a, Place b);

}  // namespace model
