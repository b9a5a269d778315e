// The letters that nearly every document sets, in groups: where a document uses most of a group, a face is
// cut for all of it, so that documents share the cut.
#pragma once

#include "typeset/face.h"

#include <cstdint>
#include <map>
#include <memory>
#include <string_view>

namespace pdf {

/// What each used glyph of a face says when it is copied out, in UTF-8.
using GlyphTexts = std::map<std::uint32_t, std::string>;

/// The glyphs of a document in one face, each once, and what they say.
struct UsedGlyphs {
  std::vector<std::uint32_t> glyphs;
  std::vector<std::string_view> texts;  // by glyph of the face
};

/// What a face is cut for: groups of glyphs, and glyphs one by one.
struct GlyphSet {
  std::shared_ptr<const typeset::FontFace> face;
  unsigned groups = 0;  // one bit each
  GlyphTexts others;

  friend auto operator<=>(const GlyphSet&, const GlyphSet&) = default;
};

/// Depends on the document's glyphs alone, never on other documents.
GlyphSet glyphSet(const std::shared_ptr<const typeset::FontFace>& face, const UsedGlyphs& used);

/// Every glyph of the set, the whole of its groups.
GlyphTexts glyphsOf(const GlyphSet& set);

}  // namespace pdf
