// Pages become the bytes of a PDF file; pictures of pixels are read for them.
#pragma once

#include "typeset/page.h"

#include <string>
#include <string_view>

namespace pdf {

/// Writes a tagged PDF/A-2b file: the same document always gives the same bytes. Throws std::runtime_error
/// when a face cannot be subset; std::logic_error when the display list is broken (not finite, unknown
/// index).
std::string write(const typeset::Document& document);

/// Reads a PNG or JPEG file's bytes (told apart by their first bytes), decoding them once to prove them
/// whole. Throws std::runtime_error saying what is wrong: damaged, cut off, not a picture, over 16
/// megapixels.
typeset::Image readImage(std::string_view bytes);

}  // namespace pdf
