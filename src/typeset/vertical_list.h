// Blocks are first measured into fragments that no page break can cut, then filled into pages.
#pragma once

#include "typeset/page.h"

#include <functional>
#include <memory>
#include <span>

namespace typeset {

/// How a rule behaves towards its neighbours, so that two never stand close together.
enum class RuleKind {
  Section,  // left out at the top of a page and after another rule
  Between,  // between rows: also takes back the space since the rule before it
  Open,     // above a table: takes the place of a rule just before it; at the top of a page it hangs above
  Close,    // under a table: stays with the row before it
  Strip     // around a strip: no table shares it
};

struct Fragment;
using VerticalList = std::vector<Fragment>;

/// What a fragment holds that is made when its height is known.
struct Flexible {
  Dim least, best;                             // heights
  std::function<Dim()> possibleLeast;          // not below 'least': costs a drawing
  std::function<void(Fragment&, Dim)> settle;  // fills in what is no higher than this
};

struct Fragment {
  enum class Kind { Matter, Space, Rule, PageBreak };
  Kind kind = Kind::Matter;
  Dim height;
  bool keepWithNext = false;
  std::vector<Item> items;  // y from the top of the fragment, x from the left edge of the paper
  bool snaps = false;       // a space: goes to the next whole line first, below what hangs in the side column
  Dim side;                 // what hangs in the side column reaches so far below the top of this fragment
  Dim baseline = {-1};      // of its first line; -1 = none
  RuleKind rule = RuleKind::Close;
  Dim width, weight;  // of a rule
  std::shared_ptr<const VerticalList>
      repeat;                       // set again above this fragment when it begins a page: a table's head
  std::vector<Bookmark> bookmarks;  // y from the top of the fragment
  int line = 0;                     // in the template, for messages
  std::shared_ptr<const Flexible> flexible;  // until it is settled
  bool isPanel = false;                      // stands by itself: a page may begin with it
  bool isBlankRow = false;                   // lines to write on and no word
};

Fragment space(Dim height, bool snaps = false);
Fragment ruleFragment(RuleKind kind, Dim x, Dim width, Dim weight, Colour colour);

/// Walks down a page: where each fragment stands, and which ones vanish.
struct Cursor {
  Dim top, line, unit;
  Dim y = top;
  Dim floor;  // bottom of what hangs in the side column
  bool isTop = true;
  bool hasRule = false;  // nothing but space since a rule
  Dim ruleY, ruleWidth, ruleWeight;
  RuleKind rule = RuleKind::Close;  // that rule

  static Cursor at(Dim top, Dim line, Dim unit) {
    return {top, line, unit, top, {}, true, false, {}, {}, {}, RuleKind::Close};
  }
  /// Moves past the fragment. True when it prints, at 'where'.
  bool pass(const Fragment& fragment, Dim& where);
  Dim bottom() const { return std::max(y, floor); }
};

Dim heightOf(std::span<const Fragment> list, Dim line, Dim unit);
/// The same with all that is flexible at its lowest.
Dim leastHeightOf(std::span<const Fragment> list, Dim line, Dim unit);
/// Fills in what is flexible.
void settle(Fragment& fragment, Dim height);
/// The baseline of the first line in it; -1 = none.
Dim firstBaseline(const VerticalList& list);
void append(VerticalList& to, VerticalList&& more);
/// No page break inside; one may come after it.
void keepTogether(std::span<Fragment> list);
void move(Item& item, Dim dx, Dim dy);
/// Everything in one fragment that cannot be cut.
Fragment collapse(VerticalList&& list, Dim line, Dim unit);
/// Vertical lists side by side, cut where none of them is cut.
VerticalList parallel(std::vector<VerticalList>&& lists, Dim line, Dim unit);

constexpr Dim roundUp(Dim d, Dim step) {
  const std::int64_t rest = d.raw % step.raw;
  return rest == 0 ? d : Dim{d.raw - rest + (rest > 0 ? step.raw : 0)};
}

}  // namespace typeset
