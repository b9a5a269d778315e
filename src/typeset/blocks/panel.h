// Panels: danger, warning and caution in a heavy frame, notes between two rules.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutPanel(LayoutContext& context, const markup::Box& box, int parent);

}  // namespace typeset
