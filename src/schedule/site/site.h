// The site as the crew walks it: where its areas lie, how one steps from one to another or to the ground, and
// in which order they are coated.
#pragma once

#include "model/placing.h"
#include "model/plan.h"

namespace schedule {

struct Point {
  double x = 0, y = 0;  // m, to the right and down the plan
};

struct Segment {
  Point from, to;
};

/// Nothing = the ground.
using Where = std::optional<std::size_t>;

struct Way {
  Where to;
  Segment over;  // the edge one steps over
  Point at() const { return {(over.from.x + over.to.x) / 2, (over.from.y + over.to.y) / 2}; }
};

/// From where a pole reaches onto an area.
struct StandingEdge {
  Where on;  // the area whose boards one stands on; nothing = the ground
  Segment edge;
};

/// m of dry boards across, to stand on: our own choice.
inline constexpr double footing = 0.3;

struct SiteArea {
  std::vector<Point> outline;             // a circle as 32 corners; empty: no place on a plan
  std::vector<std::vector<Point>> holes;  // likewise
  bool isStoodOn = true;                  // false: rails, screens; whoever works there stands on the ground
  double height = 0;                      // m above the ground beside it
  double pitch = 0;                       // m from board to board, or tread to tread; 0 = none are counted
  int depth = 1;                          // areas to cross to the ground, itself counted
  std::vector<Way> ways;
  std::vector<StandingEdge> stands;
};

class AccessGraph {
 public:
  explicit AccessGraph(const model::Job& job);

  const std::vector<SiteArea>& areas() const { return areas_; }
  /// Over before under, far before near, higher before lower, stairs after the decks beside them.
  const std::vector<std::size_t>& order() const { return order_; }
  /// Areas without a known way, taken to be left over an edge.
  const std::vector<std::size_t>& assumed() const { return assumed_; }

  /// Of the ways of an area the one with the fewest areas left to cross; null where none is known.
  const Way* wayOut(std::size_t area) const;

  /// What is crossed on the shortest way, both ends left out, none of it 'shut'; nothing = no way.
  template <class IsShut>
  std::optional<std::vector<Where>> path(Where from, Where to, IsShut isShut) const;

 private:
  void addWays(const model::Job& job);
  void findDepths();
  void sortOrder(const model::Job& job);

  std::vector<SiteArea> areas_;
  std::vector<std::size_t> order_, assumed_;
};

/// The decks on their site; those without a place of their own apart from the rest.
std::vector<model::PlacedDeck> placedAsGiven(const std::vector<model::Deck>& decks);

/// Whether every one of the places lies within reach (m) of one of the segments.
bool isWithinReach(const std::vector<Point>& places, const std::vector<Segment>& from, double reach);

double distance(Point p, const Segment& s);

template <class IsShut>
std::optional<std::vector<Where>> AccessGraph::path(Where from, Where to, IsShut isShut) const {
  using Path = std::vector<Where>;
  if (from == to) return Path{};
  const std::size_t ground = areas_.size();
  std::vector<std::size_t> before(ground + 1, ground + 1), queue;
  const std::size_t start = from.value_or(ground), goal = to.value_or(ground);
  before[start] = start;
  queue.push_back(start);
  const auto reach = [&](std::size_t next, std::size_t at) {
    if (before[next] <= ground || (next != goal && next != ground && isShut(next))) return;
    before[next] = at;
    queue.push_back(next);
  };
  for (std::size_t i = 0; i < queue.size() && before[goal] > ground; ++i) {
    const std::size_t at = queue[i];
    if (at != ground) {
      for (const auto& way : areas_[at].ways) reach(way.to.value_or(ground), at);
      continue;
    }
    for (std::size_t area = 0; area < ground; ++area) {
      for (const auto& way : areas_[area].ways) {
        if (!way.to) reach(area, ground);
      }
    }
  }
  if (before[goal] > ground) return {};
  Path crossed;
  for (std::size_t at = before[goal]; at != start; at = before[at])
    crossed.insert(crossed.begin(), at == ground ? Where{} : Where{at});
  return crossed;
}

}  // namespace schedule
