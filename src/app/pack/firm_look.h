// The firm's logo and faces, and the words around the text of its pages.
#pragma once

#include "app/pack/compute.h"
#include "typeset/pages/layout.h"

namespace app {

/// Null for a firm without a logo, and (with an error) for one that cannot be read.
std::shared_ptr<const typeset::Image> logoOf(const model::Firm& firm, const Shipped& shipped,
                                             base::Diagnostics& messages);

/// The faces of a theme, without a language. Throws std::runtime_error naming the file that cannot be used.
typeset::Fonts fontsOf(const model::Theme& theme, const Shipped& shipped);

/// Tells that a font cannot be used, at the place that names it where the message or the face's own name says
/// which one it is.
void tellOfFont(const model::Theme& theme, const std::string& fault, base::Diagnostics& messages);

typeset::Furniture furnitureOf(const model::DocumentKind& document, const model::JobResult& x,
                               const std::shared_ptr<const typeset::Image>& logo);

/// Letters and lines in a theme's colours get those that stand for them on the crew's papers.
void colourForCrew(typeset::Document& document, const model::Theme& theme);

}  // namespace app
