// Fills pages with slices.
#include "typeset/pour.h"

#include <algorithm>
#include <cstdint>

namespace typeset {
namespace {

class Pourer {
 public:
  Pourer(Setter& setter, Stack& stack, EarlyFoot early) : setter_(setter), stack_(stack), early_(early) {
    newPage();
  }

  Dim run() {
    for (std::size_t i = 0; i < stack_.size();) {
      if (stack_[i].kind == Slice::Kind::PageBreak) {
        hasBreak_ = !cursor_.isTop || hasBreak_;
        ++i;
        continue;
      }
      if (hasBreak_) newPage();
      const std::size_t end = groupEnd(i);
      if (!fits(i, end) && !cursor_.isTop) {
        newPage();
        repeatFor(i, end);
      }
      if (fits(i, end)) {
        for (; i < end; ++i) place(stack_[i]);
      } else {
        breakGroup(i, end);
        i = end;
      }
    }
    return cursor_.bottom() - cursor_.top;
  }

 private:
  /// Behind the last slice that no break may part from this one.
  std::size_t groupEnd(std::size_t i) const {
    bool isKept = false;
    for (; i < stack_.size(); ++i) {
      const Slice& s = stack_[i];
      if (s.kind == Slice::Kind::PageBreak) break;
      if (s.kind == Slice::Kind::Matter) isKept = s.keepWithNext;
      if (s.kind == Slice::Kind::Rule)
        isKept = (s.rule != RuleKind::Close && s.rule != RuleKind::Strip) || s.keepWithNext;
      if (!isKept) return i + 1;
    }
    return i;
  }

  bool fits(std::size_t i, std::size_t end) const {
    Cursor c = cursor_;
    Dim where, lowest;
    for (; i < end; ++i) {
      c.pass(stack_[i], where);
      if (stack_[i].kind != Slice::Kind::Space) lowest = std::max(lowest, c.bottom());
    }
    return lowest <= foot();
  }

  Dim foot() const {
    const bool isEarly = setter_.out.pages.size() == early_.page + 1;
    return setter_.grid.bottom - (isEarly ? early_.above : Dim{});
  }

  void newPage() {
    const bool isFirst = setter_.out.pages.empty();
    const Grid& grid = setter_.grid;
    setter_.out.pages.push_back({grid.paper, {}});
    cursor_ = Cursor::at(isFirst && setter_.in.furniture.hasLetterhead ? grid.letterheadTop : grid.top,
                         grid.snap, grid.unit);
    hasBreak_ = false;
  }

  /// The head of a table once more above its next row.
  void repeatFor(std::size_t i, std::size_t end) {
    for (; i < end && stack_[i].kind != Slice::Kind::Matter; ++i) {
    }
    if (i == end || !stack_[i].repeat) return;
    Stack head = *stack_[i].repeat;
    for (Slice& s : head) place(s);
  }

  void place(Slice& slice) {
    Dim where;
    if (!cursor_.pass(slice, where)) return;
    Page& page = setter_.out.pages.back();
    for (Item& item : slice.items) {
      move(item, {}, where);
      page.items.push_back(std::move(item));
    }
    for (Bookmark& mark : slice.bookmarks) {
      mark.page = setter_.out.pages.size() - 1;
      mark.y += where;
      setter_.out.bookmarks.push_back(std::move(mark));
    }
  }

  void breakGroup(std::size_t i, std::size_t end) {
    for (std::size_t k = i; k < end && setter_.line == 0; ++k) setter_.line = stack_[k].line;
    for (std::size_t k = end; k-- > i;)
      if (stack_[k].line != 0) setter_.line = stack_[k].line;
    setter_.warn("this is taller than a page and was broken",
                 "make it shorter, or let it break at a place of your own");
    for (; i < end; ++i) {
      if (!fits(i, i + 1) && !cursor_.isTop) {
        newPage();
        repeatFor(i, end);
      }
      while (!fits(i, i + 1) && placeSome(stack_[i])) newPage();
      place(stack_[i]);
    }
  }

  /// Places what ends above the bottom of the page and leaves the rest in the slice, moved to its top. False
  /// when that would bring nothing: no line ends here, or all of it is one piece.
  bool placeSome(Slice& slice) {
    const Dim room = foot() - cursor_.y;
    const auto rest = std::stable_partition(slice.items.begin(), slice.items.end(),
                                            [&](const Item& item) { return extentOf(item).bottom <= room; });
    if (rest == slice.items.begin() || rest == slice.items.end()) return false;
    Dim top = room;
    for (auto item = rest; item != slice.items.end(); ++item) top = std::min(top, extentOf(*item).top);
    if (top <= Dim{}) return false;
    Slice here = slice;
    here.items.assign(std::make_move_iterator(slice.items.begin()), std::make_move_iterator(rest));
    slice.items.erase(slice.items.begin(), rest);
    for (Item& item : slice.items) move(item, {}, -top);
    slice.bookmarks.clear();
    slice.side = std::max(Dim{}, slice.side - top);
    slice.height = std::max(Dim{}, slice.height - top);
    place(here);
    return true;
  }

  struct Extent {
    Dim top, bottom;
  };
  static Extent extentOf(const Item& item) {
    if (const auto* run = std::get_if<TextRun>(&item.what))
      return {run->baseline.y - run->size, run->baseline.y + run->size / 3};
    if (const auto* image = std::get_if<PlacedImage>(&item.what))
      return {image->box.at.y, image->box.at.y + image->box.size.h};
    if (const auto* link = std::get_if<Link>(&item.what))
      return {link->box.at.y, link->box.at.y + link->box.size.h};
    Extent e{Dim{INT64_MAX}, Dim{INT64_MIN}};
    for (const Step& step : std::get<Path>(item.what).steps) {
      e.top = std::min(e.top, step.to.y);
      e.bottom = std::max(e.bottom, step.to.y);
    }
    return e;
  }

  Setter& setter_;
  Stack& stack_;
  const EarlyFoot early_;
  Cursor cursor_{};
  bool hasBreak_ = false;  // the next matter begins a new page
};

}  // namespace

Dim pour(Setter& setter, Stack&& stack, EarlyFoot early) { return Pourer(setter, stack, early).run(); }

}  // namespace typeset
