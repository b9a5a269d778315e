// The boards of a deck one by one, or the treads of stairs.
#pragma once

#include "schedule/crew/site.h"

namespace schedule {

struct Row {
  std::vector<base::Wide> sizes;      // of each, in a unit of the row's own
  std::vector<base::Length> lengths;  // of each, in all its pieces
  base::Wide whole = 0;               // of the sizes
  model::Outline outline;             // on the site
  bool alongX = true;                 // which way the boards run
  base::Length low, pitch;            // where the first begins, across them
  bool isFromHigh = false;            // stairs whose foot lies at the bottom or right side
};

/// Boards from the top or left side, treads from the foot. Nothing for what has neither, or no place.
std::optional<Row> rowOf(const model::PlacedDeck& placed, const model::Deck& deck);

/// Places that stand for a stretch of boards, ends and sides among them, no two neighbours a metre apart.
std::vector<Point> placesOf(const Row& row, int fromBoard, int boards);

/// The middle line of the boards a coat has come to: where whoever lays the next board stands.
std::vector<Segment> boardLines(const Row& row, int board);

/// The board of a place, counted as the row is.
int boardAt(const Row& row, Point p);

}  // namespace schedule
