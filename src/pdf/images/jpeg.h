// JPEG files for readImage().
#pragma once

#include "typeset/page.h"

#include <string_view>

namespace pdf {

/// Decodes once to prove the data whole; keeps the data, without what cameras write about place and owner. A
/// picture that the camera held on its side or upside down, or that has twice 'rows' rows or more (0 keeps
/// all), is turned, averaged down and coded anew. Throws std::runtime_error for what is damaged, too large,
/// neither grey nor RGB, or in more than 50 scans.
typeset::Image readJpeg(std::string_view bytes, std::size_t rows);

}  // namespace pdf
