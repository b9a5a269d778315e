// Draws the strips of one deck on the plan of a day.
#pragma once

#include "drawings/plans/strip_bands.h"

namespace drawings {

/// Each step is taken for all decks before the next, so that later words find the room that is left.
class StripsDrawer {
 public:
  /// All outlive it.
  StripsDrawer(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, const StripDeck& strips);

  std::size_t count() const { return bands_.bands.size(); }
  std::size_t deck() const { return placed_.index; }

  void fill();        // every other strip tinted, boards, borders, and the corner to start at
  void drawWayOut();  // an arrow beside the deck; inside it, up to its edge, where the next deck lies
  /// Numbers, times and litres in every strip, where all have room for them. False where they have not.
  bool tell();
  /// Numbers alone: all in the strips, or all beside them on one side where that can be. Those beside keep
  /// away from the numbers of other decks, 'all', to which they are added. False where one found no room:
  /// the list alone tells it.
  bool number(std::vector<Rect>& all);
  void name();  // letter and name in a strip, else beside the deck

 private:
  Point point(base::Length along, base::Length across) const;
  base::Length middleOf(const Band& band) const { return {(band.from.millionths + band.to.millionths) / 2}; }
  void fill(const Band& band, const char* name);
  const char* fillOf(std::size_t band) const { return band % 2 == 0 ? "tint" : "white"; }
  /// The corner of the first strip that lies farthest from the way out, filled.
  void drawCorner();

  enum class From { End, Middle };
  /// A free place in a band for a block of this size, looked for from the end where each board starts, or
  /// from its middle outwards. Nothing when the band is too narrow.
  std::optional<Point> spot(const Band& band, Size size, From from) const;

  Side sideOfWayOut() const;
  void arrow(Point from, Point to);
  /// The deck's letter beside its arrow.
  void letter(Point middle, bool isUpright);

  /// Words of a strip in rows, its number on a disc in front.
  struct Block {
    std::vector<std::vector<ShapedText>> rows;
    Size size;
  };
  enum class Shape { OneRow, Rows, Small };
  Block blockOf(std::size_t band, Shape shape) const;
  bool tellAs(Shape shape);

  enum class Look { Disc, Plain };
  struct Mark {
    std::size_t band = 0;
    Point centre;
    Size size;
    Look look = Look::Disc;
    std::optional<Point> end;  // of the boards, where its leader begins; nothing inside
  };
  Size sizeOf(std::size_t band, Look look) const;
  std::optional<Mark> markInside(std::size_t band) const;
  /// In a band narrower than its disc, down to half of it, so far along that it meets none of 'others'.
  std::optional<Mark> markOver(std::size_t band, const std::vector<Mark>& others) const;
  /// Beyond one end of a band's boards, so many columns out that it meets none of 'others'. Its leader may
  /// lean to make room beside the next deck.
  std::optional<Mark> markBeside(std::size_t band, bool isLow, Look look, const std::vector<Mark>& others,
                                 bool mayLean) const;
  std::optional<std::vector<Mark>> marksInside() const;
  std::optional<std::vector<Mark>> marksBeside(bool isLow, Look look, bool mayLean,
                                               const std::vector<Rect>& away) const;
  /// Each where it can be.
  std::vector<Mark> marksAnywhere(bool& isClear) const;
  Rect roomOf(const Mark& mark) const;
  Rect leaderOf(const Mark& mark) const;
  void draw(const Mark& mark);

  bool nameInside(const std::vector<ShapedText>& words);
  bool nameBeside(const std::vector<ShapedText>& words);

  PlanSheet& sheet_;
  const PlacedDeck& placed_;
  const model::Deck& deck_;
  const StripDeck& strips_;
  StripBands bands_;
  model::Place out_;         // site coordinates
  bool leavesHigh_ = false;  // the way out is nearer to the right or lower ends of the boards
};

}  // namespace drawings
