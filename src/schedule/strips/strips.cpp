#include "schedule/strips/strips.h"

#include "model/lookup.h"
#include "model/placing.h"
#include "schedule/strips/ways_out.h"
#include "schedule/weather/boards.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace schedule {
namespace {

using base::Length;
using base::Wide;

/// The boards of a deck across their run, or the treads of stairs.
struct Row {
  std::vector<Wide> sizes;      // of each board, in a unit of the row's own
  std::vector<Length> lengths;  // of each, in all its pieces
};

/// Length of a board by the mean of four lines along it: boards are cut at round and slanting edges.
Row boardsOf(const model::Outline& outline, const model::Boards& boards) {
  constexpr int lines = 4;
  const auto box = model::extentOf(outline);
  const bool alongX = model::runsAlongX(box, boards.run);
  const Length from = alongX ? box.from.y : box.from.x, to = alongX ? box.to.y : box.to.x;
  const Length pitch = boards.width + boards.gap;
  Row row;
  for (Length at = from; at < to; at += pitch) {
    const Length wide = std::min(pitch, to - at);  // the last board may be ripped
    Length sum;
    for (int i = 0; i < lines; ++i) {
      const Length line = at + scaled(wide, 2 * i + 1, 2 * lines, base::Round::HalfUp);
      for (const auto& s : model::stretches(outline, line, alongX)) sum += s.to - s.from;
    }
    row.sizes.push_back(Wide{sum.millionths / 1000} * (wide.millionths / 1000));  // micrometres
    row.lengths.push_back(scaled(sum, 1, lines, base::Round::HalfUp));
  }
  return row;
}

Row treadsOf(const model::Stairs& stairs) {
  const auto steps = static_cast<std::size_t>(stairs.steps);
  return {std::vector<Wide>(steps, 1), std::vector<Length>(steps, stairs.width)};
}

/// The way out lies nearer to the top or left edge (to the foot of stairs), so the far side is the other.
bool startsAtEnd(const model::PlacedDeck& placed, const model::Deck& deck, model::Place wayOut) {
  const auto own = model::extentOf(*model::outlineOf(deck));
  const model::Place out = {wayOut.x - own.from.x, wayOut.y - own.from.y};
  const auto& box = placed.extent;
  const bool isNearTop = out.y * 2 < box.height(), isNearLeft = out.x * 2 < box.width();
  if (!placed.isStairs) return model::runsAlongX(own, deck.boards->run) ? isNearTop : isNearLeft;
  switch (placed.up) {
    case model::Side::Right:
      return isNearLeft;
    case model::Side::Left:
      return !isNearLeft;
    case model::Side::Bottom:
      return isNearTop;
    case model::Side::Top:
      return !isNearTop;
  }
  throw std::logic_error("internal error: no such side");
}

/// What has boards or treads that can be counted one by one; nothing else.
std::optional<Row> rowOf(const model::Deck& deck) {
  Row row;
  if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) row = treadsOf(*stairs);
  else if (deck.boards) row = boardsOf(*model::outlineOf(deck), *deck.boards);
  if (std::none_of(row.sizes.begin(), row.sizes.end(), [](Wide size) { return size > 0; }))
    return std::nullopt;
  return row;
}

bool laysSurface(const model::Task& task) { return task.isPerCoat && task.measure == model::Measure::Wetted; }

/// Person-hours of laying one coat on one deck, without cutting in.
base::Hours hoursOf(const model::Estimate& e, const model::Content& content, std::size_t deck, int coat) {
  base::Hours sum;
  for (const auto& line : e.labour) {
    if (line.deck == deck && line.pass == coat && laysSurface(model::taskOf(content, line.task)))
      sum += line.hours;
  }
  return sum;
}

/// The warmest surface of the hours in which this coat is laid, C; 20 C where no weather is known.
double warmestSurface(const model::Plan& plan, const model::Content& content, std::size_t deck, int coat) {
  double warmest = 20;
  for (const auto& shift : plan.shifts) {
    if (shift.deck != deck || shift.pass != coat || !laysSurface(model::taskOf(content, shift.task)))
      continue;
    for (const auto& hour : plan.hours) {
      const bool isMeanwhile = hour.at < shift.end && shift.start < base::plusMinutes(hour.at, 60);
      if (hour.deck == deck && hour.source != model::WeatherSource::None && isMeanwhile)
        warmest = std::max(warmest, hour.surface);
    }
  }
  return warmest;
}

/// Time of some part of a row: part / whole x person-hours / people.
struct Pace {
  base::Hours hours;  // person-hours of the whole
  Wide whole = 1;
  int people = 1;

  /// Rounded up, but not for what the rounding of the hours has added.
  int minutes(Wide part) const {
    const std::int64_t thousandths = base::divide(Wide{hours.millionths} * 60'000 * part,
                                                  Wide{1'000'000} * people * whole, base::Round::HalfUp);
    return static_cast<int>(base::divide(thousandths, 1'000, base::Round::Up));
  }
};

void addStrips(model::WetEdge& edge, const Row& row, Pace pace, base::Area deckArea) {
  Wide before = 0, size = 0;  // of the strips done, of the strip being filled
  const auto upTo = [&](Wide sum) {
    return base::Area{base::divide(sum * deckArea.millionths, pace.whole, base::Round::HalfUp)};
  };
  model::BoardStrip strip{edge.deck, 1, 0, 0, {}, 0};
  const auto finish = [&] {
    strip.area = upTo(before + size) - upTo(before);
    strip.minutes = pace.minutes(size);
    edge.strips.push_back(strip);
    before += size;
  };
  for (std::size_t i = 0; i < row.sizes.size(); ++i) {
    if (strip.boards > 0 && pace.minutes(size + row.sizes[i]) > edge.openMinutes) {
      finish();
      strip = {edge.deck, strip.number + 1, static_cast<int>(i), 0, {}, 0};
      size = 0;
    }
    ++strip.boards;
    size += row.sizes[i];
  }
  finish();
}

/// People who would lay the longest board in time. Our own choice: side by side they need two metres of board
/// each.
int peopleNeeded(const model::WetEdge& edge, const Row& row, Pace pace) {
  constexpr std::int64_t metresEach = 2;
  for (const auto& strip : edge.strips) {
    if (strip.minutes <= edge.openMinutes) continue;
    const auto board = static_cast<std::size_t>(strip.fromBoard);  // the strip holds no other
    while (pace.minutes(row.sizes[board]) > edge.openMinutes) {
      ++pace.people;
      if (base::metres(metresEach) * pace.people > row.lengths[board]) return 0;
    }
  }
  return pace.people;
}

/// The first stroke of a coat on a deck; nothing where the plan holds none.
std::optional<base::LocalTime> startOf(const model::Plan& plan, const model::Content& content,
                                       std::size_t deck, int coat) {
  for (const auto& shift : plan.shifts) {
    if (shift.deck == deck && shift.pass == coat && model::laysProduct(model::taskOf(content, shift.task)))
      return shift.start;
  }
  return {};
}

/// By the order of the day: over no deck that was coated before, best to one that is coated after.
std::optional<model::Place> wayOutOf(const model::CoatNeed& need, const std::vector<model::Deck>& decks,
                                     const std::vector<model::PlacedDeck>& placed, const model::Estimate& e,
                                     const model::Plan& plan, const model::Content& content) {
  std::vector<std::size_t> wet, next;
  if (const auto own = startOf(plan, content, need.deck, need.coat)) {
    for (const auto& other : e.coats) {
      const auto start = startOf(plan, content, other.deck, other.coat);
      if (other.deck == need.deck || !start || start->day != own->day) continue;
      (*start < *own ? wet : next).push_back(other.deck);
    }
  }
  return wayOut(decks, placed, need.deck, wet, next);
}

}  // namespace

std::vector<model::WetEdge> wetEdges(const model::JobInputs& c, const model::Content& content,
                                     const model::Estimate& e, const model::Plan& plan) {
  std::vector<model::WetEdge> edges;
  const auto& decks = c.job.areas;
  const auto placed = placedAsGiven(decks);
  std::vector<std::optional<Row>> rows(decks.size());
  for (const auto& p : placed) rows[p.index] = rowOf(decks[p.index]);
  const double openAt20 = static_cast<double>(c.product->openTime.millionths) * 60 / 1e6;
  for (const auto& need : e.coats) {
    const auto way = wayOutOf(need, decks, placed, e, plan, content);
    model::WetEdge edge{need.deck, need.coat, {}, false, 0, false, 0, way};
    const double open = openTime(openAt20, warmestSurface(plan, content, need.deck, need.coat));
    constexpr double rounding = 0.001;  // min; 20 min are 0.333333 h
    edge.openMinutes = std::max(1, static_cast<int>(std::floor(open + rounding)));
    if (auto row = rows[need.deck]) {
      const auto at =
          std::find_if(placed.begin(), placed.end(), [&](const auto& p) { return p.index == need.deck; });
      edge.startsAtEnd = startsAtEnd(*at, decks[need.deck], *way);
      if (edge.startsAtEnd) {
        std::reverse(row->sizes.begin(), row->sizes.end());
        std::reverse(row->lengths.begin(), row->lengths.end());
      }
      const Pace pace{hoursOf(e, content, need.deck, need.coat),
                      std::accumulate(row->sizes.begin(), row->sizes.end(), Wide{0}), c.job.crew.people};
      addStrips(edge, *row, pace, e.decks[need.deck].area);
      edge.isTooLong = std::any_of(edge.strips.begin(), edge.strips.end(),
                                   [&](const auto& s) { return s.minutes > edge.openMinutes; });
      if (edge.isTooLong) edge.peopleNeeded = peopleNeeded(edge, *row, pace);
    }
    edges.push_back(std::move(edge));
  }
  return edges;
}

}  // namespace schedule
