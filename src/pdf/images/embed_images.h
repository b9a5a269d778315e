// Pictures of pixels in the file.
#pragma once

#include "pdf/objects/file.h"
#include "pdf/objects/variant.h"

#include <vector>

namespace pdf {

/// By index of Document::images; nothing where no page places the picture.
std::vector<Object> embedImages(File& file, const typeset::Document& document, Variant variant);

}  // namespace pdf
