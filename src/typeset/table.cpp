// Tables: heads that repeat, groups, figures on their decimal mark, lines to write on.
#include "typeset/cells.h"
#include "typeset/shapes.h"

#include <algorithm>

namespace typeset {
namespace {

class TableSetter {
 public:
  TableSetter(Setter& setter, const markup::Table& table, Place place, int parent,
              const markup::Heading* heading)
      : setter_(setter),
        table_(table),
        place_(place),
        heading_(heading),
        parent_(parent),
        set_(readCells(setter, table, place, heading)) {
    hasRules_ = table.hasHead && (place.isFull || !set_.hasWriting);
  }

  Stack run() {
    if (heading_) headingTag_ = setter_.tag(Role::H2, parent_);
    tag_ = setter_.tag(Role::Table, parent_);
    Stack out;
    std::shared_ptr<const Stack> repeat;
    if (table_.hasHead) {
      Stack head = setHead();
      auto again = std::make_shared<Stack>(head);
      for (Slice& s : *again) {
        for (Item& item : s.items) item.tag = artifact;
        s.bookmarks.clear();
      }
      repeat = again;
      append(out, std::move(head));
    }
    body_ = setter_.tag(Role::TBody, tag_);
    const Dim gap = rowGap();
    for (std::size_t r = 0; r < set_.rows.size(); ++r) {
      if (table_.rows[r].line != 0) setter_.line = table_.rows[r].line;
      const bool isOpening = isGrouped() && set_.rows[r][0].isFilled();
      const bool isInside = r > 0 && !isOpening && !isSum(r);
      if (!isInside) endGroup(out);
      else group_.filled += gap;
      Stack row = set_.hasWriting ? setWritingRow(set_.rows[r]) : setRow(r);
      keepTogether(row);
      for (std::size_t i = 0; i < row.size(); ++i)
        if (r > 0 || i > 0) row[i].repeat = isInside ? repeatInGroup(repeat) : repeat;
      if (isOpening) group_.cell = &set_.rows[r][0];
      for (const Slice& s : row) group_.filled += s.height;
      // Two rows stay with the head, two go over to the next page, and a short group is not torn.
      row.back().keepWithNext =
          r == 0 || r + 2 == set_.rows.size() || goesOn(r) || group_.filled < group_.head;
      if (r > 0) separate(out, r, gap);
      append(out, std::move(row));
    }
    if (out.empty()) return out;
    endGroup(out);
    // The last line to write on closes the table as well.
    if (set_.hasWriting) return out;
    out.back().keepWithNext = hasRules_;
    if (hasRules_) {
      out.push_back(space(setter_.grid.unit));
      out.push_back(rule(RuleKind::Close, Dim::pt(1), "ink"));
    }
    return out;
  }

 private:
  /// A line of the table: smaller where it is set small.
  Dim line() const { return roundUp(setter_.style("table").leading, setter_.grid.unit); }

  Slice rule(RuleKind kind, Dim weight, const std::string& colour) const {
    return ruleSlice(kind, place_.x, place_.width, weight, setter_.colour(colour));
  }

  Stack setHead() {
    const Grid& grid = setter_.grid;
    Stack out;
    if (hasRules_) {
      out.push_back(rule(RuleKind::Open, Dim::pt(1), "ink"));
      out.push_back(space(grid.unit));
    }
    const Dim baseline = setter_.style(heading_ ? "head" : "table").rise;
    const Dim least = heading_ ? grid.line : line();
    const int group = setter_.tag(Role::THead, tag_), row = setter_.tag(Role::TR, group);
    std::vector<Stack> cells;
    for (std::size_t i = 0; i < set_.head.size(); ++i) {
      const int cell = setter_.tag(Role::TH, row);
      setter_.out.tags.back().scope = Scope::Column;
      const bool isHeading = heading_ && i == 0;
      Place at = set_.columns[i];
      // A heading may run on over empty cells beside it.
      if (isHeading)
        for (std::size_t k = 1; k < set_.head.size() && !set_.head[k].isFilled(); ++k)
          at.width = set_.columns[k].x + set_.columns[k].width - at.x;
      Stack lines = stackOf(setter_, set_.head[i].text->lines(at.width, isHeading ? headingTag_ : cell), at,
                            table_.columns[i].align);
      // Labels are smaller than the line: they stand on its baseline.
      if (!isHeading && !lines.empty()) {
        Slice drop;
        drop.height = baseline - setter_.style("label").rise;
        drop.keepWithNext = true;
        lines.insert(lines.begin(), drop);
      }
      cells.push_back(std::move(lines));
    }
    Slice head = collapse(parallel(std::move(cells), least, grid.unit), least, grid.unit);
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

  bool isTotal(const RowSet& row) const {
    bool isAny = false;
    for (const CellSet& cell : row) {
      if (cell.text->isEmpty()) continue;
      if (!cell.isStrong) return false;
      isAny = true;
    }
    return isAny;
  }

  /// Rows that wrap need white between them to be told apart; others stand line on line.
  Dim rowGap() const {
    for (const RowSet& row : set_.rows)
      for (std::size_t i = isGrouped() ? 1 : 0; i < row.size();
           ++i)  // the head of a group hangs beside its rows
        if (row[i].natural > set_.columns[i].width)
          return set_.isWide || line() < setter_.grid.line ? setter_.grid.unit : setter_.grid.half();
    return {};
  }

  /// The row below belongs to the same group, and the group is short enough to stay on one page.
  bool goesOn(std::size_t r) const {
    constexpr std::size_t longest = 5;
    if (!isGrouped()) return false;
    const auto opens = [&](std::size_t i) { return i >= set_.rows.size() || set_.rows[i][0].isFilled(); };
    std::size_t first = r, end = r + 1;
    while (first > 0 && !opens(first) && r - first < longest) --first;
    while (!opens(end) && end - first <= longest) ++end;
    return end > r + 1 && end - first <= longest;
  }

  void separate(Stack& out, std::size_t r, Dim gap) const {
    const Dim unit = setter_.grid.unit;
    if (isSum(r) || (isGrouped() && set_.rows[r][0].isFilled())) {
      out.push_back(space(unit));
      out.push_back(rule(RuleKind::Between, Dim::pt(1) / 2, isSum(r) ? "ink" : "rule"));
      out.push_back(space(unit));
    } else if (gap > Dim{}) {
      out.push_back(space(gap));
    }
  }

  int cellTag(const CellSet& cell, std::size_t i, int row) {
    const bool isHead =
        i == 0 && cell.isFilled() && table_.columns.size() > 1 && (set_.isWide || !table_.hasHead);
    const int tag = setter_.tag(isHead ? Role::TH : Role::TD, row);
    if (isHead) setter_.out.tags.back().scope = Scope::Row;
    return tag;
  }

  Stack setCell(CellSet& cell, std::size_t i, int tag) {
    Place at = set_.columns[i];
    const markup::Align align = table_.columns[i].align;
    Stack lines;
    if (cell.isTick) {
      at.x += tickIndent();
      at.width -= tickIndent();
    }
    if (align == markup::Align::Right && cell.isNumber) at.width -= set_.fractions[i] - cell.fraction;
    lines = stackOf(setter_, cell.text->lines(at.width, tag), at, align);
    if (cell.note) append(lines, stackOf(setter_, cell.note->lines(at.width, tag), at, align));
    if (cell.isTick) {
      if (lines.empty()) {
        lines.emplace_back();
        lines.back().height = setter_.grid.line;
      }
      lines.front().items.push_back(
          boxMark({set_.columns[i].x, markTop(setter_.style("table").rise)}, setter_.colour("ink")));
    }
    return lines;
  }

  /// The rows of a wide table stand in groups, each beside the row head it begins with.
  bool isGrouped() const { return hasRules_ && !set_.hasWriting && set_.isWide && table_.columns.size() > 1; }

  bool isSum(std::size_t r) const { return hasRules_ && !set_.hasWriting && isTotal(set_.rows[r]); }

  /// A head taller than the rows beside it gets the white it needs below the last of them.
  void endGroup(Stack& out) {
    if (group_.head > group_.filled && !out.empty())
      out.back().height += roundUp(group_.head - group_.filled, setter_.grid.unit);
    group_ = {};
  }

  /// The head of the table and, beside the row that goes on on the next page, the name of its group.
  std::shared_ptr<const Stack> repeatInGroup(const std::shared_ptr<const Stack>& head) {
    if (!group_.cell) return head;
    if (group_.repeat) return group_.repeat;
    auto again = std::make_shared<Stack>(*head);
    Style soft = setter_.style("rowHead");
    soft.plain.colour = setter_.colour("soft");
    const Place at = set_.columns[0];
    const std::string name = shortened(setter_, soft, plainWords(group_.cell->text->words()), at.width);
    Slice beside;  // takes no height
    beside.keepWithNext = true;
    beside.items = setWords(setter_, soft, name, {at.x, soft.rise}).items;
    again->push_back(std::move(beside));
    return group_.repeat = std::move(again);
  }

  /// Rows that stand beside the head of this one, itself included.
  int rowsOfGroup(std::size_t first) const {
    std::size_t end = first + 1;
    while (end < set_.rows.size() && !set_.rows[end][0].isFilled() && !isSum(end)) ++end;
    return static_cast<int>(end - first);
  }

  Stack setRow(std::size_t r) {
    RowSet& row = set_.rows[r];
    const int tag = setter_.tag(Role::TR, body_);
    std::vector<Stack> cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const bool isSpanned = i == 0 && group_.cell != nullptr;  // by the head of its group
      const int cell = isSpanned ? artifact : cellTag(row[i], i, tag);
      if (i == 0 && isGrouped() && row[0].isFilled()) setter_.out.tags.back().rows = rowsOfGroup(r);
      cells.push_back(setCell(row[i], i, cell));
    }
    Slice head;
    if (isGrouped() && row[0].isFilled()) {  // hangs beside this row and the next ones
      head = collapse(std::move(cells.front()), line(), setter_.grid.unit);
      cells.erase(cells.begin());
      group_.head = head.height;
    }
    Stack out = parallel(std::move(cells), line(), setter_.grid.unit);
    const Dim rest = setter_.height(out);
    if (rest < line()) out.back().height += line() - rest;
    out.front().side = head.height;
    out.front().items.insert(out.front().items.begin(), std::make_move_iterator(head.items.begin()),
                             std::make_move_iterator(head.items.end()));
    for (Slice& s : out) s.line = setter_.line;
    return out;
  }

  /// Words and lines stand on one level; labels hang below it.
  Stack setWritingRow(RowSet& row) {
    const Grid& grid = setter_.grid;
    const int tag = setter_.tag(Role::TR, body_);
    std::vector<Slice> cells;
    Dim level = grid.unit * 7, below;  // 24.5 pt, 8.6 mm: room for a hand
    const bool hasLabels =
        std::any_of(row.begin(), row.end(), [](const CellSet& c) { return c.writing == Writing::Label; });
    if (hasLabels) level = grid.unit * 6;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(collapse(setCell(row[i], i, cellTag(row[i], i, tag)), grid.line, grid.unit));
      if (row[i].writing == Writing::Label)
        below = std::max(below, roundUp(grid.unit + cells.back().height, grid.unit));
      else
        // Words of two lines leave room for a hand already.
        level = std::max(level, roundUp(cells.back().height, grid.unit) +
                                    grid.unit * (cells.back().height > grid.line ? 1 : 3));
    }
    Slice out;
    out.line = setter_.line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const Place at = set_.columns[i];
      const Dim y = row[i].writing == Writing::Label ? level + grid.unit : level - cells[i].height;
      for (Item& item : cells[i].items) {
        move(item, {}, y);
        out.items.push_back(std::move(item));
      }
      if (row[i].writing != Writing::None)
        out.items.push_back(
            lineItem({at.x, level}, {at.x + at.width, level}, Dim::pt(1) / 2, setter_.colour("ink")));
    }
    out.height = level + below;
    return {std::move(out)};
  }

  Setter& setter_;
  const markup::Table& table_;
  const Place place_;
  const markup::Heading* heading_;
  const int parent_;
  TableSet set_;
  /// The rows since the last row head.
  struct Group {
    const CellSet* cell = nullptr;  // the row head
    Dim head, filled;               // height that it needs, and that its rows have so far
    std::shared_ptr<const Stack> repeat;
  };
  Group group_;
  bool hasRules_ = false;
  int tag_ = artifact, body_ = artifact, headingTag_ = artifact;
};

}  // namespace

bool takesHeading(const markup::Block& block) {
  const auto* table = std::get_if<markup::Table>(&block.node);
  return table && table->hasHead && !table->head.empty() && plainWords(table->head.front().text).empty();
}

Stack setTable(Setter& setter, const markup::Table& table, Place place, int parent,
               const markup::Heading* heading) {
  if (table.columns.empty()) return {};
  return TableSetter(setter, table, place, parent, heading).run();
}

}  // namespace typeset
