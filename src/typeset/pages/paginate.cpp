// Fills pages with fragments.
#include "typeset/pages/paginate.h"

#include "typeset/extent.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <span>

namespace typeset {
namespace {

Dim bottomOf(const Item& item) {
  const Rect box = extentOf(item);
  return box.at.y + box.size.h;
}

/// Lines to write on that end a document go on to the foot of its last page.
void letLinesGoOn(VerticalList& list) {
  const auto last = std::find_if(list.rbegin(), list.rend(),
                                 [](const Fragment& f) { return f.kind == Fragment::Kind::Matter; });
  if (last == list.rend() || !last->isBlankRow) return;
  constexpr int most = 12;
  const Dim row = last->height;
  last->flexible = std::make_shared<const Flexible>(Flexible{row, row * most, [row] { return row; },
                                                             [row](Fragment& f, Dim height) {
                                                               const std::vector<Item> lines = f.items;
                                                               for (f.height = row; f.height + row <= height;
                                                                    f.height += row)
                                                                 for (Item line : lines) {
                                                                   move(line, {}, f.height);
                                                                   f.items.push_back(std::move(line));
                                                                 }
                                                             }});
}

class Paginator {
 public:
  Paginator(LayoutContext& context, VerticalList& list, EarlyFoot early)
      : context_(context), list_(list), early_(early) {
    newPage();
  }

  Pagination run() {
    for (Fragment& f : list_)
      if (f.flexible)
        f.height = context_.in.fit.fillsEvenly ? std::min(f.flexible->best, f.flexible->possibleLeast())
                                               : f.flexible->least;
    beginPart(0);
    pass(0, list_.size());
    return {cursor_.bottom() - cursor_.top, std::move(ranges_)};
  }

 private:
  /// Fills pages with what stands from 'i' to 'end'.
  void pass(std::size_t i, std::size_t end) {
    while (i < end) {
      if (list_[i].kind == Fragment::Kind::PageBreak) {
        hasBreak_ = !cursor_.isTop || hasBreak_;
        ++i;
        if (!isTrial_) beginPart(i);
        continue;
      }
      if (hasBreak_) newPage();
      i = placeGroup(i);
    }
  }

  /// What no break may part, on this page or the next; where the group ends.
  std::size_t placeGroup(std::size_t i) {
    const std::size_t end = groupEnd(i);
    if (!isTrial_) settleGroup(i, end);
    if (!fits(i, end) && !cursor_.isTop) {
      newPage();
      repeatFor(i, end);
    }
    if (fits(i, end)) {
      for (; i < end; ++i) place(list_[i]);
    } else {
      breakGroup(i, end);
    }
    return end;
  }

  /// A trial walks on from here without placing anything: the number of its last page.
  std::size_t lastPageOf(std::size_t i, std::size_t end) const {
    Paginator trial = *this;
    trial.isTrial_ = true;
    trial.pass(i, end);
    return trial.pageCount_;
  }

  /// Where the policy wants pages to be filled alike, those up to the next page break end so early that one
  /// line less would need a page more.
  void beginPart(std::size_t i) {
    above_ = {};
    if (!context_.in.fit.fillsEvenly) return;
    const auto isBreak = [](const Fragment& f) { return f.kind == Fragment::Kind::PageBreak; };
    const auto end = static_cast<std::size_t>(
        std::find_if(list_.begin() + static_cast<std::ptrdiff_t>(i), list_.end(), isBreak) - list_.begin());
    const std::size_t fewest = lastPageOf(i, end);
    if (fewest <= pageCount_ + (hasBreak_ ? 1 : 0)) return;
    std::int64_t least = 0, tooMany = context_.pageHeight().raw / context_.grid.unit.raw;
    while (least + 1 < tooMany) {
      const std::int64_t middle = (least + tooMany) / 2;
      above_ = context_.grid.unit * middle;
      (lastPageOf(i, end) == fewest ? least : tooMany) = middle;
    }
    above_ = context_.grid.unit * least;
  }

  /// Up to here a limit counts pages, and the last page that it allows; nothing without a limit.
  struct Limit {
    std::size_t end, page;
  };
  std::optional<Limit> limitAt(std::size_t i) const {
    const FitPolicy& fit = context_.in.fit;
    if (fit.mostPages > 0) return Limit{list_.size(), fit.mostPages};
    const std::size_t each = fit.bestPagesEach > 0 ? fit.bestPagesEach : fit.mostPagesEach;
    if (each == 0) return std::nullopt;
    std::size_t end = i + 1;
    while (end < list_.size() && !isTitle(list_[end])) ++end;
    const bool startsHere = isTitle(list_[i]);
    return Limit{end, (startsHere ? pageCount_ + (hasBreak_ ? 1 : 0) : titlePage_) + each - 1};
  }

  static bool isTitle(const Fragment& f) { return !f.bookmarks.empty() && f.bookmarks.front().level == 1; }

  /// Everything flexible in the group becomes as high as it likes, or as its page and the limit allow.
  void settleGroup(std::size_t from, std::size_t end) {
    for (std::size_t i = from; i < end; ++i) {
      Fragment& f = list_[i];
      if (!f.flexible) continue;
      const Dim unit = context_.grid.unit, best = f.flexible->best;
      const auto limit = f.isBlankRow ? Limit{list_.size(), lastPageOf(from, list_.size())} : limitAt(from);
      const auto group = std::span(list_).subspan(from, end - from);
      const bool fitsPage = context_.height(group) <= context_.pageHeight();
      const auto lastPage = [&] { return limit ? lastPageOf(from, limit->end) : 0; };
      std::size_t allowed = limit ? limit->page : 0;
      const auto does = [&](Dim height) {
        f.height = height;
        return (!fitsPage || context_.height(group) <= context_.pageHeight()) && lastPage() <= allowed;
      };
      if (does(best)) {
        settle(f, best);
        continue;
      }
      const Dim least = f.height = std::min(best, f.flexible->possibleLeast());
      allowed = std::max(allowed, lastPage());
      std::int64_t steps = 0, tooMany = (best - least).raw / unit.raw + 1;
      while (steps + 1 < tooMany) {
        const std::int64_t middle = (steps + tooMany) / 2;
        (does(least + unit * middle) ? steps : tooMany) = middle;
      }
      settle(f, least + unit * steps);
    }
  }

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
    const bool isEarly = pageCount_ == early_.page + 1;
    return context_.grid.bottom - std::max(above_, isEarly ? early_.above : Dim{});
  }

  void newPage() {
    const bool isFirst = pageCount_ == 0;
    const Grid& grid = context_.grid;
    ++pageCount_;
    if (!isTrial_) context_.out.pages.push_back({grid.paper, {}});
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
    if (!cursor_.pass(fragment, where) || isTrial_) return;
    Page& page = context_.out.pages.back();
    for (Item& item : fragment.items) {
      move(item, {}, where);
      page.items.push_back(std::move(item));
    }
    for (Bookmark& mark : fragment.bookmarks) {
      mark.page = pageCount_ - 1;
      mark.y += where;
      if (mark.level == 1) titlePage_ = pageCount_;
      ranges_.push_back({mark.title, mark.level == 1, fragment.line, pageCount_, pageCount_});
      context_.out.bookmarks.push_back(std::move(mark));
    }
    if (!ranges_.empty() && fragment.kind == Fragment::Kind::Matter) ranges_.back().last = pageCount_;
  }

  void breakGroup(std::size_t i, std::size_t end) {
    if (!isTrial_) tellOfGroup(i, end);
    for (; i < end; ++i) {
      if (!fits(i, i + 1) && !cursor_.isTop) {
        newPage();
        repeatFor(i, end);
      }
      while (!isTrial_ && !fits(i, i + 1) && placeSome(list_[i])) newPage();
      place(list_[i]);
    }
  }

  void tellOfGroup(std::size_t i, std::size_t end) {
    for (std::size_t k = i; k < end && context_.line == 0; ++k) context_.line = list_[k].line;
    for (std::size_t k = end; k-- > i;)
      if (list_[k].line != 0) context_.line = list_[k].line;
    context_.warn("this is taller than a page and was broken",
                  "make it shorter, or let it break at a place of your own");
  }

  /// Places what ends above the bottom of the page and leaves the rest in the fragment, moved to its top.
  /// False when that would bring nothing: no line ends here, or all of it is one piece.
  bool placeSome(Fragment& fragment) {
    const Dim room = foot() - cursor_.y;
    const auto rest = std::stable_partition(fragment.items.begin(), fragment.items.end(),
                                            [&](const Item& item) { return bottomOf(item) <= room; });
    if (rest == fragment.items.begin() || rest == fragment.items.end()) return false;
    Dim top = room;
    for (auto item = rest; item != fragment.items.end(); ++item) top = std::min(top, extentOf(*item).at.y);
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

  LayoutContext& context_;
  VerticalList& list_;
  const EarlyFoot early_;
  bool isTrial_ = false;
  Cursor cursor_{};
  std::size_t pageCount_ = 0, titlePage_ = 0;  // so far; where the title above stands
  Dim above_;                                  // the foot of the pages of this part
  bool hasBreak_ = false;                      // the next matter begins a new page
  std::vector<PageRange> ranges_;
};

}  // namespace

Pagination paginate(LayoutContext& context, VerticalList&& list, EarlyFoot early) {
  letLinesGoOn(list);
  return Paginator(context, list, early).run();
}

}  // namespace typeset
