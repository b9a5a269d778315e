// How a camera held the picture: the one note of a JPEG file that changes how it looks.
#pragma once

#include "typeset/page.h"

#include <string_view>

namespace pdf {

/// 1 to 8 as in Exif, tag 0112h; 1, upright, where the file says nothing that can be read.
int orientationOf(std::string_view jpeg);

/// The pixels of a picture without JPEG data, turned and mirrored to be seen upright.
void makeUpright(typeset::Image& image, int orientation);

}  // namespace pdf
