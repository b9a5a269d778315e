#include "drawings/plans/strip_list.h"

#include <algorithm>

namespace drawings {

namespace {

const Dim leading = Dim::pt(14), noteLeading = Dim::pt(11), gap = tenths(14), columnGap = tenths(32);

struct Cell {
  ShapedText number, time, amount;
  Dim width() const { return number.width + time.width + amount.width + gap * 2; }
};

std::vector<Cell> cellsOf(const ListedDeck& listed, const Pen& pen) {
  const StripDeck& deck = *listed.deck;
  std::vector<Cell> cells;
  for (const auto& strip : deck.strips)
    if (!strip.lay.empty())
      cells.push_back(
          {sized(pen, Dim::pt(9), strip.number, true), sized(pen, Dim::pt(12), strip.lay, true),
           sized(pen, Dim::milli(10'500), listed.hasUnits ? deck.amountOf(strip) : strip.amount, false)});
  return cells;
}

Dim putLines(Items& items, const std::vector<std::string>& lines, const Pen& pen, bool isBold, Point at) {
  for (const auto& line : lines) {
    put(items, isBold ? legible(pen, "table", line, true) : legible(pen, "drawing", line),
        {at.x, at.y + Dim::pt(9)});
    at.y += noteLeading;
  }
  return at.y;
}

std::string noteOf(const StripDeck& deck, bool isTold) {
  if (isTold || deck.steps.empty()) return deck.note;
  return deck.note + (deck.note.empty() ? "" : "; ") + deck.steps;
}

}  // namespace

Dim putStripList(Items& items, const std::vector<ListedDeck>& decks, const Pen& pen, Dim width, Dim from) {
  const Dim side = Dim::milli(pen.theme.sideWidth) * 5 / 8, room = width - side;
  Dim widest;
  for (const auto& listed : decks) {
    if (listed.isTold) continue;
    for (const auto& cell : cellsOf(listed, pen)) widest = std::max(widest, cell.width());
  }
  const Dim pitch = widest + columnGap;
  const std::int64_t columns =
      widest == Dim{} ? 1 : std::max<std::int64_t>(1, (room + columnGap).raw / pitch.raw);
  const Stroke thin = {colour(pen, "rule"), hundredthsPt(50), {}, false};
  Dim y = from;
  for (const auto& listed : decks) {
    const auto& [deck, isTold, hasUnits] = listed;
    put(items, line({{}, y}, {width, y}, thin));
    const Dim top = y + Dim::pt(2);
    const Dim nameEnd =
        putLines(items, wrapped(pen, legibleSpan(pen, "table", deck->name), side - Dim::mm(3), 3), pen, true,
                 {{}, top});
    y = top;
    Dim free = side;  // where the last line of cells ends
    const auto cells = isTold ? std::vector<Cell>{} : cellsOf(listed, pen);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const auto column = static_cast<std::int64_t>(i) % columns;
      if (column == 0) y += leading;
      free = side + pitch * (column + 1);
      Dim x = side + pitch * column;
      for (const auto* w : {&cells[i].number, &cells[i].time, &cells[i].amount}) {
        put(items, *w, {x, y - Dim::pt(3)});
        x += w->width + gap;
      }
    }
    const auto note = noteOf(*deck, isTold);
    if (!note.empty()) {
      const ShapedText whole = legible(pen, "drawing", note);
      const bool isBehind = !cells.empty() && free + whole.width <= width;
      if (isBehind) put(items, whole, {free, y - Dim::pt(3)});
      else
        y = putLines(items, wrapped(pen, legibleSpan(pen, "drawing", note), room, 6), pen, false, {side, y});
    }
    y = std::max(y, nameEnd) + Dim::pt(3);
  }
  return y - from;
}

}  // namespace drawings
