#include "typeset/pages/word_ends.h"

#include <optional>
#include <string_view>

namespace typeset {
namespace {

bool endsOpen(std::string_view text) {
  constexpr std::string_view closed[] = {" ", "\u00A0", "\u202F", "-", "\u2010", "\u2011", "\u00AD", "/"};
  for (const std::string_view end : closed)
    if (text.ends_with(end)) return false;
  return !text.empty();
}

/// A gap of a tenth of the letters' size is more than kerning and less than any space.
bool followsClosely(const TextRun& before, const TextRun& run) {
  if (!before.isUpright || !run.isUpright || before.baseline.y != run.baseline.y) return false;
  const Dim gap = run.baseline.x - before.baseline.x - before.width;
  return gap < before.size / 10 && gap > Dim{} - before.size;
}

/// A link is part of the line around it. Nothing for decoration; unknown tags are the structure's to refuse.
std::optional<std::size_t> paragraphOf(const Document& document, int tag) {
  const auto isInline = [&](int t) {
    const Role role = document.tags[static_cast<std::size_t>(t)].role;
    return role == Role::Link || role == Role::Span;
  };
  const int count = static_cast<int>(document.tags.size());
  while (tag >= 0 && tag < count && isInline(tag)) tag = document.tags[static_cast<std::size_t>(tag)].parent;
  if (tag < 0 || tag >= count) return {};
  return static_cast<std::size_t>(tag);
}

}  // namespace

void markWordEnds(Document& document) {
  struct Last {
    TextRun* run = nullptr;
    std::size_t page = 0;
  };
  std::vector<Last> last(document.tags.size());  // by tag
  for (std::size_t page = 0; page < document.pages.size(); ++page)
    for (Item& item : document.pages[page].items) {
      auto* run = std::get_if<TextRun>(&item.what);
      const auto tag = paragraphOf(document, item.tag);
      if (!run || run->glyphs.empty() || !tag) continue;
      Last& before = last[*tag];
      const bool isClose = before.run && before.page == page && followsClosely(*before.run, *run);
      if (before.run && !isClose && endsOpen(before.run->text) && !run->text.starts_with(' '))
        before.run->endsWord = true;
      before = {run, page};
    }
}

}  // namespace typeset
