// Sets a document: measures its blocks, divides them into pages, adds what stands around them.
#include "typeset/pages/layout.h"

#include "typeset/blocks/sections.h"
#include "typeset/pages/fit.h"
#include "typeset/pages/furniture.h"
#include "typeset/pages/paginate.h"

namespace typeset {
namespace {

/// A document set in one way.
struct Attempt {
  Document document;
  base::Diagnostics messages;
  Dim filled, whole;  // of the last page
};

Attempt attempt(const LayoutInput& in, const model::Theme& look, EarlyFoot early = {}) {
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
  LayoutContext context(in, look, document, a.messages);
  a.filled = paginate(context, layOutDocument(context), early);
  a.whole = context.pageHeight();
  addFurniture(context);
  return a;
}

bool isShort(const Attempt& a, std::int64_t parts, std::int64_t of) {
  return a.document.pages.size() > 1 && a.filled * of < a.whole * parts;
}

}  // namespace

// A last page that is filled less than two fifths is saved where a tighter grid brings its matter onto the
// pages before it, and so is one too many for a document that has a limit. Where none does, the page before
// it ends early, so that the last one is filled at least a third.
Document layOut(const LayoutInput& in, base::Diagnostics& messages) {
  Attempt best = attempt(in, in.theme);
  const bool isLong = in.mostPages > 0 && best.document.pages.size() > in.mostPages;
  if (isShort(best, 2, 5) || isLong) {
    const std::size_t pages = best.document.pages.size();
    const std::vector<model::Theme> looks = tighter(in.theme);
    // The widest that does it is among those from 'first' to 'end'; where one does, tighter ones do, too.
    for (std::size_t first = 0, end = looks.size(); first < end;) {
      const std::size_t middle = (first + end - 1) / 2;
      Attempt other = attempt(in, looks[middle]);
      const bool doesIt = other.document.pages.size() < pages;
      (doesIt ? end : first) = doesIt ? middle : middle + 1;
      if (doesIt) best = std::move(other);
    }
  }
  if (isShort(best, 1, 4)) {
    const EarlyFoot early = {best.document.pages.size() - 2, best.whole / 3 - best.filled};
    Attempt other = attempt(in, in.theme, early);
    if (other.document.pages.size() == best.document.pages.size() && other.filled > best.filled)
      best = std::move(other);
  }
  messages.add(best.messages);
  return std::move(best.document);
}

}  // namespace typeset
