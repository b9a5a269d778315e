// A table of signs: what goes with what is seen at a glance.
#include "typeset/blocks/matrix.h"

#include "typeset/blocks/cell.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

constexpr Dim signSize = Dim::mm(44) / 5;  // 8.8 mm

bool isDash(const std::string& words) { return words == "-" || words == "\u2013" || words == "\u2014"; }

class MatrixLayout {
 public:
  MatrixLayout(LayoutContext& context, const markup::Table& table, Column place)
      : context_(context), table_(table), place_(place), height_(context.grid.unit * 15 / 2) {}

  VerticalList run(int parent, const markup::Heading* heading) {
    const int head = headTag(context_, heading, parent);
    tag_ = context_.tag(Role::Table, parent);
    VerticalList out;
    addHeadLine(context_, out, heading, head, headLine(), place_);
    const int body = context_.tag(Role::TBody, tag_);
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      if (r > 0) out.push_back(fullRule(context_, RuleKind::Close, place_, Dim::pt(1) / 2, "rule"));
      out.push_back(row(table_.rows[r], context_.tag(Role::TR, body)));
      out.back().keepWithNext = true;
    }
    out.push_back(fullRule(context_, RuleKind::Close, place_, Dim::pt(1), "ink"));
    return out;
  }

 private:
  Column columnOf(std::size_t i) const {
    const Grid& grid = context_.grid;
    if (i == 0) return {grid.left, grid.side + grid.gutter / 2, false};
    const Column rest = {grid.textX, place_.x + place_.width - grid.textX, false};
    return nth(rest, i - 1, table_.columns.size() - 1, {});
  }

  Fragment headLine() {
    Fragment line;
    line.height = context_.grid.line;
    const int tr = context_.tag(Role::TR, context_.tag(Role::THead, tag_));
    const Style& label = context_.style("label");
    for (std::size_t i = 0; i < table_.head.size(); ++i) {
      const int th = context_.tag(Role::TH, tr);
      context_.out.tags.back().scope = Scope::Column;
      Dim y = context_.style("head").baseline - label.baseline;
      addWords(context_, line, table_.head[i].text, label, columnOf(i), y, th,
               i == 0 ? markup::Align::Left : markup::Align::Centre);
      line.height = std::max(line.height, roundUp(y, context_.grid.unit));
    }
    return line;
  }

  Fragment row(const markup::Row& row, int tr) {
    if (row.line != 0) context_.line = row.line;
    Fragment out;
    out.line = context_.line;
    out.height = height_;
    Style name = closer(context_.style("table"));
    name.plain.face = name.strong;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const auto& words = row.cells[i].text;
      const Column at = columnOf(i);
      const int tag = context_.tag(i == 0 ? Role::TH : Role::TD, tr);
      if (i == 0) {
        context_.out.tags.back().scope = Scope::Row;
        const Dim tall = heightOfWords(context_, words, name, at.width);
        out.height = std::max(out.height, tall);
        Dim y = (out.height - tall) / 2;
        addWords(context_, out, words, name, at, y, tag);
      } else if (!words.empty() && !words.front().figure.empty()) {
        addSign(context_, out, words.front(), {at.x + (at.width - signSize) / 2, (height_ - signSize) / 2},
                signSize, tag);
      } else {
        addOther(out, words, at, tag);
      }
    }
    return out;
  }

  /// A dash is drawn; it is words for those who hear the page.
  void addOther(Fragment& out, const markup::Inlines& words, Column at, int tag) {
    const std::string plain = plainWords(words);
    if (!isDash(plain)) {
      Dim y = (height_ - context_.style("label").leading) / 2;
      return addWords(context_, out, words, context_.style("label"), at, y, tag, markup::Align::Centre);
    }
    const Dim middle = at.x + at.width / 2, half = Dim::mm(3) / 2;
    Item dash = lineItem({middle - half, height_ / 2}, {middle + half, height_ / 2}, Dim::pt(1) / 2,
                         context_.colour("rule"));
    out.items.push_back(std::move(dash));
  }

  LayoutContext& context_;
  const markup::Table& table_;
  const Column place_;
  const Dim height_;
  int tag_ = artifact;
};

}  // namespace

VerticalList layOutMatrix(LayoutContext& context, const markup::Box& box, Column place, int parent,
                          const markup::Heading* heading) {
  const auto* table = box.body.empty() ? nullptr : std::get_if<markup::Table>(&box.body.front().node);
  if (!table || table->columns.size() < 2 || !place.isFull) {
    context.warn("only a table across both columns can stand in this box", "put it under '## Head {wide}'");
    return {};
  }
  return MatrixLayout(context, *table, place).run(parent, heading);
}

}  // namespace typeset
