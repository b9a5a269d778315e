// The flow of blocks in one column: the one place that knows every kind.
#include "typeset/blocks/answers.h"
#include "typeset/blocks/blocks.h"
#include "typeset/blocks/boxes.h"
#include "typeset/blocks/cards.h"
#include "typeset/blocks/list.h"
#include "typeset/blocks/matrix.h"
#include "typeset/blocks/panel.h"
#include "typeset/blocks/signs.h"
#include "typeset/blocks/steps.h"
#include "typeset/blocks/table.h"

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
Fragment between(const Grid& grid, const Block& before, const Block& next, Column place) {
  const Dim unit = grid.unit;
  const auto isOne = [](const Block& block) {
    const auto* box = as<markup::Box>(block);
    return box && isPanel(box->kind);
  };
  if (isOne(before) && isOne(next)) return space(grid.half());  // neighbours make one group
  if (const auto* box = as<markup::Box>(next)) {
    const auto* over = as<markup::Box>(before);
    if (over && over->kind == Callout::Address && box->kind == Callout::Signs) return space(unit * 3);
    if (isPanel(box->kind) || box->kind == Callout::Signs) return space(grid.line, true);
    if (box->kind == Callout::Address || box->kind == Callout::Profiles || box->kind == Callout::Orders ||
        box->kind == Callout::Go)
      return space(unit * 3);
    if ((box->kind == Callout::Figures && place.isFull) || box->kind == Callout::Answers)
      return space(grid.line, true);
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

VerticalList layOutBox(LayoutContext& context, const markup::Box& box, Column place, int parent) {
  switch (box.kind) {
    case Callout::Note:
    case Callout::Caution:
    case Callout::Warning:
    case Callout::Danger:
      return layOutPanel(context, box, parent);
    case Callout::Side: {  // one that stands elsewhere than under a head
      VerticalList out;
      for (const Block& block : box.body) {
        if (const auto* p = as<markup::Paragraph>(block))
          append(out, layOutParagraph(context, p->text, "note", place, parent));
        if (const auto* figure = as<markup::Figure>(block)) {
          if (!out.empty()) out.push_back(space(context.grid.half()));
          append(out, layOutFigure(context, *figure, place, parent));
        }
      }
      return out;
    }
    case Callout::Figures:
      return layOutFigures(context, box, place, parent);
    case Callout::Columns:
      return layOutColumns(context, box, place, parent);
    case Callout::Signs:
      return layOutSigns(context, box, place, parent);
    case Callout::Totals:
      return layOutTotals(context, box, place, parent);
    case Callout::Keep: {
      VerticalList out = layOutBlocks(context, box.body, place, parent);
      keepTogether(out);
      return out;
    }
    case Callout::Letter:
      return layOutLetter(context, box, parent);
    case Callout::Matrix:
      return layOutMatrix(context, box, place, parent, nullptr);
    case Callout::Steps:
      return layOutSteps(context, box, place, parent, nullptr);
    case Callout::Address:
      return layOutAddress(context, box, place, parent);
    case Callout::Cards:
      return layOutCards(context, box, place, parent);
    case Callout::Profiles:
      return layOutProfiles(context, box, place, parent);
    case Callout::Answers:
      return layOutAnswers(context, box, place, parent);
    case Callout::Go:
      return layOutGo(context, box, place, parent);
    case Callout::Orders:
      return layOutOrders(context, box, place, parent);
  }
  return {};
}

/// Reading stays in the text column even where matter may run across: a line of 166 mm is too long to read.
Column readingColumn(const LayoutContext& context, Column place) {
  return place.isFull ? context.textColumn() : place;
}

}  // namespace

Fragment leadSpace(const Grid& grid, const Block& block) {
  Fragment lead = between(grid, {markup::Paragraph{}, 0}, block, {{}, {}, true});
  lead.snaps = true;
  return lead;
}

VerticalList layOutBlock(LayoutContext& context, const Block& block, Column place, int parent) {
  context.line = block.line;
  if (const auto* p = as<markup::Paragraph>(block))
    return layOutParagraph(context, p->text, "body", readingColumn(context, place), parent);
  if (const auto* list = as<markup::List>(block))
    return layOutList(context, *list, readingColumn(context, place), parent);
  if (const auto* table = as<markup::Table>(block)) return layOutTable(context, *table, place, parent);
  if (const auto* box = as<markup::Box>(block)) return layOutBox(context, *box, place, parent);
  if (const auto* figure = as<markup::Figure>(block)) return layOutFigure(context, *figure, place, parent);
  if (const auto* heading = as<markup::Heading>(block))  // one inside a box
    return layOutParagraph(context, heading->text, "head", place, parent);
  Fragment pageBreak;
  pageBreak.kind = Fragment::Kind::PageBreak;
  return {pageBreak};
}

VerticalList layOutBlocks(LayoutContext& context, const markup::Blocks& blocks, Column place, int parent) {
  VerticalList out;
  const Block* before = nullptr;
  for (const Block& block : blocks) {
    VerticalList next = layOutBlock(context, block, place, parent);
    if (next.empty()) continue;
    if (before && isBox(*before, Callout::Address) && isBox(block, Callout::Signs))
      next.erase(next.begin());  // the rule above the address is that of the signs
    if (before) {
      // A label stays with what it names, the totals with the row before them.
      const bool keeps = isBox(block, Callout::Totals) || (isLabel(*before) && !isLabel(block));
      if (keeps && !out.empty()) out.back().keepWithNext = true;
      out.push_back(between(context.grid, *before, block, place));
    }
    append(out, std::move(next));
    before = &block;
  }
  return out;
}

}  // namespace typeset
