#include "schedule/crew/work.h"

#include "model/crew_time.h"
#include "model/lookup.h"

#include <algorithm>
#include <cmath>

namespace schedule {
namespace {

using base::Hours;
using base::Wide;

Effort effortOf(Hours hours) {
  return base::divide(Wide{hours.millionths} * 6000, 1'000'000, base::Round::HalfUp);
}

/// The part of some work that falls on a unit: by its boards.
struct Share {
  Wide part = 1, whole = 1;
  Hours of(Hours hours) const {
    return {base::divide(Wide{hours.millionths} * part, whole, base::Round::HalfUp)};
  }
};

Wide sizeOf(const Row& row, const std::vector<BoardRun>& runs) {
  Wide sum = 0;
  for (const auto& run : runs)
    for (int i = 0; i < run.count; ++i)
      sum += row.sizes[static_cast<std::size_t>(run.isDown ? run.first - i : run.first + i)];
  return sum;
}

/// The boards of a deck cut into parts of about equal size, in the order they are laid.
std::vector<std::vector<BoardRun>> divided(const Row& row, const std::vector<BoardRun>& runs, int parts) {
  std::vector<std::vector<BoardRun>> all(1);
  Wide done = 0;
  for (const auto& run : runs) {
    for (int i = 0; i < run.count; ++i) {
      const int board = run.isDown ? run.first - i : run.first + i;
      const auto made = static_cast<int>(all.size());
      if (made < parts && done * parts >= row.whole * made) all.emplace_back();
      auto& part = all.back();
      const bool goesOn = !part.empty() && part.back().isDown == run.isDown && i > 0;
      if (goesOn) ++part.back().count;
      else part.push_back({board, 1, run.isDown});
      done += row.sizes[static_cast<std::size_t>(board)];
    }
  }
  return all;
}

std::size_t rankOf(const model::Task& task, const model::Content& content) {
  return static_cast<std::size_t>(&task - content.tasks.data());
}

struct Maker {
  const model::JobInputs& c;
  const model::Content& content;
  const model::Estimate& e;
  std::size_t firstCoatRank;

  Piece pieceOf(const model::LabourLine& line, const Share& share, int part) const {
    const auto& task = model::taskOf(content, line.task);
    Piece piece{task.id, rankOf(task, content), line.deck,          part,          line.pass,
                0,       task.dryAfter,         task.soilsWetCoats, task.isPerPass};
    piece.minutes = static_cast<int>(model::crewMinutes(share.of(line.hours), c.job.crew));
    return piece;
  }

  /// About as wide as the narrower strips of a deck, m.
  double stripWidth(std::size_t deck, const Row& row) const {
    constexpr double narrow = 0.75;
    const int layers = std::max(1, c.job.crew.people - 1);
    const double width =
        static_cast<double>(row.pitch.millionths) / 1e9 * static_cast<double>(row.sizes.size());
    for (const auto& line : e.labour) {
      const auto& task = model::taskOf(content, line.task);
      if (line.deck != deck || !model::laysProduct(task) || task.measure == model::Measure::CutIn) continue;
      const double all = static_cast<double>(line.hours.millionths),
                   open = static_cast<double>(c.product->openTime.millionths);
      return narrow * width * std::min(1.0, layers * open / std::max(1.0, all));
    }
    return width;
  }

  void addToCoat(Unit& unit, const model::LabourLine& line, const Share& share) const {
    const auto& task = model::taskOf(content, line.task);
    const auto coat = static_cast<std::size_t>(line.pass);
    if (unit.coats.size() < coat) unit.coats.resize(coat);
    auto& work = unit.coats[coat - 1];
    const Effort effort = effortOf(share.of(line.hours));
    const auto add = [&](std::string& id, Effort& sum) {
      if (id.empty()) id = task.id;
      sum += effort;
    };
    if (task.isWiping) add(work.wipeTask, work.wipe);
    else if (!model::laysProduct(task)) work.before.push_back(pieceOf(line, share, unit.part));
    else if (task.measure == model::Measure::CutIn) add(work.cutInTask, work.cutIn);
    else add(work.layTask, work.lay);
  }

  void addPieces(Unit& unit, const Share& share) const {
    std::vector<Piece> before;
    for (const auto& line : e.labour) {
      if (line.deck != unit.deck) continue;
      const auto& task = model::taskOf(content, line.task);
      if (task.isForLateCoat) continue;
      if (task.isPerCoat) {
        addToCoat(unit, line, share);
        continue;
      }
      Piece piece = pieceOf(line, share, unit.part);
      if (piece.minutes == 0) continue;
      if (piece.rank > firstCoatRank) unit.after.push_back(piece);
      else if (task.work == model::Work::Oil) unit.taping.push_back(piece);
      else before.push_back(piece);
    }
    for (const auto& line : e.lateCoats) {
      const auto coat = static_cast<std::size_t>(line.pass);
      if (line.deck == unit.deck && coat <= unit.coats.size())
        unit.coats[coat - 1].extra = pieceOf(line, share, unit.part);
    }
    for (auto& work : unit.coats) {
      if (work.lay > 0) continue;
      std::swap(work.lay, work.cutIn);
      std::swap(work.layTask, work.cutInTask);
    }
    std::erase_if(unit.coats, [](const CoatWork& work) { return work.lay == 0; });
    const auto byRank = [](const Piece& a, const Piece& b) { return a.rank < b.rank; };
    std::stable_sort(before.begin(), before.end(), byRank);
    unit.blocks.emplace_back();
    for (const auto& piece : before) {
      unit.blocks.back().push_back(piece);
      if (!piece.dryAfter.isZero()) unit.blocks.emplace_back();
    }
  }
};

}  // namespace

int fives(Effort effort, int people) {
  constexpr Effort five = 500;
  return static_cast<int>(5 * base::divide(Wide{effort}, Wide{five} * people, base::Round::Up));
}

int Unit::layMinutes(int people) const {
  int most = 0;
  for (const auto& coat : coats) most = std::max(most, fives(coat.lay + coat.cutIn + coat.wipe, people));
  return most;
}

std::vector<BoardRun> runsOf(const Row& row, const SiteArea& area, const AccessGraph& graph,
                             double lastWidth) {
  const int n = static_cast<int>(row.sizes.size());
  const Way* out = nullptr;
  for (const auto& way : area.ways) {
    const auto depthOf = [&](const Way& w) { return w.to ? graph.areas()[*w.to].depth : 0; };
    if (!out || depthOf(way) < depthOf(*out)) out = &way;
  }
  const BoardRun down{n - 1, n, true}, up{0, n, false};
  if (!out) return {up};
  constexpr double person = 0.4;  // m to either side of the middle of a way
  const auto boardsAt = [&](Point p) { return boardAt(row, p); };
  Point a = out->over.from, b = out->over.to;
  if (std::hypot(a.x - b.x, a.y - b.y) < person) {
    (row.alongX ? a.y : a.x) -= person;
    (row.alongX ? b.y : b.x) += person;
  }
  const auto [least, most] = std::minmax(boardsAt(a), boardsAt(b));
  const double pitch = static_cast<double>(row.pitch.millionths) / 1e9;
  const int last = std::max(1, static_cast<int>(lastWidth / pitch));
  if (least < last && (most < n - last || least <= n - 1 - most)) return {down};  // it ends at the low side
  if (most >= n - last) return {up};
  // The farther side first, up to the way out; then the other, which ends with the boards that hold it.
  if (least > n - 1 - most) return {{0, least, false}, {n - 1, n - least, true}};
  return {{n - 1, n - 1 - most, true}, {0, most + 1, false}};
}

Work workOf(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
            const AccessGraph& graph, const std::vector<std::optional<Row>>& rows,
            const std::vector<int>& parts) {
  std::size_t firstCoatRank = content.tasks.size();
  for (const auto& task : content.tasks) {
    if (task.isPerCoat) firstCoatRank = std::min(firstCoatRank, rankOf(task, content));
  }
  const Maker make{c, content, e, firstCoatRank};
  Work work;
  for (const std::size_t deck : graph.order()) {
    const Row* row = rows[deck] ? &*rows[deck] : nullptr;
    if (!row) {
      for (int part = 1; part <= parts[deck]; ++part) {
        work.units.push_back({deck, parts[deck] > 1 ? part : 0, nullptr, {}, {}, {}, {}, {}});
        make.addPieces(work.units.back(), {1, parts[deck]});
      }
      continue;
    }
    const auto pieces =
        divided(*row, runsOf(*row, graph.areas()[deck], graph, make.stripWidth(deck, *row)), parts[deck]);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      work.units.push_back(
          {deck, pieces.size() > 1 ? static_cast<int>(i) + 1 : 0, row, pieces[i], {}, {}, {}, {}});
      make.addPieces(work.units.back(), {sizeOf(*row, pieces[i]), row->whole});
    }
  }
  std::erase_if(work.units, [](const Unit& unit) {
    const bool hasWork =
        std::any_of(unit.blocks.begin(), unit.blocks.end(), [](const auto& b) { return !b.empty(); });
    return !hasWork && unit.coats.empty() && unit.taping.empty() && unit.after.empty();
  });
  for (const auto& line : e.labour) {
    const auto& task = model::taskOf(content, line.task);
    if (line.deck || task.measure == model::Measure::Day) continue;
    const Piece piece = make.pieceOf(line, {}, 0);
    if (piece.minutes > 0) (piece.rank > firstCoatRank ? work.last : work.first).push_back(piece);
  }
  return work;
}

}  // namespace schedule
