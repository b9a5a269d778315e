// What a day depends on: the large answers it begins with, and the measurements without which it is not
// begun.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutAnswers(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutGo(LayoutContext& context, const markup::Box& box, Column place, int parent);

}  // namespace typeset
