// Pictures of pixels in the file.
#pragma once

#include "pdf/objects/file.h"
#include "pdf/objects/variant.h"

#include <vector>

namespace pdf {

struct EmbeddedImage {
  const typeset::Image* image = nullptr;
  Object object;
};

/// The pictures of all pages in order, each once.
std::vector<EmbeddedImage> embedImages(File& file, const typeset::Document& document, Variant variant);

/// 'I0' for the first. Throws std::logic_error for one that is not among them.
std::string nameOf(const typeset::Image* image, const std::vector<EmbeddedImage>& images);

}  // namespace pdf
