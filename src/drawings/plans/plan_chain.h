// Dimension lines: ticks at 45 degrees, the figure in a gap of the line, thin lines from the edge to the
// ends.
#pragma once

#include "drawings/plans/plan_sheet.h"

namespace drawings {

/// One length to be shown beside a deck. 'from' and 'to' lie along the dimension line.
struct Measure {
  base::Length from, to;
  base::Length nearFrom, nearTo;  // where the edge it measures lies, across the line, at both ends
  std::string text;
};

/// Measures in one line on one side of a deck.
struct Chain {
  Side side = Side::Top;
  std::vector<Measure> parts;
};

inline bool isAcross(Side side) {
  return side == Side::Top || side == Side::Bottom;
}  // the line runs along x
inline bool isBefore(Side side) { return side == Side::Top || side == Side::Left; }

/// Draws a chain 4 to 25 mm beside a deck, where its figures fit and nothing is in the way; else false.
bool writeChain(PlanSheet& sheet, const PlacedDeck& deck, const Chain& chain);

/// Draws the line of one edge, close beside it, where its figure fits into the line. 'mayGrow' is false where
/// it has to stay within what is drawn so far.
bool writeEdgeLine(PlanSheet& sheet, const Measure& edge, Side side, bool mayGrow);

}  // namespace drawings
