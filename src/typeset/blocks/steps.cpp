// What is to do at each task: its name in the side column, its numbered steps in columns beside it, three at
// most.
#include "typeset/blocks/steps.h"

#include "typeset/blocks/boxes.h"
#include "typeset/blocks/cell.h"

#include <algorithm>

namespace typeset {
namespace {

constexpr std::size_t mostColumns = 3;

/// Four stand two by two.
std::size_t columnsFor(std::size_t steps) { return steps == 4 ? 2 : std::min(steps, mostColumns); }

Style stepStyle(LayoutContext& context, bool isNumber) {
  Style style = closer(context.style("table"));
  if (isNumber) {
    style.plain.face = style.strong;
    style.plain.colour = context.colour("accent");
  }
  return style;
}

Fragment rowOf(LayoutContext& context, const ItemParts& item, std::size_t columns, Column place, int parent) {
  const Grid& grid = context.grid;
  const Style number = stepStyle(context, true), words = stepStyle(context, false);
  Fragment row;
  const Dim pad = grid.unit, indent = Dim::mm(4), gap = grid.unit * 3;
  Dim side = pad;
  addWords(context, row, plain(item.strong), context.style("rowHead"), {grid.left, grid.side, false}, side,
           item.tag);
  addWords(context, row, plain(item.rest), context.style("note"), {grid.left, grid.side, false}, side,
           item.tag);
  const Column text = {grid.textX, place.x + place.width - grid.textX, false};
  const int list = context.tag(Role::L, parent);
  context.out.tags.back().isOrdered = true;
  Dim top = pad, floor = pad;
  for (std::size_t i = 0; i < item.inner.size(); ++i) {
    if (i > 0 && i % columns == 0) top = floor + grid.unit / 2;
    const Column at = nth(text, i % columns, columns, gap);
    const int li = context.tag(Role::LI, list);
    Dim y = top;
    addWords(context, row, {{{}, std::to_string(i + 1), {}, {}}}, number, {at.x, indent, false}, y,
             context.tag(Role::Lbl, li));
    y = top;
    addWords(context, row, item.inner[i], words, {at.x + indent, at.width - indent, false}, y,
             context.tag(Role::LBody, li));
    floor = std::max(floor, y);
  }
  row.height = roundUp(std::max(side, floor) + pad, grid.unit);
  row.line = context.line;
  return row;
}

}  // namespace

VerticalList layOutSteps(LayoutContext& context, const markup::Box& box, Column place, int parent,
                         const markup::Heading* heading) {
  const int tag = headTag(context, heading, parent);
  Fragment head;
  head.height = context.grid.line;
  Dim y = context.style("head").baseline - context.style("label").baseline;
  addWords(context, head, plain(box.title), context.style("label"), context.textColumn(), y,
           context.tag(Role::P, parent));
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  VerticalList out;
  addHeadLine(context, out, heading, tag, std::move(head), place);
  std::size_t columns = 1;
  for (const ItemParts& item : items) columns = std::max(columns, columnsFor(item.inner.size()));
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out.push_back(fullRule(context, RuleKind::Close, place, Dim::pt(1) / 2, "rule"));
    out.push_back(rowOf(context, items[i], columns, place, items[i].tag));
    out.back().keepWithNext = i == 0 || i + 2 >= items.size();
  }
  out.push_back(fullRule(context, RuleKind::Close, place, Dim::pt(1), "ink"));
  return out;
}

}  // namespace typeset
