// Draws the strips of one deck on the plan of a day.
#pragma once

#include "figures/strip_bands.h"

namespace figures {

/// Each step is taken for all decks before the next, so that later words find the room that is left.
class StripsDrawer {
 public:
  /// All outlive it.
  StripsDrawer(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, const StripDeck& strips);

  void fill();        // every other strip tinted, boards, borders, and the corner to start at
  void number();      // in the strips, or beside narrow ones
  void drawWayOut();  // an arrow; the words beside it where no other deck lies
  void tell();        // time and litres in the strips; where they are narrow, of some only

 private:
  Point point(base::Length along, base::Length across) const;
  void fill(const Band& band, const char* name);
  Words numeral(const std::string& text) const;
  /// The corner of the first strip that lies farthest from the way out, filled.
  void drawCorner();
  enum class From { End, Middle };
  /// A free place in a band for a block of this size, looked for from the end where each board starts, or
  /// from its middle outwards. Nothing when the band is too narrow.
  /// It may reach over the strips beside a band that is too narrow for it.
  std::optional<Point> spot(const Band& band, Size size, From from, bool mayReachOver = false) const;
  /// How many of the narrowest strips blocks of this height stand on: so many strips share one.
  std::int64_t everyNth(Dim high) const;
  /// A free place for it beyond an end of the boards in a band, the one near the way out first.
  std::optional<Point> spotBeside(const Band& band, Size size) const;
  bool numberInside(const Band& band, const Words& w);
  /// Beside the end where the boards of a narrow strip start, with a short leader.
  void numberOutside(const Band& band, const std::string& text);
  void arrow(Point from, Point to);
  void sayWayOut(Point middle, bool isUpright);

  PlanSheet& sheet_;
  const PlacedDeck& placed_;
  const model::Deck& deck_;
  const StripDeck& strips_;
  StripBands bands_;
  model::Place out_;         // site coordinates
  bool leavesHigh_ = false;  // the way out is nearer to the right or lower ends of the boards
};

}  // namespace figures
