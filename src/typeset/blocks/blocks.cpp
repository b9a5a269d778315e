#include "typeset/blocks/blocks.h"

namespace typeset {

VerticalList layOutParagraph(LayoutContext& context, const markup::Inlines& words, const std::string& style,
                             Column place, int parent) {
  Text text(context, words, context.style(style));
  if (text.isEmpty()) return {};
  return listOf(context, text.lines(place.width, context.tag(Role::P, parent)), place);
}

VerticalList layOutFigure(LayoutContext& context, const markup::Figure& figure, Column place, int parent) {
  const Drawing* drawing = context.drawing(figure.name);
  if (!drawing) return layOutParagraph(context, {{{}, figure.alt, {}, {}}}, "note", place, parent);
  if (drawing->size.w > place.width + Dim::pt(1) || drawing->size.h > context.pageHeight())
    context.warn("the drawing '" + figure.name + "' is larger than its place",
                 "put it where the column is wider, like '## Head {wide}'");
  const int tag = context.tag(Role::Figure, parent);
  context.out.tags.back().alt = figure.alt.empty() ? drawing->alt : figure.alt;
  Fragment fragment;
  fragment.line = context.line;
  fragment.height = roundUp(drawing->size.h, context.grid.unit);
  for (Item item : drawing->items) {
    move(item, place.x, {});
    item.tag = tag;
    fragment.items.push_back(std::move(item));
  }
  return {std::move(fragment)};
}

Column nth(Column place, std::size_t i, std::size_t count, Dim gutter) {
  const auto n = static_cast<std::int64_t>(count), k = static_cast<std::int64_t>(i);
  const Dim width = (place.width - gutter * (n - 1)) / n;
  return {place.x + (width + gutter) * k, width, false};
}

Column acrossBoth(const Grid& grid, std::size_t i, std::size_t parts) {
  if (i == 0) return {grid.left, grid.side, false};
  return nth({grid.textX, grid.text, false}, i - 1, parts, grid.gutter);
}

}  // namespace typeset
