// What a day depends on: the large answers it begins with, and the measurements without which it is not
// begun.
#include "typeset/blocks/answers.h"

#include "typeset/blocks/boxes.h"
#include "typeset/blocks/cell.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

/// The largest of these sizes, in points, in which no words are wider than the column.
Style widest(LayoutContext& context, const std::string& name, const std::vector<int>& sizes,
             const std::vector<std::pair<markup::Inlines, Dim>>& words) {
  for (const int size : sizes) {
    const Style style = resized(context, name, Dim::pt(size), roundUp(Dim::pt(size), context.grid.unit),
                                Dim::pt(size) * 9 / 10);
    const bool fits = std::all_of(words.begin(), words.end(), [&](const auto& part) {
      return Text(context, part.first, style).natural() <= part.second;
    });
    if (fits || size == sizes.back()) return style;
  }
  return context.style(name);
}

Style noteInInk(LayoutContext& context) {
  Style note = context.style("note");
  note.plain.colour = context.colour("ink");
  return note;
}

}  // namespace

VerticalList layOutAnswers(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const auto placeOf = [&](std::size_t i) {
    return acrossBoth(grid, i, std::max<std::size_t>(items.size(), 2) - 1);
  };
  std::vector<std::pair<markup::Inlines, Dim>> large;
  for (std::size_t i = 0; i < items.size(); ++i) large.push_back({plain(items[i].strong), placeOf(i).width});
  const Style answer = widest(context, "figure", {26, 23, 20, 17}, large), note = noteInInk(context);
  Fragment row;
  for (std::size_t i = 0; i < items.size(); ++i) {
    Dim y;
    addWords(context, row, large[i].first, answer, placeOf(i), y, items[i].tag);
    y += grid.unit;
    addWords(context, row, plain(items[i].label), context.style("label"), placeOf(i), y, items[i].tag);
    addWords(context, row, items[i].rest, note, placeOf(i), y, items[i].tag);
    row.height = std::max(row.height, roundUp(y, grid.unit));
  }
  row.line = context.line;
  row.keepWithNext = true;
  return {fullRule(context, RuleKind::Open, place, Dim::pt(1), "ink"), space(grid.unit), std::move(row)};
}

VerticalList layOutGo(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const int headTag = context.tag(Role::P, parent);  // read before the limits
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const Colour ink = context.colour("ink");
  const Dim inset = Dim::mm(2), tick = Dim::mm(5), beside = tick + Dim::mm(1) * 3 / 2, top = grid.half();
  const Dim head = Dim::mm(25), width = (place.width - head) / static_cast<std::int64_t>(items.size());
  std::vector<std::pair<markup::Inlines, Dim>> limits;
  for (const auto& item : items) limits.push_back({plain(item.strong), width - inset - beside - Dim::mm(1)});
  const Style limit = widest(context, "total", {15, 14, 13, 12, 11, 10}, limits), note = noteInInk(context);
  Style name = context.style("label");
  name.plain.colour = ink;

  Fragment row;
  Dim y = top;
  const auto inWhite = [&](const char* style) {
    Style white = context.style(style);
    white.plain.colour = context.colour("white");
    return white;
  };
  markup::Inlines question, orders;
  for (const auto& part : box.title)
    (part.style == markup::Inline::Style::Emphasis ? orders : question).push_back(part);
  const Column headAt = {place.x + inset, head - inset * 2, false};
  Fragment cells;
  addWords(context, cells, question, inWhite("total"), headAt, y, headTag);
  addWords(context, cells, plain(orders), inWhite("note"), headAt, y, headTag);
  Dim lowest = y;
  const Dim line = std::max(limit.leading + grid.unit, tick);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Dim x = place.x + head + width * static_cast<std::int64_t>(i);
    if (i > 0)
      cells.items.push_back(lineItem({x, top}, {x, top + line * 2}, Dim::pt(1) / 2, context.colour("rule")));
    y = top + (line - limit.leading) / 2;
    cells.items.push_back(frame({{x + inset, top + (line - tick) / 2}, {tick, tick}}, Dim::pt(1), ink));
    addWords(context, cells, limits[i].first, limit, {x + inset + beside, width - inset - beside, false}, y,
             items[i].tag);
    y = roundUp(top + line, grid.unit);
    const Column at = {x + inset, width - inset - Dim::mm(1), false};
    addWords(context, cells, plain(items[i].label), name, at, y, items[i].tag);
    addWords(context, cells, items[i].rest, note, at, y, items[i].tag);
    lowest = std::max(lowest, y);
  }
  row.height = roundUp(lowest + grid.unit, grid.unit);
  row.items.push_back(filledBox({{place.x, {}}, {head, row.height}}, ink));
  row.items.insert(row.items.end(), std::make_move_iterator(cells.items.begin()),
                   std::make_move_iterator(cells.items.end()));
  row.items.push_back(frame({{place.x, {}}, {place.width, row.height}}, Dim::pt(3) / 2, ink));
  row.line = context.line;
  VerticalList out;
  out.push_back(std::move(row));
  return out;
}

}  // namespace typeset
