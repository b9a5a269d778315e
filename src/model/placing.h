// Decks laid out on their site.
#pragma once

#include "model/outline.h"

namespace model {

/// Which way is up on stairs, and sides of a deck in general.
enum class Side { Left, Right, Top, Bottom };

struct PlacedDeck {
  std::size_t index = 0;  // in the job
  Outline outline;        // site coordinates
  Extent extent;
  bool isStairs = false;
  Side up = Side::Right;  // of stairs
};

/// Decks where the job puts them; the others in order to the right of those, 'gap' apart, in a new row
/// a little farther down, where one would grow beyond 'rowWidth'. Decks without a place on a plan are left
/// out. Stairs that touch a deck turn so that they rise towards it.
std::vector<PlacedDeck> placeDecks(const std::vector<Deck>& decks, base::Length gap, base::Length rowWidth);

}  // namespace model
