// Pixels as JPEG data.
#pragma once

#include "typeset/page.h"

#include <string>

namespace pdf {

/// The 'rgb' of a picture as baseline JPEG of quality 90, in grey when the picture 'isGrey'. Colours keep
/// every pixel: the edges of a logo would blur.
std::string encodeJpeg(const typeset::Image& image);

}  // namespace pdf
