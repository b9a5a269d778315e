// JPEG files for readImage().
#pragma once

#include "typeset/page.h"

#include <string_view>

namespace pdf {

/// Decodes once to prove the data whole; keeps the data, without what cameras write about place and owner. A
/// picture that the camera held on its side or upside down is kept as pixels, turned upright.
typeset::Image readJpeg(std::string_view bytes);

}  // namespace pdf
