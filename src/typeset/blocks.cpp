// The flow of blocks in one column.
#include "typeset/blocks.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Block;
using markup::Callout;

template <class T>
const T* as(const Block& block) {
  return std::get_if<T>(&block.node);
}

bool isPanel(Callout kind) {
  return kind == Callout::Note || kind == Callout::Caution || kind == Callout::Warning ||
         kind == Callout::Danger;
}

bool isBox(const Block& block, Callout kind) {
  const auto* box = as<markup::Box>(block);
  return box && box->kind == kind;
}

bool isLabel(const Block& block) {
  const auto* p = as<markup::Paragraph>(block);
  return p && isAll(p->text, markup::Inline::Style::Strong);
}

/// White between two blocks.
Slice between(const Grid& grid, const Block& before, const Block& next, Place place) {
  const Dim unit = grid.unit;
  const auto isOne = [](const Block& block) {
    const auto* box = as<markup::Box>(block);
    return box && isPanel(box->kind);
  };
  if (isOne(before) && isOne(next)) return space(grid.half());  // neighbours make one group
  if (const auto* box = as<markup::Box>(next)) {
    if (isPanel(box->kind) || box->kind == Callout::Signs) return space(grid.line, true);
    if (box->kind == Callout::Figures && place.isFull) return space(grid.line, true);
    if (box->kind == Callout::Totals) return space(unit);
    if (box->kind == Callout::Keep && !box->body.empty())
      return between(grid, before, box->body.front(), place);
  }
  if (const auto* box = as<markup::Box>(before))
    if (isPanel(box->kind)) return space(grid.half(), true);
  if (const auto* table = as<markup::Table>(next)) return space(table->hasHead ? unit * 3 : grid.half());
  if (isLabel(before) && as<markup::List>(next)) return space({});
  return space(grid.half());
}

Stack setBox(Setter& setter, const markup::Box& box, Place place, int parent) {
  switch (box.kind) {
    case Callout::Note:
    case Callout::Caution:
    case Callout::Warning:
    case Callout::Danger:
      return setPanel(setter, box, parent);
    case Callout::Side: {  // one that stands elsewhere than under a head
      Stack out;
      for (const Block& block : box.body) {
        if (const auto* p = as<markup::Paragraph>(block))
          append(out, setParagraph(setter, p->text, "note", place, parent));
        if (const auto* figure = as<markup::Figure>(block)) {
          if (!out.empty()) out.push_back(space(setter.grid.half()));
          append(out, setFigure(setter, *figure, place, parent));
        }
      }
      return out;
    }
    case Callout::Figures:
      return setFigures(setter, box, place, parent);
    case Callout::Columns:
      return setColumns(setter, box, place, parent);
    case Callout::Signs:
      return setSigns(setter, box, place, parent);
    case Callout::Totals:
      return setTotals(setter, box, place, parent);
    case Callout::Keep: {
      Stack out = setBlocks(setter, box.body, place, parent);
      keepTogether(out);
      return out;
    }
    case Callout::Letter:
      return setLetter(setter, box, parent);
  }
  return {};
}

/// Reading stays in the text column even where matter may run across: a line of 166 mm is too long to read.
Place readingPlace(const Setter& setter, Place place) { return place.isFull ? setter.textPlace() : place; }

}  // namespace

Slice leadSpace(const Grid& grid, const Block& block) {
  Slice lead = between(grid, {markup::Paragraph{}, 0}, block, {{}, {}, true});
  lead.snaps = true;
  return lead;
}

Stack setParagraph(Setter& setter, const markup::Inlines& words, const std::string& style, Place place,
                   int parent) {
  Text text(setter, words, setter.style(style));
  if (text.isEmpty()) return {};
  return stackOf(setter, text.lines(place.width, setter.tag(Role::P, parent)), place);
}

Stack setFigure(Setter& setter, const markup::Figure& figure, Place place, int parent) {
  const Drawing* drawing = setter.drawing(figure.name);
  if (!drawing) return setParagraph(setter, {{{}, figure.alt, {}, {}}}, "note", place, parent);
  if (drawing->size.w > place.width + Dim::pt(1) || drawing->size.h > setter.pageHeight())
    setter.warn("the drawing '" + figure.name + "' is larger than its place",
                "put it where the column is wider, like '## Head {wide}'");
  const int tag = setter.tag(Role::Figure, parent);
  setter.out.tags.back().alt = figure.alt.empty() ? drawing->alt : figure.alt;
  Slice slice;
  slice.line = setter.line;
  slice.height = roundUp(drawing->size.h, setter.grid.unit);
  for (Item item : drawing->items) {
    move(item, place.x, {});
    item.tag = tag;
    slice.items.push_back(std::move(item));
  }
  return {std::move(slice)};
}

Stack setBlock(Setter& setter, const Block& block, Place place, int parent) {
  setter.line = block.line;
  if (const auto* p = as<markup::Paragraph>(block))
    return setParagraph(setter, p->text, "body", readingPlace(setter, place), parent);
  if (const auto* list = as<markup::List>(block))
    return setList(setter, *list, readingPlace(setter, place), parent);
  if (const auto* table = as<markup::Table>(block)) return setTable(setter, *table, place, parent);
  if (const auto* box = as<markup::Box>(block)) return setBox(setter, *box, place, parent);
  if (const auto* figure = as<markup::Figure>(block)) return setFigure(setter, *figure, place, parent);
  if (const auto* heading = as<markup::Heading>(block))  // one inside a box
    return setParagraph(setter, heading->text, "head", place, parent);
  Slice pageBreak;
  pageBreak.kind = Slice::Kind::PageBreak;
  return {pageBreak};
}

Stack setBlocks(Setter& setter, const markup::Blocks& blocks, Place place, int parent) {
  Stack out;
  const Block* before = nullptr;
  for (const Block& block : blocks) {
    Stack next = setBlock(setter, block, place, parent);
    if (next.empty()) continue;
    if (before) {
      // A label stays with what it names, the totals with the row before them.
      const bool keeps = isBox(block, Callout::Totals) || (isLabel(*before) && !isLabel(block));
      if (keeps && !out.empty()) out.back().keepWithNext = true;
      out.push_back(between(setter.grid, *before, block, place));
    }
    append(out, std::move(next));
    before = &block;
  }
  return out;
}

Place nth(Place place, std::size_t i, std::size_t count, Dim gutter) {
  const auto n = static_cast<std::int64_t>(count), k = static_cast<std::int64_t>(i);
  const Dim width = (place.width - gutter * (n - 1)) / n;
  return {place.x + (width + gutter) * k, width, false};
}

Place acrossBoth(const Grid& grid, std::size_t i, std::size_t parts) {
  if (i == 0) return {grid.left, grid.side, false};
  return nth({grid.textX, grid.text, false}, i - 1, parts, grid.gutter);
}

}  // namespace typeset
