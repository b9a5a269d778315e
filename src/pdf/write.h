// Pages become the bytes of a PDF file; pictures of pixels are read for them.
#pragma once

#include "typeset/page.h"

#include <stdexcept>
#include <string>
#include <string_view>

namespace pdf {

/// What a file keeps to: PDF/A-2b (ISO 19005-2:2011), or PDF/A-1b (ISO 19005-1:2005) for archives that ask
/// for it, where clear pictures are laid on white. Both keep to PDF/UA-1.
enum class Variant { A2b, A1b };

/// A face's tables contradict each other.
struct UnusableFont : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Writes a tagged PDF/A file: the same document always gives the same bytes. Throws UnusableFont when a face
/// cannot be subset; std::logic_error when the display list is broken (not finite, unknown
/// index).
std::string write(const typeset::Document& document, Variant variant = Variant::A2b);

/// Reads a PNG or JPEG file's bytes (told apart by their first bytes), decoding them once to prove them
/// whole. Throws std::runtime_error saying what is wrong: damaged, cut off, not a picture, over 16
/// megapixels, a JPEG in more than 50 scans. A picture with twice as many 'rows' of pixels or more is
/// averaged down to no fewer than these; 0 keeps all.
typeset::Image readImage(std::string_view bytes, std::size_t rows = 0);

}  // namespace pdf
