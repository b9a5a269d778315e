// The document's faces in the file: only the glyphs that are used, with the letters they stand for.
#pragma once

#include "pdf/file.h"
#include "pdf/word_ends.h"

#include <cstdint>
#include <vector>

namespace pdf {

/// One face of the document as it stands in the file.
struct EmbeddedFont {
  Object object;                      // nothing when no run uses the face
  int unitsPerEm = 1000;              // of the face
  std::vector<std::uint16_t> ids;     // glyph in the file, by glyph in the face
  std::vector<std::int32_t> advance;  // thousandths of an em, by glyph in the file
  std::uint16_t space = 0;            // glyph in the file; 0 when none is used
};

/// By index of Document::faces. Throws std::runtime_error when a face cannot be subset and std::logic_error
/// when a run names an unknown face or glyph.
std::vector<EmbeddedFont> embedFonts(File& file, const typeset::Document& document, const WordEnds& ends);

}  // namespace pdf
