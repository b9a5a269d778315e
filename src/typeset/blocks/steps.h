// What is to do at each task: its name, and its numbered steps in three columns beside it.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutSteps(LayoutContext& context, const markup::Box& box, Column place, int parent,
                         const markup::Heading* heading);

}  // namespace typeset
