// Shaped letters as text-showing operators.
#pragma once

#include "pdf/fonts/font_subset.h"

#include <string>

namespace pdf {

/// Adds '[(...)n(...)] TJ' for a run at the current place. Where the glyphs' own widths differ from the run's
/// (kerning, tracking, offsets) the difference is written, its rounding carried on to the next glyph. A run
/// that ends a word gets a space behind it.
void addText(std::string& out, const typeset::TextRun& run, const FontSubset& font);

}  // namespace pdf
