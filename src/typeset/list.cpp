// Lists: numbers, dashes, crosses, ticks and boxes.
#include "typeset/blocks.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Mark;

Dim indentOf(Setter& setter, const markup::List& list) {
  switch (list.mark) {
    case Mark::Number: {
      Span widest = setter.style("rowHead").plain;
      widest.text = std::to_string(list.start + static_cast<int>(list.items.size()) - 1);
      return std::max(Dim::mm(11) / 2, width(setter.in.fonts, widest) + Dim::mm(2));
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

std::vector<Item> markItems(Setter& setter, const markup::List& list, std::size_t i, Dim x, int label) {
  const Colour accent = setter.colour("accent");
  const Point at = {x, markTop(setter.style("table").rise)};
  std::vector<Item> items;
  switch (list.mark) {
    case Mark::Number: {
      Style style = setter.style("rowHead");
      style.plain.colour = accent;
      return setWords(setter, style, std::to_string(list.start + static_cast<int>(i)), {x, style.rise}, label)
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
      items.push_back(boxMark(at, setter.colour("ink")));
      break;
  }
  return items;
}

Stack setItem(Setter& setter, const markup::List& list, std::size_t i, Place place, Dim indent, int parent) {
  const int item = setter.tag(Role::LI, parent);
  const int label = list.mark == Mark::Number ? setter.tag(Role::Lbl, item) : artifact;
  const int body = setter.tag(Role::LBody, item);
  const Place inner = {place.x + indent, place.width - indent, false};
  const char* style = list.mark == Mark::Number ? "body" : "table";
  Stack out;
  for (const markup::Block& block : list.items[i].body) {
    const auto* p = std::get_if<markup::Paragraph>(&block.node);
    if (block.line != 0) setter.line = block.line;
    Stack next;
    if (p) {
      Text text(setter, p->text, setter.style(style));
      next = stackOf(setter, text.lines(inner.width, body), inner);
    } else {
      next = setBlock(setter, block, inner, body);
    }
    if (p && !out.empty() && !next.empty()) out.push_back(space(setter.grid.unit));
    append(out, std::move(next));
  }
  if (out.empty()) {
    Slice empty;
    empty.height = setter.grid.line;
    out.push_back(std::move(empty));
  }
  std::vector<Item> marks = markItems(setter, list, i, place.x, label);
  out.front().items.insert(out.front().items.begin(), std::make_move_iterator(marks.begin()),
                           std::make_move_iterator(marks.end()));
  return out;
}

}  // namespace

Stack setList(Setter& setter, const markup::List& list, Place place, int parent) {
  const int tag = setter.tag(Role::L, parent);
  setter.out.tags.back().isOrdered = list.mark == Mark::Number;
  const Dim indent = indentOf(setter, list);
  std::vector<Stack> items;
  for (std::size_t i = 0; i < list.items.size(); ++i)
    items.push_back(setItem(setter, list, i, place, indent, tag));
  // Steps that fill several lines need white between them to be told apart.
  const bool isAiry =
      list.mark == Mark::Number &&
      std::any_of(items.begin(), items.end(), [](const Stack& item) { return item.size() > 1; });
  Stack out;
  for (Stack& item : items) {
    if (isAiry && !out.empty()) out.push_back(space(setter.grid.half()));
    append(out, std::move(item));
  }
  if (out.size() > 1) {
    out.front().keepWithNext = true;
    out[out.size() - 2].keepWithNext = true;
  }
  return out;
}

}  // namespace typeset
