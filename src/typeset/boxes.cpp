// Boxes without a frame: large figures, the letter's pairs, columns, totals.
#include "typeset/blocks.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Block;
using markup::Inline;
using markup::Inlines;

Slice emptySlice(Dim height) {
  Slice s;
  s.height = height;
  s.keepWithNext = true;
  return s;
}

void trimFront(Inlines& words) {
  while (!words.empty() && words.front().figure.empty()) {
    std::string& s = words.front().text;
    s.erase(0, std::min(s.find_first_not_of(" \n"), s.size()));
    if (!s.empty()) return;
    words.erase(words.begin());
  }
}

Stack wordsAt(Setter& setter, const Inlines& words, const Style& style, Place place, int tag) {
  Text text(setter, words, style);
  return stackOf(setter, text.lines(place.width, tag), place);
}

Slice sideBySide(Setter& setter, std::vector<Stack>&& stacks) {
  return collapse(parallel(std::move(stacks), setter.grid.line, setter.grid.unit), setter.grid.line,
                  setter.grid.unit);
}

}  // namespace

std::vector<ItemParts> itemsOf(Setter& setter, const markup::Box& box, int parent) {
  std::vector<ItemParts> out;
  for (const Block& block : box.body) {
    const auto* list = std::get_if<markup::List>(&block.node);
    if (!list) {
      setter.line = block.line;
      setter.warn("only a list can stand in this box", "begin each of its lines with '> - '");
      continue;
    }
    const int tag = setter.tag(Role::L, parent);
    for (const markup::ListItem& item : list->items) {
      ItemParts parts;
      parts.tag = setter.tag(Role::LBody, setter.tag(Role::LI, tag));
      for (const Block& inner : item.body) {
        const auto* p = std::get_if<markup::Paragraph>(&inner.node);
        if (!p) continue;
        for (const Inline& part : p->text) {
          if (!part.figure.empty()) parts.pictures.push_back(part);
          else if (part.style == Inline::Style::Strong && parts.rest.empty()) parts.strong.push_back(part);
          else if (!parts.rest.empty() || part.text.find_first_not_of(" \n") != std::string::npos)
            parts.rest.push_back(part);
        }
      }
      trimFront(parts.rest);
      out.push_back(std::move(parts));
    }
  }
  return out;
}

Stack setFigures(Setter& setter, const markup::Box& box, Place place, int parent) {
  const Grid& grid = setter.grid;
  std::vector<ItemParts> items = itemsOf(setter, box, parent);
  constexpr std::size_t most = 4;
  const std::size_t perRow = std::min(items.size(), most);
  const auto placeOf = [&](std::size_t i) {
    if (place.isFull) return acrossBoth(grid, i % perRow, std::max<std::size_t>(perRow, 2) - 1);
    return nth(place, i % perRow, perRow, grid.gutter);
  };
  // One size for all: when one figure is too wide for its place, all are set smaller.
  const char* style = "figure";
  for (std::size_t i = 0; i < items.size(); ++i)
    if (Text(setter, plain(items[i].strong), setter.style("figure")).natural() > placeOf(i).width)
      style = "total";
  // Whatever their size, they stand on one line with each other and with the head of the section.
  const Dim drop = setter.style("figure").rise - setter.style(style).rise;
  Stack out;
  for (std::size_t from = 0; from < items.size(); from += perRow) {
    std::vector<Stack> cells;
    for (std::size_t i = from; i < std::min(from + perRow, items.size()); ++i) {
      Stack cell = {emptySlice(drop)};
      append(cell, wordsAt(setter, plain(items[i].strong), setter.style(style), placeOf(i), items[i].tag));
      cell.push_back(emptySlice(grid.unit));
      append(cell, wordsAt(setter, items[i].rest, setter.style("label"), placeOf(i), items[i].tag));
      cells.push_back(std::move(cell));
    }
    if (!out.empty()) out.push_back(space(grid.half()));
    out.push_back(sideBySide(setter, std::move(cells)));
    out.back().keepWithNext = true;
  }
  if (out.empty() || !place.isFull) return out;
  const auto rule = [&](RuleKind kind) {
    return ruleSlice(kind, place.x, place.width, Dim::pt(1), setter.colour("ink"));
  };
  out.insert(out.begin(), rule(RuleKind::Open));
  out.push_back(space(grid.half()));
  out.push_back(rule(RuleKind::Strip));
  return out;
}

Stack setLetter(Setter& setter, const markup::Box& box, int parent) {
  const Grid& grid = setter.grid;
  std::vector<Stack> columns(3);
  const std::vector<ItemParts> items = itemsOf(setter, box, parent);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Place at = acrossBoth(grid, i % 3, 2);
    Stack& column = columns[i % 3];
    column.push_back(emptySlice(grid.unit));
    append(column, wordsAt(setter, plain(items[i].strong), setter.style("label"), at, items[i].tag));
    append(column, wordsAt(setter, items[i].rest, setter.style("table"), at, items[i].tag));
  }
  if (items.empty()) return {};
  return {sideBySide(setter, std::move(columns))};
}

Stack setColumns(Setter& setter, const markup::Box& box, Place place, int parent) {
  const Grid& grid = setter.grid;
  struct Part {
    const Block* label = nullptr;
    markup::Blocks body;
  };
  std::vector<Part> parts;
  for (const Block& block : box.body) {
    const auto* p = std::get_if<markup::Paragraph>(&block.node);
    if (p && isAll(p->text, Inline::Style::Strong)) {
      parts.push_back({&block, {}});
      continue;
    }
    if (parts.empty()) parts.emplace_back();
    parts.back().body.push_back(block);
  }
  // A single list is dealt out to two columns.
  const auto* single = parts.size() == 1 && parts[0].body.size() == 1
                           ? std::get_if<markup::List>(&parts[0].body[0].node)
                           : nullptr;
  if (single && single->items.size() > 1) {
    markup::List left = *single, right = *single;
    const std::size_t half = (single->items.size() + 1) / 2;
    left.items.resize(half);
    right.items.erase(right.items.begin(), right.items.begin() + static_cast<std::ptrdiff_t>(half));
    right.start += static_cast<int>(half);
    const int line = parts[0].body[0].line;
    parts[0].body = {{left, line}};
    parts.push_back({nullptr, {{right, line}}});
  }
  std::vector<Stack> columns;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Place at = nth(place, i, parts.size(), grid.gutter);
    Stack column;
    if (parts[i].label) {
      setter.line = parts[i].label->line;
      column.push_back(emptySlice(grid.unit));
      append(column, setParagraph(setter, plain(std::get<markup::Paragraph>(parts[i].label->node).text),
                                  "label", at, parent));
    }
    append(column, setBlocks(setter, parts[i].body, at, parent));
    columns.push_back(std::move(column));
  }
  if (columns.empty()) return {};
  const bool hasLabel = parts[0].label != nullptr;
  Stack out = parallel(std::move(columns), grid.line, grid.unit);
  if (hasLabel) out.front().keepWithNext = true;
  return out;
}

Stack setTotals(Setter& setter, const markup::Box& box, Place place, int parent) {
  const Grid& grid = setter.grid;
  const Place at = place.isFull ? setter.textPlace() : place;
  Stack out;
  for (const Block& block : box.body) {
    const auto* table = std::get_if<markup::Table>(&block.node);
    if (!table) {
      append(out, setBlock(setter, block, at, parent));
      continue;
    }
    const int body = setter.tag(Role::TBody, setter.tag(Role::Table, parent));
    for (const markup::Row& row : table->rows) {
      if (row.line != 0) setter.line = row.line;
      Inlines label, amount;
      for (const markup::Cell& cell : row.cells) {
        if (cell.text.empty()) continue;
        if (label.empty() && &cell != &row.cells.back()) label = cell.text;
        else amount = cell.text;
      }
      const bool isTotal =
          isAll(amount, Inline::Style::Strong) && (label.empty() || isAll(label, Inline::Style::Strong));
      const Style& style = setter.style(isTotal ? "total" : "table");
      const int tr = setter.tag(Role::TR, body);
      const int th = setter.tag(Role::TH, tr);
      setter.out.tags.back().scope = Scope::Row;
      const int td = setter.tag(Role::TD, tr);
      Text sum(setter, isTotal ? plain(amount) : amount, style);
      const Dim sumWidth = std::min(sum.natural(), at.width / 2);
      const Place right = {at.x + at.width - sumWidth, sumWidth, false};
      std::vector<Stack> cells;
      cells.push_back(wordsAt(setter, isTotal ? plain(label) : label, style,
                              {at.x, at.width - sumWidth - grid.gutter, false}, th));
      cells.push_back(stackOf(setter, sum.lines(sumWidth, td), right, markup::Align::Right));
      if (isTotal && !out.empty()) out.push_back(space(grid.half()));
      out.push_back(sideBySide(setter, std::move(cells)));
    }
  }
  keepTogether(out);
  return out;
}

}  // namespace typeset
