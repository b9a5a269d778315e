// The document's faces in the file: only the glyphs that are used, with the letters they stand for.
#pragma once

#include "pdf/fonts/font_subset.h"
#include "pdf/objects/file.h"
#include "pdf/objects/variant.h"

#include <vector>

namespace pdf {

/// One face of the document as it stands in the file; nothing when no run uses the face.
struct EmbeddedFont {
  Object object;
  std::shared_ptr<const FontSubset> cut;
};

/// By index of Document::faces. Throws std::runtime_error when a face cannot be subset and std::logic_error
/// when a run names an unknown face or glyph.
std::vector<EmbeddedFont> embedFonts(File& file, const typeset::Document& document, Variant variant);

}  // namespace pdf
