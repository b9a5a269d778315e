// A face cut down to a set of glyphs, ready to be written into any number of files.
#pragma once

#include "pdf/fonts/glyph_groups.h"

namespace pdf {

struct FontSubset {
  std::string name;  // 'ABCDEF+Carlito'
  bool isCff = false;
  std::string program, cidSet, toUnicode;  // deflated
  std::size_t programSize = 0;             // before
  std::string descriptor, widths;          // entries
  int unitsPerEm = 1000;                   // of the face
  std::vector<std::uint16_t> ids;          // glyph in the file, by glyph in the face
  std::vector<std::int32_t> advance;       // thousandths of an em, by glyph in the file
  std::uint16_t space = 0;                 // glyph in the file; 0 when it has none
};

/// Made once for each set and kept with the face. Throws UnusableFont when HarfBuzz cannot cut the face.
std::shared_ptr<const FontSubset> fontSubset(const GlyphSet& set);

}  // namespace pdf
