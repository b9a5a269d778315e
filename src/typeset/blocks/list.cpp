#include "typeset/blocks/list.h"

#include "typeset/blocks/blocks.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Mark;

Dim indentOf(LayoutContext& context, const markup::List& list) {
  switch (list.mark) {
    case Mark::Number: {
      StyledText widest = context.style("rowHead").plain;
      widest.text = std::to_string(list.start + static_cast<int>(list.items.size()) - 1);
      return std::max(Dim::mm(11) / 2, width(context.in.fonts, widest) + Dim::mm(2));
    }
    case Mark::Dash:
    case Mark::Cross:
    case Mark::Tick:
      return Dim::mm(9) / 2;
    case Mark::Box:
      return Dim::mm(6);
  }
  return {};
}

std::vector<Item> markItems(LayoutContext& context, const markup::List& list, std::size_t i, Dim x,
                            int label) {
  const Colour accent = context.colour("accent");
  const Point at = {x, markTop(context.style("table").baseline)};
  std::vector<Item> items;
  switch (list.mark) {
    case Mark::Number: {
      Style style = context.style("rowHead");
      style.plain.colour = accent;
      return placeWords(context, style, std::to_string(list.start + static_cast<int>(i)), {x, style.baseline},
                        label)
          .items;
    }
    case Mark::Dash:
      items.push_back(dashMark(at, accent));
      break;
    case Mark::Cross:
      items.push_back(crossMark(at, accent));
      break;
    case Mark::Tick:
      items.push_back(tickMark(at, accent));
      break;
    case Mark::Box:
      items.push_back(boxMark(at, context.colour("ink")));
      break;
  }
  return items;
}

VerticalList layOutItem(LayoutContext& context, const markup::List& list, std::size_t i, Column place,
                        Dim indent, int parent) {
  const int item = context.tag(Role::LI, parent);
  const int label = list.mark == Mark::Number ? context.tag(Role::Lbl, item) : artifact;
  const int body = context.tag(Role::LBody, item);
  const Column inner = {place.x + indent, place.width - indent, false};
  const char* style = list.mark == Mark::Number ? "body" : "table";
  VerticalList out;
  for (const markup::Block& block : list.items[i].body) {
    const auto* p = std::get_if<markup::Paragraph>(&block.node);
    if (block.line != 0) context.line = block.line;
    VerticalList next;
    if (p) {
      Text text(context, p->text, context.style(style));
      next = listOf(context, text.lines(inner.width, body), inner);
    } else {
      next = layOutBlock(context, block, inner, body);
    }
    if (p && !out.empty() && !next.empty()) out.push_back(space(context.grid.unit));
    append(out, std::move(next));
  }
  if (out.empty()) {
    Fragment empty;
    empty.height = context.grid.line;
    out.push_back(std::move(empty));
  }
  std::vector<Item> marks = markItems(context, list, i, place.x, label);
  out.front().items.insert(out.front().items.begin(), std::make_move_iterator(marks.begin()),
                           std::make_move_iterator(marks.end()));
  return out;
}

}  // namespace

VerticalList layOutList(LayoutContext& context, const markup::List& list, Column place, int parent) {
  const int tag = context.tag(Role::L, parent);
  context.out.tags.back().isOrdered = list.mark == Mark::Number;
  const Dim indent = indentOf(context, list);
  std::vector<VerticalList> items;
  for (std::size_t i = 0; i < list.items.size(); ++i)
    items.push_back(layOutItem(context, list, i, place, indent, tag));
  // Steps that fill several lines need white between them to be told apart.
  const bool isAiry =
      list.mark == Mark::Number &&
      std::any_of(items.begin(), items.end(), [](const VerticalList& item) { return item.size() > 1; });
  VerticalList out;
  for (VerticalList& item : items) {
    if (isAiry && !out.empty()) out.push_back(space(context.grid.half()));
    append(out, std::move(item));
  }
  if (out.size() > 1) {
    out.front().keepWithNext = true;
    out[out.size() - 2].keepWithNext = true;
  }
  return out;
}

}  // namespace typeset
