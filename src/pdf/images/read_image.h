// Picture files become pixels (PNG) or checked data to embed as it is (JPEG).
#pragma once

#include "typeset/page.h"

#include <string_view>

namespace pdf {

/// Reads a PNG or JPEG file's bytes (told apart by their first bytes), decoding them once to prove them
/// whole. Throws std::runtime_error saying what is wrong: damaged, cut off, not a picture, over 16
/// megapixels, a JPEG in more than 50 scans. A picture with twice as many 'rows' of pixels or more is
/// averaged down to no fewer than these; 0 keeps all.
typeset::Image readImage(std::string_view bytes, std::size_t rows = 0);

}  // namespace pdf
