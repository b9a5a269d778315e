// The boards of a deck one by one, or the treads of stairs.
#pragma once

#include "schedule/site/site.h"

namespace schedule {

/// Boards side by side, both ends included.
struct BoardSpan {
  int low = 0, high = 0;
};

struct Row {
  std::vector<base::Wide> sizes;      // of each, in a unit of the row's own
  std::vector<base::Length> lengths;  // of each, in all its pieces
  std::vector<model::Stretch> ends;   // of each, along it; empty for treads, which end alike
  base::Wide whole = 0;               // of the sizes
  model::Outline outline;             // on the site
  bool alongX = true;                 // which way the boards run
  base::Length low, high, pitch;      // from the first to the last, across them
  bool isFromHigh = false;            // stairs whose foot lies at the bottom or right side
  // Of each board: whether a pole reaches all of it from the ground, and from which decks beside.
  std::vector<bool> isReachedFromGround = {};
  std::vector<std::vector<std::size_t>> reachedFrom = {};
};

inline constexpr double poleReach = 3.5;  // m, a pad on a pole of 3 m and an arm: our own choice

/// Boards from the top or left side, treads from the foot. Nothing for what has neither, or no place.
std::optional<Row> rowOf(const model::PlacedDeck& placed, const model::Deck& deck);

/// Places that stand for a stretch of boards, ends and sides among them, no two neighbours a metre apart.
std::vector<Point> placesOf(const Row& row, int fromBoard, int boards);

/// Fills in from where each board is reached.
void findReach(Row& row, const SiteArea& area);

/// Whether a pole reaches all of some boards from a board beside them, which may be shorter than they are.
bool isReachedFromBoard(const Row& row, int fromBoard, int boards, int dryBoard);

/// The board of a place, counted as the row is.
int boardAt(const Row& row, Point p);

}  // namespace schedule
