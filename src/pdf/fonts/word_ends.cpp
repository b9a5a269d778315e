#include "pdf/fonts/word_ends.h"

#include "typeset/face.h"

#include <hb.h>

#include <string_view>

namespace pdf {
namespace {

using typeset::TextRun;

bool endsOpen(std::string_view text) {
  constexpr std::string_view closed[] = {" ", "\u00A0", "\u202F", "-", "\u2010", "\u2011", "\u00AD", "/"};
  for (const std::string_view end : closed)
    if (text.ends_with(end)) return false;
  return !text.empty();
}

/// A gap of a tenth of the letters' size is more than kerning and less than any space.
bool followsClosely(const TextRun& before, const TextRun& run) {
  if (!before.isUpright || !run.isUpright || before.baseline.y != run.baseline.y) return false;
  const typeset::Dim gap = run.baseline.x - before.baseline.x - before.width;
  return gap < before.size / 10 && gap > typeset::Dim{} - before.size;
}

/// A link is part of the line around it. Nothing for decoration; unknown tags are the structure's to refuse.
std::optional<std::size_t> paragraphOf(const typeset::Document& document, int tag) {
  const auto isInline = [&](int t) {
    const typeset::Role role = document.tags[static_cast<std::size_t>(t)].role;
    return role == typeset::Role::Link || role == typeset::Role::Span;
  };
  const int count = static_cast<int>(document.tags.size());
  while (tag >= 0 && tag < count && isInline(tag)) tag = document.tags[static_cast<std::size_t>(tag)].parent;
  if (tag < 0 || tag >= count) return {};
  return static_cast<std::size_t>(tag);
}

}  // namespace

WordEnds::WordEnds(const typeset::Document& document) {
  struct Last {
    const TextRun* run = nullptr;
    std::size_t page = 0;
  };
  std::vector<Last> last(document.tags.size());  // by tag
  for (std::size_t page = 0; page < document.pages.size(); ++page)
    for (const typeset::Item& item : document.pages[page].items) {
      const auto* run = std::get_if<TextRun>(&item.what);
      const auto tag = paragraphOf(document, item.tag);
      if (!run || run->glyphs.empty() || !tag) continue;
      Last& before = last[*tag];
      const bool isClose = before.run && before.page == page && followsClosely(*before.run, *run);
      if (before.run && !isClose && endsOpen(before.run->text) && !run->text.starts_with(' '))
        ends_.insert(before.run);
      before = {run, page};
    }
}

std::optional<std::uint32_t> spaceOf(const typeset::FontFace& face) {
  hb_codepoint_t glyph = 0;
  if (!hb_font_get_nominal_glyph(face.hbFont(), U' ', &glyph) || glyph == 0 ||
      glyph >= hb_face_get_glyph_count(face.hbFace()))
    return {};
  return glyph;
}

}  // namespace pdf
