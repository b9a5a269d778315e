// Rows of signs: whom to call and where to go, and what to wear.
#include "typeset/blocks.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Inlines;

/// Places a sign with its own tag; its width, or nothing for an unknown one.
Dim placeSign(Setter& setter, Slice& slice, const markup::Inline& picture, Point at, Dim height, int parent) {
  const Drawing* known = setter.drawing(picture.figure);
  if (!known) return height;
  const Drawing drawing = scaled(*known, height);
  const int tag = setter.tag(Role::Figure, parent);
  setter.out.tags.back().alt = picture.text.empty() ? drawing.alt : picture.text;
  for (Item item : drawing.items) {
    move(item, at.x, at.y);
    item.tag = tag;
    slice.items.push_back(std::move(item));
  }
  return drawing.size.w;
}

void addLines(Setter& setter, Slice& slice, const Inlines& words, const Style& style, Place place, Dim& y,
              int tag) {
  Text text(setter, words, style);
  for (Slice& line : stackOf(setter, text.lines(place.width, tag), place)) {
    for (Item& item : line.items) {
      move(item, {}, y);
      slice.items.push_back(std::move(item));
    }
    y += line.height;
  }
}

const Dim callIndent = Dim::mm(14);  // of the words beside a sign

Place besideSign(Place place) { return {place.x + callIndent, place.width - callIndent, false}; }

/// So many count as too many where a word has to be broken.
std::size_t linesBeside(Setter& setter, const Inlines& words, const char* style, Place place) {
  Text text(setter, words, setter.style(style));
  const Dim width = besideSign(place).width;
  return text.longest() > width ? 4 : text.lines(width, artifact).size();
}

/// How loud a name may be: one of more than a line is set smaller, a long one as small as text.
int quietness(Setter& setter, const ItemParts& item, Place place) {
  const std::size_t lines = linesBeside(setter, plain(item.strong), "hazard", place);
  return lines > 3 ? 2 : lines > 1 ? 1 : 0;
}

/// Of the name and the words below it.
std::size_t callLines(Setter& setter, const ItemParts& item, Place place) {
  return linesBeside(setter, plain(item.strong), "head", place) +
         linesBeside(setter, item.rest, "note", place);
}

constexpr const char* callStyles[] = {"hazard", "head", "rowHead"};  // by quietness

/// A sign with a name beside it and more words under the name.
Slice callCell(Setter& setter, const ItemParts& item, Place place, const char* style) {
  Slice cell;
  const Dim height = Dim::mm(11);
  const Dim top = Dim::milli(2'500);  // the sign's middle beside the two lines
  placeSign(setter, cell, item.pictures.front(), {place.x, top}, height, item.tag);
  const Place words = besideSign(place);
  Style note = setter.style("note");
  note.plain.colour = setter.colour("ink");
  Dim y = setter.grid.unit;
  addLines(setter, cell, plain(item.strong), setter.style(style), words, y, item.tag);
  addLines(setter, cell, item.rest, note, words, y, item.tag);
  cell.height = roundUp(std::max(y, top + height), setter.grid.unit);
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

Dim taskHeight(Setter& setter, const ItemParts& item, Place place) {
  const Style& style = setter.style("table");
  const auto lines = Text(setter, taskWords(item), style).lines(place.width, artifact).size();
  return style.leading * static_cast<std::int64_t>(lines);
}

/// A task with the signs of what to wear below it, at the level of those beside it.
Slice wearCell(Setter& setter, const ItemParts& item, Place place, Dim size, Dim level) {
  Slice cell;
  const Dim pitch = roundUp(wornSize, setter.grid.unit);
  Dim y;
  addLines(setter, cell, taskWords(item), setter.style("table"), place, y, item.tag);
  y = level + setter.grid.unit;
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
    x += placeSign(setter, cell, picture, {x, y}, size, item.tag) + gap;
  }
  cell.height = y + (count > 0 ? pitch : Dim{});
  return cell;
}

}  // namespace

Stack setSigns(Setter& setter, const markup::Box& box, Place place, int parent) {
  const Grid& grid = setter.grid;
  const std::vector<ItemParts> items = itemsOf(setter, box, parent);
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
    for (std::size_t i = 0; i < items.size(); ++i) lines += callLines(setter, items[i], at(i));
    return lines;
  };
  const bool isInColumns = place.isFull && (isCalls ? linesIn(inColumn) <= linesIn(inThird) : fitsColumns);
  const auto at = [&](std::size_t i) { return isInColumns ? inColumn(i) : inThird(i); };
  int quietest = 0;  // one size for all
  for (std::size_t i = 0; isCalls && i < items.size(); ++i)
    quietest = std::max(quietest, quietness(setter, items[i], at(i)));
  Stack out;
  for (std::size_t from = 0; from < items.size(); from += perRow) {
    const std::size_t end = std::min(items.size(), from + perRow);
    Dim level;  // of the signs worn
    for (std::size_t i = from; i < end; ++i) level = std::max(level, taskHeight(setter, items[i], at(i)));
    std::vector<Stack> cells;
    for (std::size_t i = from; i < end; ++i) {
      cells.push_back({isCalls && !items[i].pictures.empty()
                           ? callCell(setter, items[i], at(i), callStyles[quietest])
                           : wearCell(setter, items[i], at(i), fitsColumns ? wornSize : tightSize, level)});
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
    return ruleSlice(kind, place.x, place.width, Dim::pt(1) / 2, setter.colour("ink"));
  };
  out.insert(out.begin(), {rule(RuleKind::Open), space(grid.half())});
  out.push_back(space(grid.half()));
  out.push_back(rule(RuleKind::Strip));
  return out;
}

}  // namespace typeset
