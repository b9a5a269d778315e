// The marks of one page.
#pragma once

#include "pdf/fonts/embed_fonts.h"
#include "pdf/images/embed_images.h"
#include "pdf/structure.h"

#include <string>

namespace pdf {

/// The content stream of a page: text, paths and pictures, with the sequences of the tag tree marked. Links
/// draw nothing. Fonts are named F0, F1 ... by their index in the document.
std::string drawPage(const typeset::Document& document, std::size_t page,
                     const std::vector<EmbeddedFont>& fonts, const std::vector<EmbeddedImage>& images,
                     Structure& structure);

}  // namespace pdf
