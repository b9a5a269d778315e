// Shaped letters as text-showing operators.
#pragma once

#include "pdf/fonts.h"

#include <string>

namespace pdf {

/// Adds '[(...)n(...)] TJ' for a run at the current place. Where the glyphs' own widths differ from the run's
/// (kerning, tracking, offsets) the difference is written, its rounding carried on to the next glyph.
void addText(std::string& out, const typeset::TextRun& run, const EmbeddedFont& font);

}  // namespace pdf
