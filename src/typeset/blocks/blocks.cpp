#include "typeset/blocks/blocks.h"

#include <algorithm>

namespace typeset {

VerticalList layOutParagraph(LayoutContext& context, const markup::Inlines& words, const std::string& style,
                             Column place, int parent) {
  Text text(context, words, context.style(style));
  if (text.isEmpty()) return {};
  return listOf(context, text.lines(place.width, context.tag(Role::P, parent)), place);
}

namespace {

void place(Fragment& fragment, const Drawing& drawing, Dim x, int tag, Dim unit) {
  fragment.height = roundUp(drawing.size.h, unit);
  for (Item item : drawing.items) {
    move(item, x, {});
    item.tag = tag;
    fragment.items.push_back(std::move(item));
  }
}

}  // namespace

VerticalList layOutFigure(LayoutContext& context, const markup::Figure& figure, Column column, int parent) {
  const DrawingRequest* request = context.request(figure.name);
  if (!request) return layOutParagraph(context, {{{}, figure.alt, {}, {}}}, "note", column, parent);
  if (request->isOptional() && context.leavesOutOptional) return {};
  const Drawing& best = request->best();
  if (request->isOptional() && best.items.empty()) return {};
  if (best.size.w > column.width + Dim::pt(1) ||
      (best.size.h > context.pageHeight() && !request->isFlexible()))
    context.warn("the drawing '" + figure.name + "' is larger than its place",
                 "put it where the column is wider, like '## Head {wide}'");
  const int tag = context.tag(Role::Figure, parent);
  const auto put = [&context, alt = figure.alt, x = column.x, tag, unit = context.grid.unit](
                       Fragment& fragment, const Drawing& drawing) {
    context.out.tags[static_cast<std::size_t>(tag)].alt = alt.empty() ? drawing.alt : alt;
    place(fragment, drawing, x, tag, unit);
  };
  Fragment fragment;
  fragment.line = context.line;
  fragment.height = roundUp(best.size.h, context.grid.unit);
  if (!request->isFlexible()) {
    put(fragment, best);
    return {std::move(fragment)};
  }
  fragment.flexible = std::make_shared<const Flexible>(Flexible{
      std::min(fragment.height, roundUp(request->heights().least, context.grid.unit)), fragment.height,
      [request, unit = context.grid.unit] { return roundUp(request->possibleLeast(), unit); },
      [put, request](Fragment& f, Dim height) {
        put(f, request->best().size.h <= height ? request->best() : request->at(height));
      }});
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
