// The sheet a deck plan is drawn on: decks placed on the site, the scale, and what room is still free.
#pragma once

#include "drawings/pen/paths.h"
#include "model/placing.h"

namespace drawings {

using model::Extent;
using model::Loop;
using model::Outline;
using model::PlacedDeck;
using model::placeDecks;
using model::Side;
using model::Stretch;

/// 'A' for the first deck.
std::string letterOf(std::size_t index);

class PlanSheet {
 public:
  PlanSheet(const Pen& pen, std::int64_t scale, std::vector<PlacedDeck> placed);

  Dim on(base::Length l) const {
    return {base::mulDiv(l.millionths, 36, 1000 * scale_, base::Round::HalfUp)};
  }
  Point on(model::Place p) const { return {on(p.x), on(p.y)}; }
  Rect on(const Extent& e) const { return {on(e.from), {on(e.width()), on(e.height())}}; }
  base::Length onSite(Dim d) const { return {base::mulDiv(d.raw, 1000 * scale_, 36, base::Round::HalfUp)}; }

  /// Nothing is drawn there yet, and no deck lies there. Thin lines may cross each other, so a line may ask
  /// without minding those taken as thin.
  bool isFree(const Rect& r, bool mayCrossThin = false) const;
  /// Nothing is written there yet.
  bool isUntaken(const Rect& r) const;
  /// A deck other than this one lies there.
  bool meetsOther(const PlacedDeck& deck, const Rect& r) const;
  /// It lies wholly on the deck's boards, and nothing is written there yet.
  bool isOnBoards(const PlacedDeck& deck, const Rect& r) const;
  /// The same in two steps, for many places at one height: the stretches that are boards from the top of 'r'
  /// to its bottom, and whether it lies on one of them.
  std::vector<Stretch> boardsAcross(const PlacedDeck& deck, const Rect& r) const;
  bool isOnBoards(const std::vector<Stretch>& boards, const Rect& r) const;
  /// A spot in the lower half of what is drawn so far where a block of this size has 'margin' around it: the
  /// lowest, then the one farthest right.
  std::optional<Point> freeSpot(Size size, Dim margin) const;

  void take(const Rect& r);
  void takeThin(const Rect& r);
  /// Something may be drawn there that takes no room.
  void reach(const Rect& r) { bounds_ = around(bounds_, r); }
  Rect bounds() const { return bounds_; }  // of everything so far

  const Pen& pen;
  const std::vector<PlacedDeck> placed;
  Items items;
  std::vector<std::string> notes;  // what found no room, for a line under the plan

  std::int64_t scale() const { return scale_; }

 private:
  bool meets(std::size_t deck, const Rect& r) const;

  std::int64_t scale_;
  std::vector<Rect> areas_;  // of the decks placed
  std::vector<Rect> taken_, thin_;
  Rect bounds_;
};

}  // namespace drawings
