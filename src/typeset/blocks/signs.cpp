#include "typeset/blocks/signs.h"

#include "typeset/blocks/blocks.h"
#include "typeset/blocks/boxes.h"
#include "typeset/blocks/cell.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Inlines;

const Dim callIndent = Dim::mm(14);  // of the words beside a sign

Column besideSign(Column place) { return {place.x + callIndent, place.width - callIndent, false}; }

/// So many count as too many where a word has to be broken.
std::size_t linesBeside(LayoutContext& context, const Inlines& words, const char* style, Column place) {
  Text text(context, words, context.style(style));
  const Dim width = besideSign(place).width;
  return text.longest() > width ? 4 : text.lines(width, artifact).size();
}

/// How loud a name may be: one of more than a line is set smaller, a long one as small as text.
int quietness(LayoutContext& context, const ItemParts& item, Column place) {
  const std::size_t lines = linesBeside(context, plain(item.strong), "hazard", place);
  return lines > 3 ? 2 : lines > 1 ? 1 : 0;
}

/// Of the name and the words below it.
std::size_t callLines(LayoutContext& context, const ItemParts& item, Column place) {
  return linesBeside(context, plain(item.strong), "head", place) +
         linesBeside(context, item.rest, "note", place);
}

constexpr const char* callStyles[] = {"hazard", "head", "rowHead"};  // by quietness

/// A sign with a name beside it and more words under the name.
Fragment callCell(LayoutContext& context, const ItemParts& item, Column place, const char* style) {
  Fragment cell;
  const Dim height = Dim::mm(11);
  const Dim top = Dim::milli(2'500);  // the sign's middle beside the two lines
  addSign(context, cell, item.pictures.front(), {place.x, top}, height, item.tag);
  const Column words = besideSign(place);
  Style note = context.style("note");
  note.plain.colour = context.colour("ink");
  Dim y = context.grid.unit;
  addWords(context, cell, plain(item.strong), context.style(style), words, y, item.tag);
  addWords(context, cell, item.rest, note, words, y, item.tag);
  cell.height = roundUp(std::max(y, top + height), context.grid.unit);
  return cell;
}

constexpr Dim wornSize = Dim::mm(21) / 2;
constexpr Dim tightSize = Dim::mm(9);  // where a row of them would not fit its column
constexpr Dim leastGap = Dim::mm(1) / 2;

Dim leastWidth(const ItemParts& item) {
  const auto count = static_cast<std::int64_t>(item.pictures.size());
  return count == 0 ? Dim{} : wornSize * count + leastGap * (count - 1);
}

/// What the signs are worn for.
Inlines taskWords(const ItemParts& item) {
  Inlines words = item.strong;
  if (!item.rest.empty() && !words.empty()) words.push_back({{}, " ", {}, {}});
  words.insert(words.end(), item.rest.begin(), item.rest.end());
  return words;
}

Dim taskHeight(LayoutContext& context, const ItemParts& item, Column place) {
  return heightOfWords(context, taskWords(item), context.style("table"), place.width);
}

/// A task with the signs of what to wear below it, at the level of those beside it.
Fragment wearCell(LayoutContext& context, const ItemParts& item, Column place, Dim size, Dim level) {
  Fragment cell;
  const Dim pitch = roundUp(wornSize, context.grid.unit);
  Dim y;
  addWords(context, cell, taskWords(item), context.style("table"), place, y, item.tag);
  y = level + context.grid.unit;
  const auto count = static_cast<std::int64_t>(item.pictures.size());
  // Signs move closer before they need a second row.
  Dim gap = Dim::mm(size == tightSize ? 1 : 2);
  if (count > 1) gap = std::max(leastGap, std::min(gap, (place.width - size * count) / (count - 1)));
  Dim x = place.x;
  for (const markup::Inline& picture : item.pictures) {
    if (x > place.x && x + size > place.x + place.width) {
      x = place.x;
      y += pitch;
    }
    x += addSign(context, cell, picture, {x, y}, size, item.tag) + gap;
  }
  cell.height = y + (count > 0 ? pitch : Dim{});
  return cell;
}

}  // namespace

VerticalList layOutSigns(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const std::size_t perRow = place.isFull ? 3 : 2;
  const auto* list = std::get_if<markup::List>(&box.body.front().node);
  const auto* words = list && !list->items.empty() && !list->items.front().body.empty()
                          ? std::get_if<markup::Paragraph>(&list->items.front().body.front().node)
                          : nullptr;
  const bool isCalls = words && !words->text.empty() && !words->text.front().figure.empty();
  // The columns of the page where every row of signs fits them; else three alike.
  const bool fitsColumns =
      place.isFull && std::none_of(items.begin(), items.end(), [&](const ItemParts& item) {
        return leastWidth(item) >
               acrossBoth(grid, static_cast<std::size_t>(&item - items.data()) % perRow, 2).width;
      });
  const auto inColumn = [&](std::size_t i) { return acrossBoth(grid, i % perRow, 2); };
  const auto inThird = [&](std::size_t i) { return nth(place, i % perRow, perRow, grid.gutter / 2); };
  const auto linesIn = [&](const auto& at) {
    std::size_t lines = 0;
    for (std::size_t i = 0; i < items.size(); ++i) lines += callLines(context, items[i], at(i));
    return lines;
  };
  const bool isInColumns = place.isFull && (isCalls ? linesIn(inColumn) <= linesIn(inThird) : fitsColumns);
  const auto at = [&](std::size_t i) { return isInColumns ? inColumn(i) : inThird(i); };
  int quietest = 0;  // one size for all
  for (std::size_t i = 0; isCalls && i < items.size(); ++i)
    quietest = std::max(quietest, quietness(context, items[i], at(i)));
  VerticalList out;
  for (std::size_t from = 0; from < items.size(); from += perRow) {
    const std::size_t end = std::min(items.size(), from + perRow);
    Dim level;  // of the signs worn
    for (std::size_t i = from; i < end; ++i) level = std::max(level, taskHeight(context, items[i], at(i)));
    std::vector<VerticalList> cells;
    for (std::size_t i = from; i < end; ++i) {
      cells.push_back({isCalls && !items[i].pictures.empty()
                           ? callCell(context, items[i], at(i), callStyles[quietest])
                           : wearCell(context, items[i], at(i), fitsColumns ? wornSize : tightSize, level)});
    }
    if (!out.empty()) out.push_back(space(grid.half()));
    out.push_back(collapse(parallel(std::move(cells), grid.line, grid.unit), grid.line, grid.unit));
    out.back().baseline = {-1};
    out.back().keepWithNext = isCalls;
  }
  if (!isCalls || !place.isFull) {
    out.back().keepWithNext = false;
    return out;
  }
  const auto rule = [&](RuleKind kind) {
    return ruleFragment(kind, place.x, place.width, Dim::pt(1) / 2, context.colour("ink"));
  };
  out.insert(out.begin(), {rule(RuleKind::Open), space(grid.half())});
  out.push_back(space(grid.half()));
  out.push_back(rule(RuleKind::Strip));
  return out;
}

}  // namespace typeset
