// Blocks whose head line holds the heading of their section.
#include "typeset/blocks/headed.h"

#include "typeset/blocks/matrix.h"
#include "typeset/blocks/steps.h"
#include "typeset/blocks/table.h"

namespace typeset {
namespace {

using markup::Callout;

const markup::Table* tableOf(const markup::Block& block) {
  if (const auto* table = std::get_if<markup::Table>(&block.node)) return table;
  const auto* box = std::get_if<markup::Box>(&block.node);
  return box && box->kind == Callout::Matrix && box->body.size() == 1
             ? std::get_if<markup::Table>(&box->body.front().node)
             : nullptr;
}

}  // namespace

bool takesHeading(const markup::Block& block) {
  if (const auto* table = tableOf(block))
    return table->hasHead && !table->head.empty() && plainWords(table->head.front().text).empty();
  const auto* box = std::get_if<markup::Box>(&block.node);
  return box && box->kind == Callout::Steps;
}

VerticalList layOutHeaded(LayoutContext& context, const markup::Block& block, Column place, int parent,
                          const markup::Heading* heading) {
  if (const auto* box = std::get_if<markup::Box>(&block.node)) {
    return box->kind == Callout::Steps ? layOutSteps(context, *box, place, parent, heading)
                                       : layOutMatrix(context, *box, place, parent, heading);
  }
  return layOutTable(context, std::get<markup::Table>(block.node), place, parent, heading);
}

}  // namespace typeset
