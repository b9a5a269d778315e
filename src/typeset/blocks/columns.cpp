// How the width of a table is divided: by the weights its author gave, but no figure breaks, no word breaks
// that need not, and nothing wraps while another column has white to spare.
#include "typeset/blocks/cells.h"

#include "base/fixed.h"

#include <algorithm>
#include <numeric>

namespace typeset {
namespace {

struct Need {
  Dim natural, least;  // without wrapping; without breaking a word or a short cell
  Dim tight;           // as 'least', but heads may wrap
  std::int64_t weight = 1;
  Dim width;
};

Dim sum(const std::vector<Need>& needs, Dim Need::*what) {
  Dim total;
  for (const Need& n : needs) total += n.*what;
  return total;
}

Need needOf(const TableContent& set, std::size_t i) {
  Need need;
  const markup::Column& column = set.table.columns[i];
  need.weight = std::max(column.weight, 1);
  Dim figures, longest, body;
  const auto look = [&](const CellContent& cell) {
    const Dim natural = cell.isNumber ? cell.natural - cell.fraction + set.fractions[i] : cell.natural;
    need.natural = std::max(need.natural, natural);
    longest = std::max(longest, cell.longest);
    if (cell.isNumber || cell.isTick) figures = std::max(figures, natural);
  };
  for (const RowContent& row : set.rows) look(row[i]);
  body = need.natural;
  if (!set.head.empty()) look(set.head[i]);
  // Names to sign beside are longer than most short cells and stay whole, too.
  const bool isShort = need.natural <= Dim::mm(set.hasWriting ? 25 : 18);
  const bool isWhole = column.align == markup::Align::Right || isShort;
  need.least = isWhole ? need.natural : std::max(figures, longest);
  need.tight = isWhole ? std::max(body, longest) : need.least;
  return need;
}

/// Widths that add up to the room: shares by weight, none below its least.
void divide(std::vector<Need>& needs, Dim room) {
  if (sum(needs, &Need::least) > room)
    for (Need& n : needs) n.least = n.tight;
  const Dim natural = sum(needs, &Need::natural), least = sum(needs, &Need::least);
  if (least > room) {  // words have to break: everyone gives in proportion to what is over a fair share
    const Dim fair = room / static_cast<std::int64_t>(needs.size());
    Dim fixed, over;
    for (const Need& n : needs) (n.least <= fair ? fixed : over) += n.least;
    for (Need& n : needs)
      n.width = n.least <= fair
                    ? n.least
                    : Dim{base::mulDiv(n.least.raw, (room - fixed).raw, over.raw, base::Round::Down)};
    return;
  }
  std::vector<bool> isFixed(needs.size(), false);
  for (Need& n : needs)
    if (natural <= room) n.least = n.natural;
  // Whoever would get less than its least is given just that; the others share the rest by weight.
  for (bool isChanged = true; isChanged;) {
    isChanged = false;
    Dim rest = room;
    std::int64_t weights = 0;
    for (std::size_t i = 0; i < needs.size(); ++i) {
      if (isFixed[i]) rest -= needs[i].width;
      else weights += needs[i].weight;
    }
    if (weights == 0) break;
    for (std::size_t i = 0; i < needs.size(); ++i) {
      Need& n = needs[i];
      if (isFixed[i]) continue;
      n.width = {base::mulDiv(rest.raw, n.weight, weights, base::Round::Down)};
    }
    for (std::size_t i = 0; i < needs.size(); ++i)
      if (!isFixed[i] && needs[i].width < needs[i].least) {
        needs[i].width = needs[i].least;
        isFixed[i] = isChanged = true;
      }
  }
}

/// How many lines the rows take, and among as many, in thousandths, how many their cells do.
std::int64_t linesOf(const TableContent& set, std::size_t first, const std::vector<Need>& needs) {
  constexpr std::size_t enough = 400;  // rows to judge a table by
  const auto lines = [](const CellContent& cell, Dim width) -> std::int64_t {
    if (cell.natural <= width) return 1;
    const Dim filled = std::max({width - cell.longest / 6, width / 2, Dim{1}});  // the rest is ragged
    return (cell.natural.raw + filled.raw - 1) / filled.raw;
  };
  std::int64_t total = 0, ofCells = 0;
  for (std::size_t r = 0; r < std::min(set.rows.size(), enough); ++r) {
    std::int64_t most = 1;
    for (std::size_t i = 0; i < needs.size(); ++i) {
      const std::int64_t own = lines(set.rows[r][first + i], needs[i].width);
      most = std::max(most, own);
      ofCells += own;
    }
    total += most;
  }
  return total * 1000 + std::min<std::int64_t>(ofCells, 999);
}

/// Moves white from column to column as long as that saves lines: so much that nothing wraps in a column any
/// more, or else in steps.
void saveLines(const TableContent& set, std::size_t first, std::vector<Need>& needs, Dim unit) {
  struct Shift {
    std::size_t from = 0, to = 0;
    Dim white;
  };
  const auto shift = [&](const Shift& s) {
    needs[s.from].width -= s.white;
    needs[s.to].width += s.white;
  };
  std::int64_t least = linesOf(set, first, needs);
  for (bool isBetter = true; isBetter;) {
    isBetter = false;
    Shift best;
    const auto look = [&](const Shift& s) {
      if (s.white <= Dim{} || needs[s.from].width - s.white < needs[s.from].least) return;
      shift(s);
      const std::int64_t lines = linesOf(set, first, needs);
      shift({s.to, s.from, s.white});
      if (lines >= least) return;
      least = lines;
      best = s;
      isBetter = true;
    };
    for (std::size_t from = 0; from < needs.size(); ++from)
      for (std::size_t to = 0; to < needs.size(); ++to) {
        if (from == to) continue;
        look({from, to, needs[to].natural - needs[to].width});
        for (Dim step = unit; step <= unit * 16; step = step * 2) look({from, to, step});
      }
    if (isBetter) shift(best);
  }
}

/// The first column of a table without a head takes what it needs, at most two fifths; keys at least 24 mm.
Dim firstWidth(const TableContent& set, const Need& need, Dim room, Dim gutter) {
  const Dim least = set.isKeyed ? Dim::mm(24) - gutter : Dim{};
  return std::min(std::max(need.natural, least), room * 2 / 5);
}

}  // namespace

void placeColumns(LayoutContext& context, TableContent& set, Column place) {
  const Grid& grid = context.grid;
  const std::size_t count = set.table.columns.size();
  std::vector<Need> needs;
  for (std::size_t i = 0; i < count; ++i) needs.push_back(needOf(set, i));
  set.columns.assign(count, {});
  const Dim gutter = set.hasWriting ? (count <= 3 ? grid.gutter : Dim::mm(3)) : grid.unit * 3;
  // A line to write on begins well clear of the figures before it.
  const auto after = [&](std::size_t i) {
    const bool isRight = set.table.columns[i].align == markup::Align::Right;
    return set.hasWriting && isRight && set.table.columns[i + 1].align != markup::Align::Right
               ? std::max(gutter, Dim::mm(5))
               : gutter;
  };
  Dim x = place.x, room = place.width;
  std::size_t first = 0;
  const auto fix = [&](Dim width, Dim white) {
    set.columns[0] = {x, width, false};
    x += width + white;
    room -= width + white;
    first = 1;
  };
  if (set.isWide && count > 1) fix(grid.side, grid.gutter);
  else if (set.isKeyed || (!set.table.hasHead && !set.hasWriting && count > 2))
    fix(firstWidth(set, needs[0], room, gutter), gutter);
  needs.erase(needs.begin(), needs.begin() + static_cast<std::ptrdiff_t>(first));
  if (needs.empty()) return;
  for (std::size_t i = first; i + 1 < count; ++i) room -= after(i);
  room = std::max(room, Dim::pt(1) * static_cast<std::int64_t>(needs.size()));
  divide(needs, room);
  if (!set.hasWriting && sum(needs, &Need::natural) > room && sum(needs, &Need::least) < room)
    saveLines(set, first, needs, grid.unit);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    // The last one ends with the column of the page, whatever rounding left over.
    const bool isLast = i + 1 == needs.size();
    const Dim width = isLast ? std::max(needs[i].width, place.x + place.width - x) : needs[i].width;
    set.columns[first + i] = {x, width, false};
    if (!isLast) x += width + after(first + i);
  }
}

}  // namespace typeset
