// Boxes without a frame: large figures, the letter's pairs, columns, totals.
#pragma once

#include "typeset/lines/text.h"

namespace typeset {

VerticalList layOutFigures(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutLetter(LayoutContext& context, const markup::Box& box, int parent);
VerticalList layOutColumns(LayoutContext& context, const markup::Box& box, Column place, int parent);
VerticalList layOutTotals(LayoutContext& context, const markup::Box& box, Column place, int parent);

/// The first list in the box and its items' first paragraphs, cut into pictures, strong words and the rest.
struct ItemParts {
  markup::Inlines label;  // emphasised words before strong ones
  markup::Inlines pictures, strong, rest;
  std::vector<markup::Inlines> inner;  // the items of a list inside it
  int tag = artifact;                  // of the item's words
};
std::vector<ItemParts> itemsOf(LayoutContext& context, const markup::Box& box, int parent);

}  // namespace typeset
