// The strips of a day as a list: those that have no room to tell their times on the plan.
#pragma once

#include "drawings/pen/paths.h"

namespace drawings {

struct ListedDeck {
  const StripDeck* deck = nullptr;
  bool isTold = false;    // its strips tell their times themselves
  bool hasUnits = false;  // no note above tells the unit of the amounts
};

/// Below 'y': a row for each deck, its strips in columns. The height it takes.
Dim putStripList(Items& items, const std::vector<ListedDeck>& decks, const Pen& pen, Dim width, Dim y);

}  // namespace drawings
