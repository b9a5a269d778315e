// A face cut down to some of its glyphs, through HarfBuzz.
#pragma once

#include "typeset/face.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace pdf {

/// What each used glyph of a face says when it is copied out, in UTF-8.
using GlyphTexts = std::map<std::uint32_t, std::string>;

struct Subset {
  std::string program;             // TrueType tables, or the bare CFF table
  std::vector<std::uint16_t> ids;  // new glyph by old glyph; 0 where it was left out
  unsigned glyphs = 0;             // in the program, those that others are composed of included
};

/// Throws std::runtime_error when HarfBuzz cannot cut the face.
Subset subset(const typeset::FontFace& face, const GlyphTexts& used);

}  // namespace pdf
