#include "schedule/site/rows.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace schedule {
namespace {

using base::Length;
using base::Wide;

constexpr double nanometres = 1e9;

/// Length of a board by the mean of four lines along it: boards are cut at round and slanting edges.
void addBoards(Row& row, Length to) {
  constexpr int lines = 4;
  for (Length at = row.low; at < to; at += row.pitch) {
    const Length wide = std::min(row.pitch, to - at);  // the last board may be ripped
    Length sum;
    std::optional<model::Stretch> ends;
    for (int i = 0; i < lines; ++i) {
      const Length line = at + scaled(wide, 2 * i + 1, 2 * lines, base::Round::HalfUp);
      for (const auto& s : model::stretches(row.outline, line, row.alongX)) {
        sum += s.to - s.from;
        if (!ends) ends = s;
        ends = {std::min(ends->from, s.from), std::max(ends->to, s.to)};
      }
    }
    row.ends.push_back(ends.value_or(model::Stretch{}));
    row.sizes.push_back(Wide{sum.millionths / 1000} * (wide.millionths / 1000));  // micrometres
    row.lengths.push_back(scaled(sum, 1, lines, base::Round::HalfUp));
  }
}

/// The place across the boards at which so many of them end, in nanometres.
Length acrossAt(const Row& row, int boards) {
  const int n = static_cast<int>(row.sizes.size());
  return std::min(row.low + row.pitch * (row.isFromHigh ? n - boards : boards), row.high);
}

}  // namespace

std::optional<Row> rowOf(const model::PlacedDeck& placed, const model::Deck& deck) {
  Row row;
  row.outline = placed.outline;
  const auto& box = placed.extent;
  if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) {
    const auto steps = static_cast<std::size_t>(stairs->steps);
    row.alongX = placed.up == model::Side::Top || placed.up == model::Side::Bottom;
    row.pitch = stairs->going;
    row.sizes.assign(steps, 1);
    row.lengths.assign(steps, stairs->width);
    row.isFromHigh = placed.up == model::Side::Left || placed.up == model::Side::Top;
    row.low = row.alongX ? box.from.y : box.from.x;
    row.high = row.alongX ? box.to.y : box.to.x;
  } else if (deck.boards) {
    row.alongX = model::runsAlongX(box, deck.boards->run);
    row.pitch = deck.boards->width + deck.boards->gap;
    row.low = row.alongX ? box.from.y : box.from.x;
    row.high = row.alongX ? box.to.y : box.to.x;
    addBoards(row, row.high);
  }
  row.whole = std::accumulate(row.sizes.begin(), row.sizes.end(), Wide{0});
  if (row.whole <= 0) return {};
  return row;
}

std::vector<Point> placesOf(const Row& row, int fromBoard, int boards) {
  const auto hair = base::millimetres(1);
  std::vector<Point> places;
  Length a = acrossAt(row, fromBoard), b = acrossAt(row, fromBoard + boards);
  if (b < a) std::swap(a, b);
  for (const Length across : {a + hair, b - hair}) {
    for (const auto& s : model::stretches(row.outline, across, row.alongX)) {
      const double from = static_cast<double>(s.from.millionths) / nanometres,
                   to = static_cast<double>(s.to.millionths) / nanometres,
                   y = static_cast<double>(across.millionths) / nanometres;
      const int steps = std::max(1, static_cast<int>(std::ceil(to - from)));
      for (int i = 0; i <= steps; ++i) {
        const double x = from + (to - from) * i / steps;
        places.push_back(row.alongX ? Point{x, y} : Point{y, x});
      }
    }
  }
  return places;
}

void findReach(Row& row, const SiteArea& area) {
  std::map<Where, std::vector<Segment>> stands;
  for (const auto& stand : area.stands) stands[stand.on].push_back(stand.edge);
  for (int board = 0; board < static_cast<int>(row.sizes.size()); ++board) {
    const auto places = placesOf(row, board, 1);
    row.isReachedFromGround.push_back(false);
    row.reachedFrom.emplace_back();
    for (const auto& [on, edges] : stands) {
      if (!isWithinReach(places, edges, poleReach)) continue;
      if (on) row.reachedFrom.back().push_back(*on);
      else row.isReachedFromGround.back() = true;
    }
  }
}

bool isReachedFromBoard(const Row& row, int fromBoard, int boards, int dryBoard) {
  const auto metres = [](Length l) { return static_cast<double>(l.millionths) / nanometres; };
  for (int board = fromBoard; board < fromBoard + boards; ++board) {
    const double across = (std::abs(dryBoard - board) + 0.5) * metres(row.pitch);
    double along = 0;
    if (!row.ends.empty()) {
      const auto &own = row.ends[static_cast<std::size_t>(board)],
                 &dry = row.ends[static_cast<std::size_t>(dryBoard)];
      along = std::max({0.0, metres(dry.from - own.from), metres(own.to - dry.to)});
    }
    if (std::hypot(across, along) > poleReach) return false;
  }
  return true;
}

int boardAt(const Row& row, Point p) {
  const double across = row.alongX ? p.y : p.x;
  const double low = static_cast<double>(row.low.millionths) / nanometres,
               pitch = static_cast<double>(row.pitch.millionths) / nanometres;
  const int n = static_cast<int>(row.sizes.size());
  const int board = std::clamp(static_cast<int>(std::floor((across - low) / pitch)), 0, n - 1);
  return row.isFromHigh ? n - 1 - board : board;
}

}  // namespace schedule
