// Lists: numbers, dashes, crosses, ticks and boxes.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutList(LayoutContext& context, const markup::List& list, Column place, int parent);

}  // namespace typeset
