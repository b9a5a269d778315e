// Sets a document in the widest way that its policy for paper allows.
#include "typeset/pages/layout.h"

#include "typeset/blocks/sections.h"
#include "typeset/pages/fit.h"
#include "typeset/pages/furniture.h"
#include "typeset/pages/paginate.h"
#include "typeset/pages/word_ends.h"

#include <algorithm>

namespace typeset {
namespace {

constexpr int toKeepTheLimit = 12;  // per cent of the grid; lines that are read stay further apart

/// A document set in one way.
struct Attempt {
  Document document;
  base::Diagnostics messages;
  Pagination pages;
  Dim whole;  // height of a page

  std::size_t count() const { return document.pages.size(); }
  bool isShort(std::int64_t parts, std::int64_t of) const {  // its last page
    return count() > 1 && pages.filled * of < whole * parts;
  }
};

struct Way {
  const model::Theme& look;
  EarlyFoot early = {};
  bool leavesOutOptional = false;
};

Attempt attempt(const LayoutInput& in, const Way& way) {
  Attempt a;
  Document& document = a.document;
  document.title = in.title;
  document.subject = in.subject;
  document.author = in.author;
  document.language = in.language;
  document.date = in.date;
  document.faces = in.fonts.faces;
  Tag root;
  root.role = Role::Document;
  document.tags.push_back(std::move(root));
  LayoutContext context(in, way.look, document, a.messages);
  context.leavesOutOptional = way.leavesOutOptional;
  a.pages = paginate(context, layOutDocument(context), way.early);
  a.whole = context.pageHeight();
  addFurniture(context);
  return a;
}

/// What goes beyond a limit of the policy: the first title or section.
const PageRange* beyondLimit(const Attempt& a, const FitPolicy& fit, std::size_t mostPagesEach) {
  std::size_t title = 1;  // its page
  for (const PageRange& range : a.pages.ranges) {
    if (range.isTitle) title = range.first;
    if (fit.mostPages > 0 && range.last > fit.mostPages) return &range;
    if (mostPagesEach > 0 && range.last - title >= mostPagesEach) return &range;
  }
  return nullptr;
}
const PageRange* beyondLimit(const Attempt& a, const FitPolicy& fit) {
  return beyondLimit(a, fit, fit.mostPagesEach);
}

/// A last page that is filled less than two fifths is saved where a tighter grid brings its matter onto the
/// pages before it, and so is one too many for a document that has a limit. Where none does, the page before
/// it ends early, so that the last one is filled at least a third.
Attempt onGrids(const LayoutInput& in, Way way) {
  Attempt best = attempt(in, way);
  if (best.isShort(2, 5) || beyondLimit(best, in.fit) || beyondLimit(best, in.fit, in.fit.bestPagesEach)) {
    const std::size_t pages = best.count();
    const bool isByDay = in.fit.bestPagesEach > 0;
    model::Theme look = way.look;
    if (isByDay) look.shrink = base::Share::whole(toKeepTheLimit);
    const std::vector<model::Theme> looks = in.fit.largeReading && !isByDay ? std::vector{closedUp(look)}
                                            : in.fit.keepsType || isByDay   ? closer(look)
                                                                            : tighter(look);
    // Each day that fits its page saves one: the widest of those with the fewest.
    for (std::size_t i = 0; isByDay && i < looks.size(); ++i) {
      Attempt other = attempt(in, {looks[i], {}, way.leavesOutOptional});
      if (other.count() < best.count()) best = std::move(other);
    }
    // The widest that does it is among those from 'first' to 'end'; where one does, tighter ones do, too.
    for (std::size_t first = 0, end = isByDay ? 0 : looks.size(); first < end;) {
      const std::size_t middle = (first + end - 1) / 2;
      Attempt other = attempt(in, {looks[middle], {}, way.leavesOutOptional});
      const bool doesIt = other.count() < pages;
      (doesIt ? end : first) = doesIt ? middle : middle + 1;
      if (doesIt) best = std::move(other);
    }
  }
  if (best.isShort(1, 4) && !beyondLimit(best, in.fit)) {
    way.early = {best.count() - 2, best.whole / 3 - best.pages.filled};
    Attempt other = attempt(in, way);
    if (other.count() == best.count() && other.pages.filled > best.pages.filled) best = std::move(other);
  }
  return best;
}

/// The same, without optional drawings where there are too many pages with them.
Attempt withOptional(const LayoutInput& in, const model::Theme& look) {
  Attempt best = onGrids(in, {look});
  const bool hasOptional = std::any_of(in.drawings.begin(), in.drawings.end(),
                                       [](const auto& named) { return named.second.isOptional(); });
  if (!hasOptional || !beyondLimit(best, in.fit)) return best;
  Attempt other = onGrids(in, {look, {}, true});
  return other.count() < best.count() ? std::move(other) : std::move(best);
}

/// One more sheet of paper for less than half a page.
bool needsHalfASheet(const Attempt& a) { return a.count() > 2 && a.count() % 2 == 1 && a.isShort(1, 2); }

void tellOfLimit(const Attempt& a, const LayoutInput& in, base::Diagnostics& messages) {
  const PageRange* range = beyondLimit(a, in.fit);
  if (!range) return;
  const std::size_t most = in.fit.mostPages > 0 ? in.fit.mostPages : in.fit.mostPagesEach;
  messages.warn(base::placeOf(in.lines, range->line), {},
                "'" + range->title + "' does not fit: it ends on page " + std::to_string(range->last) +
                    ", and " + (in.fit.mostPages > 0 ? "the document" : "what stands under one title") +
                    " has " + std::to_string(most) + (most == 1 ? " page" : " pages") + " at most",
                "make it shorter, or what stands above it");
}

}  // namespace

Document layOut(const LayoutInput& in, base::Diagnostics& messages) {
  const FitPolicy& fit = in.fit;
  Attempt best = withOptional(in, fit.compactTables  ? compactTables(in.theme)
                                  : fit.largeReading ? legible(in.theme)
                                                     : in.theme);
  const bool isLong = beyondLimit(best, fit);
  if (fit.hasLimit() && !fit.largeReading && (isLong || (!fit.keepsType && needsHalfASheet(best)))) {
    constexpr int toSavePaper = 8;  // per cent
    const auto shrink = base::Share::whole(isLong ? toKeepTheLimit : toSavePaper);
    model::Theme look = fit.compactTables ? compactTables(in.theme) : in.theme;
    look.shrink = shrink;
    Attempt shorter = withOptional(in, fit.keepsType ? look : compactBody(in.theme, shrink));
    // What there is to say of the wider look is said: it is the one that was asked for.
    if (shorter.count() < best.count()) {
      best.document = std::move(shorter.document);
      best.pages = std::move(shorter.pages);
    }
  }
  messages.add(best.messages);
  tellOfLimit(best, in, messages);
  markWordEnds(best.document);
  return std::move(best.document);
}

}  // namespace typeset
