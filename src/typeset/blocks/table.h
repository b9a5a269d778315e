// Tables: heads that repeat, groups, figures on their decimal mark, lines to write on.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

/// 'heading' stands in the empty first head cell of a wide table; may be null.
VerticalList layOutTable(LayoutContext& context, const markup::Table& table, Column place, int parent,
                         const markup::Heading* heading = nullptr);

}  // namespace typeset
