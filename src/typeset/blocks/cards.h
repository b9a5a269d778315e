// Short matter side by side: where one is, what can kill, what chemicals do, orders with a number.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutAddress(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutCards(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutProfiles(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutOrders(LayoutContext& context, const markup::Box& box, Column place, int parent);

}  // namespace typeset
