// Short matter side by side: where one is, what can kill, what chemicals do, orders with a number.
#include "typeset/blocks/cards.h"

#include "typeset/blocks/boxes.h"
#include "typeset/blocks/cell.h"

#include <algorithm>
#include <optional>

namespace typeset {
namespace {

using markup::Inlines;

Fragment together(LayoutContext& context, std::vector<Fragment>&& cells) {
  Fragment out;
  for (Fragment& cell : cells) {
    out.height = std::max(out.height, cell.height);
    out.items.insert(out.items.end(), std::make_move_iterator(cell.items.begin()),
                     std::make_move_iterator(cell.items.end()));
  }
  out.height = roundUp(out.height, context.grid.unit);
  out.line = context.line;
  return out;
}

/// The style of the largest words that lets none of them take more lines than 'most'.
Style largestOf(LayoutContext& context, const std::vector<Style>& styles, const std::vector<ItemParts>& items,
                std::size_t most, Dim width) {
  for (const Style& style : styles) {
    const bool fits = std::all_of(items.begin(), items.end(), [&](const ItemParts& item) {
      Text text(context, plain(item.strong), style);
      return text.longest() <= width && text.lines(width, artifact).size() <= most;
    });
    if (fits) return style;
  }
  return styles.back();
}

/// Widths of columns: alike, but where one's words are long it takes from those whose words are short, as
/// long as every order keeps to its line.
std::vector<Dim> balanced(LayoutContext& context, const std::vector<ItemParts>& items, const Style& order,
                          const Style& note, Dim each) {
  const Dim step = Dim::mm(2), asLongAsItIs = note.leading * 3;
  const auto heightIn = [&](std::size_t i, Dim width) {
    return heightOfWords(context, items[i].rest, note, width);
  };
  std::vector<Dim> widths(items.size(), each), least, heights;
  for (std::size_t i = 0; i < items.size(); ++i) {
    least.push_back(std::min(each, Text(context, plain(items[i].strong), order).natural() + Dim::mm(1)));
    heights.push_back(heightIn(i, each));
  }
  for (;;) {
    const std::size_t tallest =
        static_cast<std::size_t>(std::max_element(heights.begin(), heights.end()) - heights.begin());
    if (heights[tallest] <= asLongAsItIs) return widths;
    std::optional<std::size_t> giver;
    Dim lowest = heights[tallest];
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (i == tallest || widths[i] - step < least[i]) continue;
      if (const Dim after = heightIn(i, widths[i] - step); after < lowest) {
        giver = i;
        lowest = after;
      }
    }
    if (!giver) return widths;
    widths[*giver] -= step;
    widths[tallest] += step;
    for (const std::size_t i : {*giver, tallest}) heights[i] = heightIn(i, widths[i]);
  }
}

}  // namespace

VerticalList layOutAddress(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  Fragment row;
  Inlines head, note;
  for (const auto& part : box.title)
    (part.style == markup::Inline::Style::Emphasis ? note : head).push_back(part);
  Dim y;
  addWords(context, row, head, context.style("head"), {grid.left, grid.side, false}, y,
           context.tag(Role::H2, parent));
  addWords(context, row, plain(note), context.style("note"), {grid.left, grid.side, false}, y,
           context.tag(Role::P, parent));
  row.height = y;
  const Style large = resized(context, "total", Dim::pt(15), grid.unit * 5, grid.unit * 4);
  // The first takes what the others leave: they are as wide as their words.
  Dim x = place.x + place.width;
  for (std::size_t i = items.size(); i-- > 0;) {
    Dim width = x - grid.textX;
    if (i > 0)
      width = std::min(Text(context, plain(items[i].strong), large).natural() + Dim::mm(1), width / 2);
    x -= width;
    y = {};
    addWords(context, row, plain(items[i].strong), large, {x, width, false}, y, items[i].tag);
    addWords(context, row, items[i].rest, context.style("table"), {x, width, false}, y, items[i].tag);
    row.height = std::max(row.height, y);
    x -= grid.gutter;
  }
  row.height = roundUp(row.height, grid.unit);
  row.keepWithNext = true;
  row.bookmarks.push_back({plainWords(head), 0, {}, 2});
  return {fullRule(context, RuleKind::Open, place, Dim::pt(1), "ink"), space(grid.half()), std::move(row)};
}

VerticalList layOutCards(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const std::size_t perRow = place.isFull ? 3 : 2;
  const Dim sign = Dim::mm(13), indent = Dim::mm(31) / 2;
  const Dim width = nth(place, 0, perRow, grid.gutter).width;
  const Style name = largestOf(context,
                               {resized(context, "hazard", Dim::pt(13), grid.unit * 9 / 2, grid.unit * 7 / 2),
                                resized(context, "head", Dim::pt(12), grid.line, grid.unit * 3)},
                               items, 2, width - indent);
  VerticalList out;
  for (std::size_t from = 0; from < items.size(); from += perRow) {
    std::vector<Fragment> cells;
    for (std::size_t i = from; i < std::min(items.size(), from + perRow); ++i) {
      const Column at = nth(place, i % perRow, perRow, grid.gutter);
      Fragment cell;
      const ItemParts& item = items[i];
      if (!item.pictures.empty()) addSign(context, cell, item.pictures.front(), {at.x, {}}, sign, item.tag);
      const Column beside = {at.x + indent, at.width - indent, false};
      const Dim tall = heightOfWords(context, plain(item.strong), name, beside.width);
      Dim y = std::max(Dim{}, (sign - tall) / 2);
      addWords(context, cell, plain(item.strong), name, beside, y, item.tag);
      y = roundUp(std::max(y, sign), grid.unit) + grid.unit;
      addWords(context, cell, item.rest, context.style("table"), at, y, item.tag);
      cell.height = y;
      cells.push_back(std::move(cell));
    }
    if (!out.empty()) out.push_back(space(grid.half()));
    out.push_back(together(context, std::move(cells)));
  }
  return out;
}

namespace {

struct Pair {
  Inlines name, rest;
};

/// '**skin** soap and water' as its strong words and the others.
Pair pairOf(const Inlines& words) {
  Pair pair;
  for (const auto& part : words) {
    const bool isName = pair.rest.empty() && part.style == markup::Inline::Style::Strong;
    (isName ? pair.name : pair.rest).push_back(part);
  }
  if (!pair.rest.empty()) pair.rest.front().text.erase(0, pair.rest.front().text.find_first_not_of(' '));
  return pair;
}

/// Wide enough for each name on one line.
Dim keyWidth(LayoutContext& context, const std::vector<ItemParts>& items, const Style& style) {
  Dim width = Dim::mm(37) / 2;
  for (const ItemParts& item : items) {
    for (const Inlines& words : item.inner)
      width = std::max(width, Text(context, pairOf(words).name, style).natural());
  }
  return width + Dim::mm(1);
}

}  // namespace

VerticalList layOutProfiles(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const std::size_t perRow = 2;
  const Dim sign = Dim::mm(21) / 2, gap = Dim::mm(6) / 5;
  const Style words = closer(context.style("table"));
  const Dim key = keyWidth(context, items, words);
  std::vector<Fragment> cells;
  for (std::size_t i = 0; i < std::min(items.size(), perRow); ++i) {
    const ItemParts& item = items[i];
    const Column at = items.size() == 1 ? place : nth(place, i, perRow, grid.gutter);
    Fragment cell;
    const auto count = static_cast<std::int64_t>(item.pictures.size());
    Dim x = at.x + at.width - sign * count - gap * std::max<std::int64_t>(count - 1, 0);
    const Column head = {at.x, (count > 0 ? x - Dim::mm(2) : x) - at.x, false};
    for (const auto& picture : item.pictures)
      x += addSign(context, cell, picture, {x, {}}, sign, item.tag) + gap;
    Dim y;
    addWords(context, cell, plain(item.strong), context.style("rowHead"), head, y, item.tag);
    addWords(context, cell, plain(item.rest), words, head, y, item.tag);
    y = std::max(y, count > 0 ? roundUp(sign, grid.unit) : y) + grid.unit;
    const int list = context.tag(Role::L, item.tag);
    for (const Inlines& line : item.inner) {
      const auto [name, rest] = pairOf(line);
      const int li = context.tag(Role::LI, list);
      Dim left = y, right = y;
      addWords(context, cell, name, words, {at.x, key - Dim::mm(1) / 2, false}, left,
               context.tag(Role::Lbl, li));
      addWords(context, cell, rest, words, {at.x + key, at.width - key, false}, right,
               context.tag(Role::LBody, li));
      y = std::max(left, right);
    }
    cell.height = y;
    cells.push_back(std::move(cell));
  }
  return {together(context, std::move(cells))};
}

VerticalList layOutOrders(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  if (items.empty()) return {};
  const Dim gutter = Dim::mm(3);
  const Dim width = nth(place, 0, items.size(), gutter).width;
  const Style order =
      largestOf(context,
                {resized(context, "total", Dim::pt(13), grid.unit * 5, grid.unit * 4),
                 resized(context, "rowHead", Dim::pt(12), grid.unit * 5, grid.unit * 4),
                 resized(context, "rowHead", Dim::milli(10'500), grid.unit * 4, grid.unit * 3)},
                items, 1, width);
  Style note = context.style("note");
  note.plain.colour = context.colour("ink");
  const std::vector<Dim> widths = balanced(context, items, order, note, width);
  std::vector<Fragment> cells;
  Dim x = place.x;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Column at = {x, widths[i], false};
    x += widths[i] + gutter;
    Fragment cell;
    Dim y;
    addWords(context, cell, plain(items[i].label), context.style("label"), at, y, items[i].tag);
    addWords(context, cell, plain(items[i].strong), order, at, y, items[i].tag);
    addWords(context, cell, items[i].rest, note, at, y, items[i].tag);
    cell.height = y;
    cells.push_back(std::move(cell));
  }
  VerticalList out;
  if (place.isFull) out = {fullRule(context, RuleKind::Open, place, Dim::pt(1), "ink"), space(grid.half())};
  out.push_back(together(context, std::move(cells)));
  return out;
}

}  // namespace typeset
