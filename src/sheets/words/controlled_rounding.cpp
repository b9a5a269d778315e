#include "sheets/words/controlled_rounding.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace sheets {
namespace {

using Cell = std::pair<std::size_t, std::size_t>;

/// What is over the whole steps, with a row and a column more that fill every sum up to a whole step.
Amounts restsOf(const Amounts& amounts, std::int64_t step) {
  const std::size_t rows = amounts.size(), columns = rows == 0 ? 0 : amounts[0].size();
  Amounts rests(rows + 1, std::vector<std::int64_t>(columns + 1));
  std::int64_t all = 0;
  for (std::size_t r = 0; r < rows; ++r) {
    for (std::size_t c = 0; c < columns; ++c) {
      const std::int64_t rest = amounts[r][c] % step;
      rests[r][c] = rest;
      rests[r][columns] += rest;
      rests[rows][c] += rest;
      all += rest;
    }
    rests[r][columns] = (step - rests[r][columns] % step) % step;
  }
  for (std::size_t c = 0; c < columns; ++c) rests[rows][c] = (step - rests[rows][c] % step) % step;
  rests[rows][columns] = all % step;
  return rests;
}

class Rounder {
 public:
  Rounder(Amounts rests, std::int64_t step) : rests_(std::move(rests)), step_(step) {}

  Amounts round() {
    while (const auto start = firstBroken()) move(cycleFrom(*start));
    return std::move(rests_);
  }

 private:
  bool isBroken(Cell at) const {
    const std::int64_t rest = rests_[at.first][at.second];
    return 0 < rest && rest < step_;
  }

  std::optional<Cell> firstBroken() const {
    for (std::size_t r = 0; r < rests_.size(); ++r) {
      for (std::size_t c = 0; c < rests_[r].size(); ++c) {
        if (isBroken({r, c})) return Cell{r, c};
      }
    }
    return {};
  }

  /// Another broken cell of the same row or column: one alone could not make a whole sum.
  Cell other(Cell from, bool isInRow) const {
    for (std::size_t i = 0; i < (isInRow ? rests_[0].size() : rests_.size()); ++i) {
      const Cell next = isInRow ? Cell{from.first, i} : Cell{i, from.second};
      if (next != from && isBroken(next)) return next;
    }
    return from;
  }

  /// Cells that stand in turns in one row and one column with the next, the last with the first.
  std::vector<Cell> cycleFrom(Cell start) const {
    std::vector<Cell> path{start};
    std::vector<std::pair<bool, std::size_t>> lines{
        {false, start.second}};  // rows (true) and columns come by
    for (bool isInRow = true;; isInRow = !isInRow) {
      const std::pair line{isInRow, isInRow ? path.back().first : path.back().second};
      const auto met = std::find(lines.begin(), lines.end(), line);
      if (met != lines.end()) {
        path.erase(path.begin(), path.begin() + (met - lines.begin()));
        return path;
      }
      lines.push_back(line);
      path.push_back(other(path.back(), isInRow));
    }
  }

  /// Takes from every second cell what it gives to the others, until one of them is whole.
  void move(const std::vector<Cell>& cycle) {
    std::int64_t up = step_, down = step_;
    for (std::size_t i = 0; i < cycle.size(); ++i) {
      const std::int64_t rest = rests_[cycle[i].first][cycle[i].second];
      up = std::min(up, i % 2 == 0 ? step_ - rest : rest);
      down = std::min(down, i % 2 == 0 ? rest : step_ - rest);
    }
    const std::int64_t by = up <= down ? up : -down;
    for (std::size_t i = 0; i < cycle.size(); ++i)
      rests_[cycle[i].first][cycle[i].second] += i % 2 == 0 ? by : -by;
  }

  Amounts rests_;
  std::int64_t step_;
};

}  // namespace

Amounts controlledRounding(const Amounts& amounts, std::int64_t step) {
  const Amounts rests = Rounder(restsOf(amounts, step), step).round();
  Amounts steps = amounts;
  for (std::size_t r = 0; r < steps.size(); ++r) {
    for (std::size_t c = 0; c < steps[r].size(); ++c) steps[r][c] = amounts[r][c] / step + rests[r][c] / step;
  }
  return steps;
}

}  // namespace sheets
