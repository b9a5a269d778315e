// Where the strips of a deck lie on its plan.
#pragma once

#include "drawings/plans/plan_sheet.h"

namespace drawings {

/// A strip of boards: its stretch across them, in site coordinates.
struct Band {
  base::Length from, to;
};

/// The strips of one placed deck. Boards run along x, or along y; treads lie across the way up.
struct StripBands {
  bool alongX = true;
  bool startsLow = true;            // the first strip lies at the upper or left side
  std::vector<Band> bands;          // in the order of the strips
  std::vector<int> numbers;         // of their strips, through the day
  std::vector<std::size_t> strips;  // their places in the edge
};

StripBands bandsOf(const PlacedDeck& placed, const model::Deck& deck, const model::WetEdge& edge);

/// The part of a deck that lies in a band, holes left out, as areas to fill.
Path bandPath(const PlanSheet& sheet, const Outline& outline, const Band& band, bool alongX);

}  // namespace drawings
