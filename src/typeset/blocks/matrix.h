// A table of signs: what goes with what is seen at a glance.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutMatrix(LayoutContext& context, const markup::Box& box, Column place, int parent,
                          const markup::Heading* heading);

}  // namespace typeset
