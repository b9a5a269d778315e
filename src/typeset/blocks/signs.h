// Rows of signs: whom to call and where to go, and what to wear.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutSigns(LayoutContext& context, const markup::Box& box, Column place, int parent);

}  // namespace typeset
