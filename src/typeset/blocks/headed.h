// Blocks whose head line holds the heading of their section.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

/// True when the heading can stand in the head of the table, matrix or steps.
bool takesHeading(const markup::Block& block);
/// Such a block with its heading, which may be null.
VerticalList layOutHeaded(LayoutContext& context, const markup::Block& block, Column place, int parent,
                          const markup::Heading* heading);

}  // namespace typeset
