#include "schedule/crew/work.h"

#include "model/crew_time.h"
#include "model/lookup.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

namespace schedule {
namespace {

using base::Hours;
using base::Wide;
using model::clockStep;

Effort effortOf(Hours hours) {
  return base::divide(Wide{hours.millionths} * 6000, 1'000'000, base::Round::HalfUp);
}

Hours partOf(Hours hours, const Portion& p) {
  return {base::divide(Wide{hours.millionths} * p.part, p.whole, base::Round::HalfUp)};
}

Wide sizeOf(const Row& row, const std::vector<BoardRun>& runs) {
  Wide sum = 0;
  for (const auto& run : runs)
    for (int i = 0; i < run.count; ++i)
      sum += row.sizes[static_cast<std::size_t>(run.isDown ? run.first - i : run.first + i)];
  return sum;
}

/// A run cut into so many runs of about equal size, at joints of boards, in the order they are laid.
std::vector<BoardRun> divided(const Row& row, const BoardRun& run, int parts) {
  const Wide whole = sizeOf(row, {run});
  std::vector<BoardRun> all{{run.first, 0, run.isDown}};
  Wide done = 0;
  for (int i = 0; i < run.count; ++i) {
    const int board = run.isDown ? run.first - i : run.first + i;
    const auto made = static_cast<int>(all.size());
    if (made < parts && done * parts >= whole * made) all.push_back({board, 0, run.isDown});
    ++all.back().count;
    done += row.sizes[static_cast<std::size_t>(board)];
  }
  return all;
}

/// A deck in parts, in the order they are laid: each ends at the next, or at the way out. What is laid from
/// two sides is divided between them too.
std::vector<std::vector<BoardRun>> dividedDeck(const Row& row, const std::vector<BoardRun>& runs, int parts) {
  if (parts <= 1) return {runs};
  std::vector<std::vector<BoardRun>> all;
  for (const auto& run : runs) {
    const auto share = static_cast<int>(base::divide(sizeOf(row, {run}) * parts, row.whole, base::Round::Up));
    for (const auto& part : divided(row, run, std::max(1, share))) all.push_back({part});
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

  Piece pieceOf(const model::LabourLine& line, const Portion& portion, int part) const {
    const auto& task = model::taskOf(content, line.task);
    const Hours hours = partOf(line.hours, portion);
    const int people = c.job.crew.people;
    return {task.id,
            rankOf(task, content),
            line.deck,
            part,
            line.pass,
            effortOf(hours) / people,
            static_cast<int>(model::crewMinutes(hours, people)),
            task.dryAfter,
            task.soilsWetCoats,
            task.isPerPass};
  }

  void addToCoat(Unit& unit, const model::LabourLine& line) const {
    const auto& task = model::taskOf(content, line.task);
    const auto coat = static_cast<std::size_t>(line.pass);
    if (unit.coats.size() < coat) unit.coats.resize(coat);
    auto& work = unit.coats[coat - 1];
    const Effort effort = effortOf(partOf(line.hours, unit.portion));
    const auto add = [&](std::string& id, Effort& sum) {
      if (id.empty()) id = task.id;
      sum += effort;
    };
    if (task.isWiping) add(work.wipeTask, work.wipe);
    else if (!model::laysProduct(task)) work.before.push_back(pieceOf(line, unit.portion, unit.part));
    else if (task.measure == model::Measure::CutIn) add(work.cutInTask, work.cutIn);
    else add(work.layTask, work.lay);
  }

  void addPieces(Unit& unit) const {
    std::vector<Piece> before;
    for (const auto& line : e.labour) {
      if (line.deck != unit.deck) continue;
      const auto& task = model::taskOf(content, line.task);
      if (task.isForLateCoat) continue;
      if (task.isPerCoat) {
        addToCoat(unit, line);
        continue;
      }
      Piece piece = pieceOf(line, unit.portion, unit.part);
      if (piece.minutes == 0) continue;
      if (piece.rank > firstCoatRank) unit.after.push_back(piece);
      else if (task.work == model::Work::Oil) unit.taping.push_back(piece);
      else before.push_back(piece);
    }
    for (const auto& line : e.lateCoats) {
      const auto coat = static_cast<std::size_t>(line.pass);
      if (line.deck != unit.deck || coat > unit.coats.size()) continue;
      unit.coats[coat - 1].extra = pieceOf(line, unit.portion, unit.part);
      unit.coats[coat - 1].needsPapers =
          model::mayBeTreated(c.job.areas[unit.deck], content) && !model::maySandTreated(c.job);
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

int minutesOf(const std::vector<Piece>& pieces) {
  return std::accumulate(pieces.begin(), pieces.end(), 0,
                         [](int n, const Piece& p) { return n + p.minutes; });
}

std::vector<Piece> evened(std::vector<Piece> pieces) {
  Effort over = 0;
  for (auto& piece : pieces) {
    over += Effort{piece.minutes} * 100 - piece.exact;
    if (over < clockStep * 100 || piece.minutes <= clockStep) continue;
    piece.minutes -= clockStep;
    over -= clockStep * 100;
  }
  return pieces;
}

std::vector<SharedPiece> sharedOut(const std::vector<Piece>& pieces, int people) {
  const auto all = static_cast<std::size_t>(people);
  const auto isSmall = [&](const Piece& p) { return p.exact * people <= clockStep * 100; };
  std::vector<SharedPiece> shared;
  int now = 0;
  for (std::size_t i = 0; i < pieces.size();) {
    std::size_t end = i + 1;
    const auto isElsewhere = [&](const Piece& p) {
      return std::none_of(pieces.begin() + static_cast<std::ptrdiff_t>(i),
                          pieces.begin() + static_cast<std::ptrdiff_t>(end),
                          [&](const Piece& other) { return other.deck == p.deck; });
    };
    while (isSmall(pieces[i]) && end < pieces.size() && end - i < all && isSmall(pieces[end]) &&
           isElsewhere(pieces[end]))
      ++end;
    const int until = now + (end - i > 1 ? clockStep : pieces[i].minutes);
    std::size_t person = 0;
    for (; i < end; ++i) {
      SharedPiece one{pieces[i], now, until, {}};
      const std::size_t last = i + 1 == end ? all : person + 1;
      while (person < last) one.who.push_back(person++);
      shared.push_back(std::move(one));
    }
    now = until;
  }
  return shared;
}

std::vector<Piece> byFewer(std::vector<Piece> pieces, int all, int people) {
  if (people == all) return pieces;
  for (auto& piece : pieces) {
    piece.exact = base::divide(Wide{piece.exact} * all, people, base::Round::Up);
    piece.minutes = std::max(clockStep, fives(piece.exact, 1));
  }
  return pieces;
}

std::vector<Piece> byTask(std::vector<Piece> pieces) {
  const auto orderOf = [](const Piece& p) { return std::tuple(p.rank, p.pass); };
  std::stable_sort(pieces.begin(), pieces.end(),
                   [&](const Piece& a, const Piece& b) { return orderOf(a) < orderOf(b); });
  std::vector<Piece> all;
  for (auto& piece : pieces) {
    if (all.empty() || orderOf(all.back()) != orderOf(piece) || all.back().deck != piece.deck) {
      all.push_back(std::move(piece));
      continue;
    }
    all.back().part = 0;
    all.back().exact += piece.exact;
    all.back().minutes = std::max(clockStep, fives(all.back().exact, 1));
  }
  return all;
}

int fives(Effort effort, int people) {
  return static_cast<int>(clockStep *
                          base::divide(Wide{effort}, Wide{clockStep} * 100 * people, base::Round::Up));
}

int Unit::layMinutes(int people) const {
  int most = 0;
  for (const auto& coat : coats) most = std::max(most, fives(coat.lay + coat.cutIn + coat.wipe, people));
  return most;
}

std::optional<BoardSpan> Unit::boards() const {
  if (!row || runs.empty()) return {};
  BoardSpan all{runs.front().first, runs.front().first};
  for (const auto& run : runs) {
    const int last = run.isDown ? run.first - run.count + 1 : run.first + run.count - 1;
    all = {std::min({all.low, run.first, last}), std::max({all.high, run.first, last})};
  }
  return all;
}

std::vector<BoardRun> runsOf(const Row& row, std::size_t deck, const AccessGraph& graph) {
  const int n = static_cast<int>(row.sizes.size());
  const Way* out = graph.wayOut(deck);
  const BoardRun down{n - 1, n, true}, up{0, n, false};
  if (!out) return {up};
  constexpr double stride = 0.5;  // m from the last board to the way
  const auto [least, most] = std::minmax({boardAt(row, out->over.from), boardAt(row, out->over.to)});
  const int step = static_cast<int>(stride / (static_cast<double>(row.pitch.millionths) / 1e9));
  const int above = n - 1 - most;
  if (least <= step && least <= above) return {down};
  if (above <= step) return {up};
  // The farther side first, up to the way out; then the other, which ends with the boards that hold it. Of a
  // wide way the boards that are wiped from the ground come last.
  const auto isWiped = [&](int board) {
    return row.isReachedFromGround.empty() || row.isReachedFromGround[static_cast<std::size_t>(board)];
  };
  const bool endsHigh = isWiped(least) == isWiped(most) ? least <= above : isWiped(most);
  if (endsHigh) return {{n - 1, above, true}, {0, most + 1, false}};
  return {{0, least, false}, {n - 1, n - least, true}};
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
        work.units.push_back(
            {deck, parts[deck] > 1 ? part : 0, {1, parts[deck]}, nullptr, {}, {}, {}, {}, {}});
        make.addPieces(work.units.back());
      }
      continue;
    }
    const auto pieces = dividedDeck(*row, runsOf(*row, deck, graph), parts[deck]);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const Portion portion{sizeOf(*row, pieces[i]), row->whole};
      work.units.push_back(
          {deck, pieces.size() > 1 ? static_cast<int>(i) + 1 : 0, portion, row, pieces[i], {}, {}, {}, {}});
      make.addPieces(work.units.back());
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
