// Fills pages with fragments.
#include "typeset/pages/paginate.h"

#include <algorithm>
#include <cstdint>

namespace typeset {
namespace {

class Paginator {
 public:
  Paginator(LayoutContext& context, VerticalList& list, EarlyFoot early)
      : context_(context), list_(list), early_(early) {
    newPage();
  }

  Dim run() {
    for (std::size_t i = 0; i < list_.size();) {
      if (list_[i].kind == Fragment::Kind::PageBreak) {
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
        for (; i < end; ++i) place(list_[i]);
      } else {
        breakGroup(i, end);
        i = end;
      }
    }
    return cursor_.bottom() - cursor_.top;
  }

 private:
  /// Behind the last fragment that no break may part from this one.
  std::size_t groupEnd(std::size_t i) const {
    bool isKept = false;
    for (; i < list_.size(); ++i) {
      const Fragment& s = list_[i];
      if (s.kind == Fragment::Kind::PageBreak) break;
      if (s.kind == Fragment::Kind::Matter) isKept = s.keepWithNext;
      if (s.kind == Fragment::Kind::Rule)
        isKept = (s.rule != RuleKind::Close && s.rule != RuleKind::Strip) || s.keepWithNext;
      if (!isKept) return i + 1;
    }
    return i;
  }

  bool fits(std::size_t i, std::size_t end) const {
    Cursor c = cursor_;
    Dim where, lowest;
    for (; i < end; ++i) {
      c.pass(list_[i], where);
      if (list_[i].kind != Fragment::Kind::Space) lowest = std::max(lowest, c.bottom());
    }
    return lowest <= foot();
  }

  Dim foot() const {
    const bool isEarly = context_.out.pages.size() == early_.page + 1;
    return context_.grid.bottom - (isEarly ? early_.above : Dim{});
  }

  void newPage() {
    const bool isFirst = context_.out.pages.empty();
    const Grid& grid = context_.grid;
    context_.out.pages.push_back({grid.paper, {}});
    cursor_ = Cursor::at(isFirst && context_.in.furniture.hasLetterhead ? grid.letterheadTop : grid.top,
                         grid.snap, grid.unit);
    hasBreak_ = false;
  }

  /// The head of a table once more above its next row.
  void repeatFor(std::size_t i, std::size_t end) {
    for (; i < end && list_[i].kind != Fragment::Kind::Matter; ++i) {
    }
    if (i == end || !list_[i].repeat) return;
    VerticalList head = *list_[i].repeat;
    for (Fragment& s : head) place(s);
  }

  void place(Fragment& fragment) {
    Dim where;
    if (!cursor_.pass(fragment, where)) return;
    Page& page = context_.out.pages.back();
    for (Item& item : fragment.items) {
      move(item, {}, where);
      page.items.push_back(std::move(item));
    }
    for (Bookmark& mark : fragment.bookmarks) {
      mark.page = context_.out.pages.size() - 1;
      mark.y += where;
      context_.out.bookmarks.push_back(std::move(mark));
    }
  }

  void breakGroup(std::size_t i, std::size_t end) {
    for (std::size_t k = i; k < end && context_.line == 0; ++k) context_.line = list_[k].line;
    for (std::size_t k = end; k-- > i;)
      if (list_[k].line != 0) context_.line = list_[k].line;
    context_.warn("this is taller than a page and was broken",
                  "make it shorter, or let it break at a place of your own");
    for (; i < end; ++i) {
      if (!fits(i, i + 1) && !cursor_.isTop) {
        newPage();
        repeatFor(i, end);
      }
      while (!fits(i, i + 1) && placeSome(list_[i])) newPage();
      place(list_[i]);
    }
  }

  /// Places what ends above the bottom of the page and leaves the rest in the fragment, moved to its top.
  /// False when that would bring nothing: no line ends here, or all of it is one piece.
  bool placeSome(Fragment& fragment) {
    const Dim room = foot() - cursor_.y;
    const auto rest = std::stable_partition(fragment.items.begin(), fragment.items.end(),
                                            [&](const Item& item) { return extentOf(item).bottom <= room; });
    if (rest == fragment.items.begin() || rest == fragment.items.end()) return false;
    Dim top = room;
    for (auto item = rest; item != fragment.items.end(); ++item) top = std::min(top, extentOf(*item).top);
    if (top <= Dim{}) return false;
    Fragment here = fragment;
    here.items.assign(std::make_move_iterator(fragment.items.begin()), std::make_move_iterator(rest));
    fragment.items.erase(fragment.items.begin(), rest);
    for (Item& item : fragment.items) move(item, {}, -top);
    fragment.bookmarks.clear();
    fragment.side = std::max(Dim{}, fragment.side - top);
    fragment.height = std::max(Dim{}, fragment.height - top);
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

  LayoutContext& context_;
  VerticalList& list_;
  const EarlyFoot early_;
  Cursor cursor_{};
  bool hasBreak_ = false;  // the next matter begins a new page
};

}  // namespace

Dim paginate(LayoutContext& context, VerticalList&& list, EarlyFoot early) {
  return Paginator(context, list, early).run();
}

}  // namespace typeset
