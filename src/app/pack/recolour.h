// A document in other colours.
#pragma once

#include "typeset/page.h"

namespace app {

/// Letters and lines in a theme's colours get those that stand for them on the crew's papers.
void colourForCrew(typeset::Document& document, const model::Theme& theme);

}  // namespace app
