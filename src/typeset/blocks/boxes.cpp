#include "typeset/blocks/boxes.h"

#include "base/fixed.h"
#include "typeset/blocks/blocks.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Block;
using markup::Inline;
using markup::Inlines;

Fragment emptyFragment(Dim height) {
  Fragment s;
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

VerticalList wordsAt(LayoutContext& context, const Inlines& words, const Style& style, Column place,
                     int tag) {
  Text text(context, words, style);
  return listOf(context, text.lines(place.width, tag), place);
}

Fragment sideBySide(LayoutContext& context, std::vector<VerticalList>&& lists) {
  return collapse(parallel(std::move(lists), context.grid.line, context.grid.unit), context.grid.line,
                  context.grid.unit);
}

void addInner(ItemParts& parts, const markup::List& list) {
  for (const markup::ListItem& item : list.items) {
    const auto* p = item.body.empty() ? nullptr : std::get_if<markup::Paragraph>(&item.body.front().node);
    if (p) parts.inner.push_back(p->text);
  }
}

/// '*label* **words** more': what was taken for the rest is told apart.
void takeLabel(ItemParts& parts) {
  const auto is = [&](std::size_t i, Inline::Style style) {
    return i < parts.rest.size() && parts.rest[i].style == style;
  };
  if (!parts.strong.empty() || !is(0, Inline::Style::Emphasis)) return;
  const std::size_t at = is(1, Inline::Style::Strong) ? 1 : is(2, Inline::Style::Strong) ? 2 : 0;
  if (at == 0) return;
  parts.label = {parts.rest[0]};
  parts.strong = {parts.rest[at]};
  parts.rest.erase(parts.rest.begin(), parts.rest.begin() + static_cast<std::ptrdiff_t>(at) + 1);
  trimFront(parts.rest);
}

}  // namespace

std::vector<ItemParts> itemsOf(LayoutContext& context, const markup::Box& box, int parent) {
  std::vector<ItemParts> out;
  for (const Block& block : box.body) {
    const auto* list = std::get_if<markup::List>(&block.node);
    if (!list) {
      context.line = block.line;
      context.warn("only a list can stand in this box", "begin each of its lines with '> - '");
      continue;
    }
    const int tag = context.tag(Role::L, parent);
    for (const markup::ListItem& item : list->items) {
      ItemParts parts;
      parts.tag = context.tag(Role::LBody, context.tag(Role::LI, tag));
      for (const Block& inner : item.body) {
        if (const auto* nested = std::get_if<markup::List>(&inner.node)) addInner(parts, *nested);
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
      takeLabel(parts);
      out.push_back(std::move(parts));
    }
  }
  return out;
}

namespace {

/// Large figures side by side, of one size: in the columns of the page; where one is too wide for its own,
/// each as wide as it needs and what is left shared alike, as much smaller as all of them together need.
/// Where that is too small, in the columns again, and on lines of their own.
struct FigureColumns {
  std::vector<Column> columns;
  Style style;
};

FigureColumns columnsOf(LayoutContext& context, const std::vector<ItemParts>& items, std::size_t perRow,
                        Column place) {
  const Grid& grid = context.grid;
  FigureColumns out{{}, context.style("figure")};
  std::vector<Dim> widths(perRow);
  for (std::size_t i = 0; i < items.size(); ++i) {
    Dim& width = widths[i % perRow];
    width = std::max(width, Text(context, plain(items[i].strong), out.style).natural());
  }
  bool fits = true;
  Dim sum;
  for (std::size_t i = 0; i < perRow; ++i) {
    out.columns.push_back(place.isFull ? acrossBoth(grid, i, std::max<std::size_t>(perRow, 2) - 1)
                                       : nth(place, i, perRow, grid.gutter));
    fits = fits && widths[i] <= out.columns[i].width;
    sum += widths[i];
  }
  if (fits) return out;
  const auto count = static_cast<std::int64_t>(perRow);
  const Dim room = place.width - grid.gutter * (count - 1);
  const auto smaller = [&](Dim d) { return Dim{base::mulDiv(d.raw, room.raw, sum.raw, base::Round::Down)}; };
  if (sum > room) {
    const Dim size = smaller(out.style.plain.size) * 49 / 50;  // for what rounding adds to the widths
    if (size < context.style("total").plain.size) {
      out.style = context.style("total");
      return out;
    }
    out.style.plain.size = size;
    for (Dim& width : widths) width = smaller(width);
    sum = room;
  }
  Dim x = place.x;
  for (std::size_t i = 0; i < perRow; ++i) {
    const Dim width = widths[i] + std::max(Dim{}, room - sum) / count;
    out.columns[i] = {x, width, false};
    x += width + grid.gutter;
  }
  return out;
}

}  // namespace

VerticalList layOutFigures(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  std::vector<ItemParts> items = itemsOf(context, box, parent);
  constexpr std::size_t most = 4;
  const std::size_t perRow = std::min(items.size(), most);
  if (perRow == 0) return {};
  const auto [columns, style] = columnsOf(context, items, perRow, place);
  // Whatever their size, they stand on one line with the head of the section.
  const Dim drop = context.style("figure").baseline - style.baseline;
  VerticalList out;
  for (std::size_t from = 0; from < items.size(); from += perRow) {
    std::vector<VerticalList> cells;
    for (std::size_t i = from; i < std::min(from + perRow, items.size()); ++i) {
      const Column at = columns[i % perRow];
      VerticalList cell = {emptyFragment(drop)};
      append(cell, wordsAt(context, plain(items[i].strong), style, at, items[i].tag));
      cell.push_back(emptyFragment(grid.unit));
      append(cell, wordsAt(context, items[i].rest, context.style("label"), at, items[i].tag));
      cells.push_back(std::move(cell));
    }
    if (!out.empty()) out.push_back(space(grid.half()));
    out.push_back(sideBySide(context, std::move(cells)));
    out.back().keepWithNext = true;
  }
  if (out.empty() || !place.isFull) return out;
  const auto rule = [&](RuleKind kind) {
    return ruleFragment(kind, place.x, place.width, Dim::pt(1), context.colour("ink"));
  };
  out.insert(out.begin(), rule(RuleKind::Open));
  out.push_back(space(grid.half()));
  out.push_back(rule(RuleKind::Strip));
  return out;
}

VerticalList layOutLetter(LayoutContext& context, const markup::Box& box, int parent) {
  const Grid& grid = context.grid;
  std::vector<VerticalList> columns(3);
  const std::vector<ItemParts> items = itemsOf(context, box, parent);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Column at = acrossBoth(grid, i % 3, 2);
    VerticalList& column = columns[i % 3];
    column.push_back(emptyFragment(grid.unit));
    append(column, wordsAt(context, plain(items[i].strong), context.style("label"), at, items[i].tag));
    append(column, wordsAt(context, items[i].rest, context.style("table"), at, items[i].tag));
  }
  if (items.empty()) return {};
  return {sideBySide(context, std::move(columns))};
}

VerticalList layOutColumns(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
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
  std::vector<VerticalList> columns;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Column at = nth(place, i, parts.size(), grid.gutter);
    VerticalList column;
    if (parts[i].label) {
      context.line = parts[i].label->line;
      column.push_back(emptyFragment(grid.unit));
      append(column, layOutParagraph(context, plain(std::get<markup::Paragraph>(parts[i].label->node).text),
                                     "label", at, parent));
    }
    append(column, layOutBlocks(context, parts[i].body, at, parent));
    columns.push_back(std::move(column));
  }
  if (columns.empty()) return {};
  const bool hasLabel = parts[0].label != nullptr;
  VerticalList out = parallel(std::move(columns), grid.line, grid.unit);
  if (hasLabel) out.front().keepWithNext = true;
  return out;
}

VerticalList layOutTotals(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  const Grid& grid = context.grid;
  const Column at = place.isFull ? context.textColumn() : place;
  VerticalList out;
  for (const Block& block : box.body) {
    const auto* table = std::get_if<markup::Table>(&block.node);
    if (!table) {
      append(out, layOutBlock(context, block, at, parent));
      continue;
    }
    const int body = context.tag(Role::TBody, context.tag(Role::Table, parent));
    for (const markup::Row& row : table->rows) {
      if (row.line != 0) context.line = row.line;
      Inlines label, amount;
      for (const markup::Cell& cell : row.cells) {
        if (cell.text.empty()) continue;
        if (label.empty() && &cell != &row.cells.back()) label = cell.text;
        else amount = cell.text;
      }
      const bool isTotal =
          isAll(amount, Inline::Style::Strong) && (label.empty() || isAll(label, Inline::Style::Strong));
      const Style& style = context.style(isTotal ? "total" : "table");
      const int tr = context.tag(Role::TR, body);
      const int th = context.tag(Role::TH, tr);
      context.out.tags.back().scope = Scope::Row;
      const int td = context.tag(Role::TD, tr);
      Text sum(context, isTotal ? plain(amount) : amount, style);
      const Dim sumWidth = std::min(sum.natural(), at.width / 2);
      const Column right = {at.x + at.width - sumWidth, sumWidth, false};
      std::vector<VerticalList> cells;
      cells.push_back(wordsAt(context, isTotal ? plain(label) : label, style,
                              {at.x, at.width - sumWidth - grid.gutter, false}, th));
      cells.push_back(listOf(context, sum.lines(sumWidth, td), right, markup::Align::Right));
      if (isTotal && !out.empty()) out.push_back(space(grid.half()));
      out.push_back(sideBySide(context, std::move(cells)));
    }
  }
  keepTogether(out);
  return out;
}

}  // namespace typeset
