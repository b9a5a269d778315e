#include "typeset/blocks/table.h"

#include "typeset/blocks/cells.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

class TableLayout {
 public:
  TableLayout(LayoutContext& context, const markup::Table& table, Column place, int parent,
              const markup::Heading* heading)
      : context_(context),
        table_(table),
        place_(place),
        heading_(heading),
        parent_(parent),
        content_(readCells(context, table, place, heading)) {
    hasRules_ = table.hasHead && (place.isFull || !content_.hasWriting);
  }

  VerticalList run() {
    if (heading_) headingTag_ = context_.tag(Role::H2, parent_);
    tag_ = context_.tag(Role::Table, parent_);
    VerticalList out;
    std::shared_ptr<const VerticalList> repeat;
    if (table_.hasHead) {
      VerticalList head = layOutHead();
      auto again = std::make_shared<VerticalList>(head);
      for (Fragment& s : *again) {
        for (Item& item : s.items) item.tag = artifact;
        s.bookmarks.clear();
      }
      repeat = again;
      append(out, std::move(head));
    }
    body_ = context_.tag(Role::TBody, tag_);
    const Dim gap = rowGap();
    for (std::size_t r = 0; r < content_.rows.size(); ++r) {
      if (table_.rows[r].line != 0) context_.line = table_.rows[r].line;
      const bool isOpening = isGrouped() && content_.rows[r][0].isFilled();
      const bool isInside = r > 0 && !isOpening && !isSum(r);
      if (!isInside) endGroup(out);
      else group_.filled += gap;
      VerticalList row = content_.hasWriting ? layOutWritingRow(content_.rows[r]) : layOutRow(r);
      keepTogether(row);
      for (std::size_t i = 0; i < row.size(); ++i)
        if (r > 0 || i > 0) row[i].repeat = isInside ? repeatInGroup(repeat) : repeat;
      if (isOpening) group_.cell = &content_.rows[r][0];
      for (const Fragment& s : row) group_.filled += s.height;
      // Two rows stay with the head, two go over to the next page, and a short group is not torn.
      row.back().keepWithNext =
          r == 0 || r + 2 == content_.rows.size() || goesOn(r) || group_.filled < group_.head;
      if (r > 0) separate(out, r, gap);
      append(out, std::move(row));
    }
    if (out.empty()) return out;
    endGroup(out);
    // The last line to write on closes the table as well.
    if (content_.hasWriting) return out;
    out.back().keepWithNext = hasRules_;
    if (hasRules_) {
      out.push_back(space(context_.grid.unit));
      out.push_back(rule(RuleKind::Close, Dim::pt(1), "ink"));
    }
    return out;
  }

 private:
  /// A line of the table: smaller where it is set small.
  Dim line() const { return roundUp(context_.style("table").leading, context_.grid.unit); }

  Fragment rule(RuleKind kind, Dim weight, const std::string& colour) const {
    return ruleFragment(kind, place_.x, place_.width, weight, context_.colour(colour));
  }

  VerticalList layOutHead() {
    const Grid& grid = context_.grid;
    VerticalList out;
    if (hasRules_) {
      out.push_back(rule(RuleKind::Open, Dim::pt(1), "ink"));
      out.push_back(space(grid.unit));
    }
    const Dim baseline = context_.style(heading_ ? "head" : "table").baseline;
    const Dim least = heading_ ? grid.line : line();
    const int group = context_.tag(Role::THead, tag_), row = context_.tag(Role::TR, group);
    std::vector<VerticalList> cells;
    for (std::size_t i = 0; i < content_.head.size(); ++i) {
      const int cell = context_.tag(Role::TH, row);
      context_.out.tags.back().scope = Scope::Column;
      const bool isHeading = heading_ && i == 0;
      Column at = content_.columns[i];
      // A heading may run on over empty cells beside it.
      if (isHeading)
        for (std::size_t k = 1; k < content_.head.size() && !content_.head[k].isFilled(); ++k)
          at.width = content_.columns[k].x + content_.columns[k].width - at.x;
      VerticalList lines =
          listOf(context_, content_.head[i].text->lines(at.width, isHeading ? headingTag_ : cell), at,
                 table_.columns[i].align);
      // Labels are smaller than the line: they stand on its baseline.
      if (!isHeading && !lines.empty()) {
        Fragment drop;
        drop.height = baseline - context_.style("label").baseline;
        drop.keepWithNext = true;
        lines.insert(lines.begin(), drop);
      }
      cells.push_back(std::move(lines));
    }
    Fragment head = collapse(parallel(std::move(cells), least, grid.unit), least, grid.unit);
    head.height = std::max(least, head.height);
    head.baseline = baseline;
    if (heading_) head.bookmarks.push_back({plainWords(heading_->text), 0, {}, 2});
    head.keepWithNext = true;
    out.push_back(std::move(head));
    if (hasRules_) {
      out.push_back(space(grid.unit));
      out.push_back(rule(RuleKind::Close, Dim::pt(1) / 2, "ink"));
      out.back().keepWithNext = true;
      out.push_back(space(grid.unit));
    }
    return out;
  }

  bool isTotal(const RowContent& row) const {
    bool isAny = false;
    for (const CellContent& cell : row) {
      if (cell.text->isEmpty()) continue;
      if (!cell.isStrong) return false;
      isAny = true;
    }
    return isAny;
  }

  /// Rows that wrap need white between them to be told apart; others stand line on line, and so do many with
  /// a few that wrap behind a first cell that does not.
  Dim rowGap() const {
    const std::size_t first = isGrouped() ? 1 : 0;  // the head of a group hangs beside its rows
    std::size_t wrapped = 0, whole = 0;
    for (const RowContent& row : content_.rows) {
      const auto wraps = [&](std::size_t i) { return row[i].natural > content_.columns[i].width; };
      bool isWrapped = false;
      for (std::size_t i = first; i < row.size(); ++i) isWrapped = isWrapped || wraps(i);
      wrapped += isWrapped ? 1 : 0;
      whole += first == 0 && row[0].isFilled() && !wraps(0) ? 1 : 0;
    }
    const std::size_t rows = content_.rows.size();
    if (wrapped == 0 || (whole == rows && wrapped * 4 <= rows)) return {};
    return content_.isWide || context_.isTight || line() < context_.grid.line ? context_.grid.unit
                                                                              : context_.grid.half();
  }

  /// The row below belongs to the same group, and the group is short enough to stay on one page.
  bool goesOn(std::size_t r) const {
    constexpr std::size_t longest = 5;
    if (!isGrouped()) return false;
    const auto opens = [&](std::size_t i) {
      return i >= content_.rows.size() || content_.rows[i][0].isFilled();
    };
    std::size_t first = r, end = r + 1;
    while (first > 0 && !opens(first) && r - first < longest) --first;
    while (!opens(end) && end - first <= longest) ++end;
    return end > r + 1 && end - first <= longest;
  }

  void separate(VerticalList& out, std::size_t r, Dim gap) const {
    const Dim unit = context_.grid.unit;
    if (isSum(r) || (isGrouped() && content_.rows[r][0].isFilled())) {
      out.push_back(space(unit));
      out.push_back(rule(RuleKind::Between, Dim::pt(1) / 2, isSum(r) ? "ink" : "rule"));
      out.push_back(space(unit));
    } else if (gap > Dim{}) {
      out.push_back(space(gap));
    }
  }

  int cellTag(const CellContent& cell, std::size_t i, int row) {
    const bool isHead =
        i == 0 && cell.isFilled() && table_.columns.size() > 1 && (content_.isWide || !table_.hasHead);
    const int tag = context_.tag(isHead ? Role::TH : Role::TD, row);
    if (isHead) context_.out.tags.back().scope = Scope::Row;
    return tag;
  }

  VerticalList layOutCell(CellContent& cell, std::size_t i, int tag) {
    Column at = content_.columns[i];
    const markup::Align align = table_.columns[i].align;
    VerticalList lines;
    if (cell.isTick) {
      at.x += tickIndent();
      at.width -= tickIndent();
    }
    if (align == markup::Align::Right && cell.isNumber) at.width -= content_.fractions[i] - cell.fraction;
    lines = listOf(context_, cell.text->lines(at.width, tag), at, align);
    if (cell.note) append(lines, listOf(context_, cell.note->lines(at.width, tag), at, align));
    if (cell.isTick) {
      if (lines.empty()) {
        lines.emplace_back();
        lines.back().height = context_.grid.line;
      }
      lines.front().items.push_back(boxMark(
          {content_.columns[i].x, markTop(context_.style("table").baseline)}, context_.colour("ink")));
    }
    return lines;
  }

  /// The rows of a wide table stand in groups, each beside the row head it begins with.
  bool isGrouped() const {
    return hasRules_ && !content_.hasWriting && content_.isWide && table_.columns.size() > 1;
  }

  bool isSum(std::size_t r) const { return hasRules_ && !content_.hasWriting && isTotal(content_.rows[r]); }

  /// A head taller than the rows beside it gets the white it needs below the last of them.
  void endGroup(VerticalList& out) {
    if (group_.head > group_.filled && !out.empty())
      out.back().height += roundUp(group_.head - group_.filled, context_.grid.unit);
    group_ = {};
  }

  /// The head of the table and, beside the row that goes on on the next page, the name of its group.
  std::shared_ptr<const VerticalList> repeatInGroup(const std::shared_ptr<const VerticalList>& head) {
    if (!group_.cell) return head;
    if (group_.repeat) return group_.repeat;
    auto again = std::make_shared<VerticalList>(*head);
    Style soft = context_.style("rowHead");
    soft.plain.colour = context_.colour("soft");
    const Column at = content_.columns[0];
    const std::string name = shortened(context_, soft, plainWords(group_.cell->text->words()), at.width);
    Fragment beside;  // takes no height
    beside.keepWithNext = true;
    beside.items = placeWords(context_, soft, name, {at.x, soft.baseline}).items;
    again->push_back(std::move(beside));
    return group_.repeat = std::move(again);
  }

  /// Rows that stand beside the head of this one, itself included.
  int rowsOfGroup(std::size_t first) const {
    std::size_t end = first + 1;
    while (end < content_.rows.size() && !content_.rows[end][0].isFilled() && !isSum(end)) ++end;
    return static_cast<int>(end - first);
  }

  VerticalList layOutRow(std::size_t r) {
    RowContent& row = content_.rows[r];
    const int tag = context_.tag(Role::TR, body_);
    std::vector<VerticalList> cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const bool isSpanned = i == 0 && group_.cell != nullptr;  // by the head of its group
      const int cell = isSpanned ? artifact : cellTag(row[i], i, tag);
      if (i == 0 && isGrouped() && row[0].isFilled()) context_.out.tags.back().rows = rowsOfGroup(r);
      cells.push_back(layOutCell(row[i], i, cell));
    }
    Fragment head;
    if (isGrouped() && row[0].isFilled()) {  // hangs beside this row and the next ones
      head = collapse(std::move(cells.front()), line(), context_.grid.unit);
      cells.erase(cells.begin());
      group_.head = head.height;
    }
    VerticalList out = parallel(std::move(cells), line(), context_.grid.unit);
    const Dim rest = context_.height(out);
    if (rest < line()) out.back().height += line() - rest;
    out.front().side = head.height;
    out.front().items.insert(out.front().items.begin(), std::make_move_iterator(head.items.begin()),
                             std::make_move_iterator(head.items.end()));
    for (Fragment& s : out) s.line = context_.line;
    return out;
  }

  /// Words and lines stand on one level; labels hang below it.
  VerticalList layOutWritingRow(RowContent& row) {
    const Grid& grid = context_.grid;
    const int tag = context_.tag(Role::TR, body_);
    std::vector<Fragment> cells;
    Dim level = grid.unit * 7, below;  // 24.5 pt, 8.6 mm: room for a hand
    const bool hasLabels =
        std::any_of(row.begin(), row.end(), [](const CellContent& c) { return c.writing == Writing::Label; });
    if (hasLabels) level = grid.unit * 6;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(collapse(layOutCell(row[i], i, cellTag(row[i], i, tag)), grid.line, grid.unit));
      if (row[i].writing == Writing::Label)
        below = std::max(below, roundUp(grid.unit + cells.back().height, grid.unit));
      else
        // Words of two lines leave room for a hand already.
        level = std::max(level, roundUp(cells.back().height, grid.unit) +
                                    grid.unit * (cells.back().height > grid.line ? 1 : 3));
    }
    Fragment out;
    out.line = context_.line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const Column at = content_.columns[i];
      const Dim y = row[i].writing == Writing::Label ? level + grid.unit : level - cells[i].height;
      for (Item& item : cells[i].items) {
        move(item, {}, y);
        out.items.push_back(std::move(item));
      }
      if (row[i].writing != Writing::None)
        out.items.push_back(
            lineItem({at.x, level}, {at.x + at.width, level}, Dim::pt(1) / 2, context_.colour("ink")));
    }
    out.height = level + below;
    out.isBlankRow =
        std::all_of(row.begin(), row.end(), [](const CellContent& c) { return c.writing == Writing::Line; });
    return {std::move(out)};
  }

  LayoutContext& context_;
  const markup::Table& table_;
  const Column place_;
  const markup::Heading* heading_;
  const int parent_;
  TableContent content_;
  /// The rows since the last row head.
  struct Group {
    const CellContent* cell = nullptr;  // the row head
    Dim head, filled;                   // height that it needs, and that its rows have so far
    std::shared_ptr<const VerticalList> repeat;
  };
  Group group_;
  bool hasRules_ = false;
  int tag_ = artifact, body_ = artifact, headingTag_ = artifact;
};

}  // namespace

VerticalList layOutTable(LayoutContext& context, const markup::Table& table, Column place, int parent,
                         const markup::Heading* heading) {
  if (table.columns.empty()) return {};
  return TableLayout(context, table, place, parent, heading).run();
}

}  // namespace typeset
