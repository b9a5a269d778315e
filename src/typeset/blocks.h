// Blocks become stacks of slices in a column.
#pragma once

#include "typeset/text.h"

namespace typeset {

/// Blocks one below the other, with the white between them.
Stack setBlocks(Setter& setter, const markup::Blocks& blocks, Place place, int parent);
/// White above a block that begins below a title, on the whole line.
Slice leadSpace(const Grid& grid, const markup::Block& block);
Stack setBlock(Setter& setter, const markup::Block& block, Place place, int parent);
Stack setParagraph(Setter& setter, const markup::Inlines& words, const std::string& style, Place place,
                   int parent);
Stack setFigure(Setter& setter, const markup::Figure& figure, Place place, int parent);
Stack setList(Setter& setter, const markup::List& list, Place place, int parent);
/// 'heading' stands in the empty first head cell of a wide table; may be null.
Stack setTable(Setter& setter, const markup::Table& table, Place place, int parent,
               const markup::Heading* heading = nullptr);
/// True when the heading can stand in the table's head.
bool takesHeading(const markup::Block& block);

Stack setPanel(Setter& setter, const markup::Box& box, int parent);
Stack setSigns(Setter& setter, const markup::Box& box, Place place, int parent);
Stack setFigures(Setter& setter, const markup::Box& box, Place place, int parent);
Stack setLetter(Setter& setter, const markup::Box& box, int parent);
Stack setColumns(Setter& setter, const markup::Box& box, Place place, int parent);
Stack setTotals(Setter& setter, const markup::Box& box, Place place, int parent);

/// The first list in the box and its items' first paragraphs, cut into pictures, strong words and the rest.
struct ItemParts {
  markup::Inlines pictures, strong, rest;
  int tag = artifact;  // of the item's words
};
std::vector<ItemParts> itemsOf(Setter& setter, const markup::Box& box, int parent);

/// A column of a row of equal ones.
Place nth(Place place, std::size_t i, std::size_t count, Dim gutter);
/// Side column, then the text column in equal parts.
Place acrossBoth(const Grid& grid, std::size_t i, std::size_t parts);

}  // namespace typeset
