// Blocks become vertical lists in a column. What each kind of block needs of the others; the kinds with much
// of their own have a header beside this one.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

/// Blocks one below the other, with the white between them. This one and the next two know every kind and
/// stand in flow.cpp.
VerticalList layOutBlocks(LayoutContext& context, const markup::Blocks& blocks, Column place, int parent);
VerticalList layOutBlock(LayoutContext& context, const markup::Block& block, Column place, int parent);
/// White above a block that begins below a title, on the whole line.
Fragment leadSpace(const Grid& grid, const markup::Block& block);

VerticalList layOutParagraph(LayoutContext& context, const markup::Inlines& words, const std::string& style,
                             Column place, int parent);
VerticalList layOutFigure(LayoutContext& context, const markup::Figure& figure, Column place, int parent);

/// A column of a row of equal ones.
Column nth(Column place, std::size_t i, std::size_t count, Dim gutter);
/// Side column, then the text column in equal parts.
Column acrossBoth(const Grid& grid, std::size_t i, std::size_t parts);

}  // namespace typeset
