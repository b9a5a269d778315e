// Pages become the bytes of a PDF file.
#pragma once

#include "pdf/fonts/unusable_font.h"
#include "pdf/objects/variant.h"
#include "typeset/page.h"

#include <string>

namespace pdf {

/// Writes a tagged PDF/A file: the same document always gives the same bytes. Throws UnusableFont when a face
/// cannot be subset; std::logic_error when the display list is broken (not finite, unknown
/// index).
std::string write(const typeset::Document& document, Variant variant = Variant::A2b);

}  // namespace pdf
