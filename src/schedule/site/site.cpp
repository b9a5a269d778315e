#include "schedule/site/site.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <tuple>

namespace schedule {
namespace {

constexpr double touching = 0.06;                   // m; a gap for drainage still counts
constexpr double step = 0.1;                        // m, along an edge
constexpr double leastWay = 0.3;                    // m, that one can walk over
constexpr double mostStep = 0.5;                    // m that anyone steps down with a pole in hand
constexpr double highestReach = 1.5;                // m; above it nobody reaches the boards from the ground
constexpr std::int64_t nanometres = 1'000'000'000;  // base::Length counts them

double metresOf(base::Length l) { return static_cast<double>(l.millionths) / nanometres; }
Point pointOf(model::Place p) { return {metresOf(p.x), metresOf(p.y)}; }

std::vector<Point> cornersOf(const model::Loop& loop) {
  std::vector<Point> corners;
  if (!loop.isCircle()) {
    for (const auto& corner : loop.corners) corners.push_back(pointOf(corner));
    return corners;
  }
  constexpr int sides = 32;
  const Point centre = pointOf(loop.centre);
  for (int i = 0; i < sides; ++i) {
    const double angle = 2 * std::numbers::pi * i / sides, r = metresOf(loop.radius);
    corners.push_back({centre.x + r * std::cos(angle), centre.y + r * std::sin(angle)});
  }
  return corners;
}

bool isInside(Point p, const std::vector<Point>& corners) {
  bool inside = false;
  for (std::size_t i = 0, j = corners.size() - 1; i < corners.size(); j = i++) {
    const Point a = corners[i], b = corners[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

Segment edgeOf(const std::vector<Point>& corners, std::size_t i) {
  return {corners[i], corners[(i + 1) % corners.size()]};
}

double lengthOf(const Segment& s) { return std::hypot(s.to.x - s.from.x, s.to.y - s.from.y); }

Point along(const Segment& s, double share) {
  return {s.from.x + (s.to.x - s.from.x) * share, s.from.y + (s.to.y - s.from.y) * share};
}

bool touches(Point p, const std::vector<Point>& corners) {
  if (corners.empty()) return false;
  if (isInside(p, corners)) return true;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (distance(p, edgeOf(corners, i)) <= touching) return true;
  }
  return false;
}

double signedArea(const std::vector<Point>& corners) {
  double sum = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const auto e = edgeOf(corners, i);
    sum += e.from.x * e.to.y - e.to.x * e.from.y;
  }
  return sum / 2;
}

/// The side an edge faces, by the site's compass.
model::Compass facing(const Segment& edge, double area, int north) {
  const double x = edge.to.x - edge.from.x, y = edge.to.y - edge.from.y;
  const double outX = area > 0 ? y : -y, outY = area > 0 ? -x : x;
  const double bearing = std::atan2(outX, -outY) * 180 / std::numbers::pi - north;
  const auto quarter = static_cast<int>(std::lround(bearing / 90 + 8));
  return static_cast<model::Compass>(quarter % 4);
}

/// A stretch of an edge that lies against one neighbour, or against none.
struct Run {
  Where beside;
  Segment stretch;
  model::EdgeKind kind = model::EdgeKind::Open;
  bool isOnPath = false;
};

/// What the job draws beside its areas.
struct Neighbour {
  model::Surrounding kind;
  std::vector<Point> corners;
};

std::vector<Neighbour> neighboursOf(const model::Job& job) {
  std::vector<Neighbour> all;
  for (const auto& one : job.around) {
    if (const auto outline = model::outlineOf(one)) all.push_back({one.kind, cornersOf(outline->edge)});
  }
  return all;
}

bool isBeside(Point p, const std::vector<Neighbour>& neighbours,
              std::initializer_list<model::Surrounding> kinds) {
  return std::any_of(neighbours.begin(), neighbours.end(), [&](const Neighbour& n) {
    return std::find(kinds.begin(), kinds.end(), n.kind) != kinds.end() && touches(p, n.corners);
  });
}

/// What the job tells of the side an edge faces beats what it draws there.
model::EdgeKind kindAt(Point p, const std::optional<model::EdgeKind>& told,
                       const std::vector<Neighbour>& neighbours) {
  if (told) return *told;
  if (isBeside(p, neighbours, {model::Surrounding::House, model::Surrounding::Wall}))
    return model::EdgeKind::Wall;
  return isBeside(p, neighbours, {model::Surrounding::Water}) ? model::EdgeKind::Water
                                                              : model::EdgeKind::Open;
}

/// The stretches of an area's edges, in order.
std::vector<Run> runsOf(std::size_t own, const std::vector<SiteArea>& areas, const model::Job& job,
                        const std::vector<Neighbour>& around) {
  std::vector<Run> runs;
  const auto& decks = job.areas;
  const auto& corners = areas[own].outline;
  const double area = signedArea(corners);
  const std::vector<Neighbour> none;
  const auto& neighbours = decks[own].at ? around : none;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Segment edge = edgeOf(corners, i);
    std::optional<model::EdgeKind> told;
    for (const auto& one : decks[own].edges) {
      if (one.side == facing(edge, area, job.site.north.value_or(0))) told = one.kind;
    }
    const int steps = std::max(1, static_cast<int>(std::lround(lengthOf(edge) / step)));
    for (int k = 0; k < steps; ++k) {
      const Point p = along(edge, (k + 0.5) / steps);
      Where beside;
      for (std::size_t other = 0; other < areas.size() && !beside; ++other) {
        const bool isPlaced = other != own && decks[own].at && decks[other].at;
        if (isPlaced && touches(p, areas[other].outline)) beside = other;
      }
      const Point begin = along(edge, static_cast<double>(k) / steps);
      const Run run{beside,
                    {begin, {}},
                    kindAt(p, told, neighbours),
                    isBeside(p, neighbours, {model::Surrounding::Path})};
      const bool goesOn = k > 0 && runs.back().beside == beside && runs.back().kind == run.kind &&
                          runs.back().isOnPath == run.isOnPath;
      if (!goesOn) runs.push_back(run);
      runs.back().stretch.to = along(edge, (k + 1.0) / steps);
    }
  }
  return runs;
}

/// Foot and top of stairs; they are not entered over their sides.
std::array<Segment, 2> endsOf(const model::PlacedDeck& stairs) {
  const Point a = pointOf(stairs.extent.from), b = pointOf(stairs.extent.to);
  const Segment left{{a.x, a.y}, {a.x, b.y}}, right{{b.x, a.y}, {b.x, b.y}};
  const Segment top{{a.x, a.y}, {b.x, a.y}}, bottom{{a.x, b.y}, {b.x, b.y}};
  switch (stairs.up) {
    case model::Side::Right:
      return {left, right};
    case model::Side::Left:
      return {right, left};
    case model::Side::Bottom:
      return {top, bottom};
    case model::Side::Top:
      return {bottom, top};
  }
  throw std::logic_error("internal error: no such side");
}

bool isAtEnd(const Segment& s, const std::array<Segment, 2>& ends) {
  return std::any_of(ends.begin(), ends.end(), [&](const Segment& end) {
    return distance(s.from, end) <= 2 * touching && distance(s.to, end) <= 2 * touching;
  });
}

/// The longest of the runs that suit; null where none is.
template <class Suits>
const Run* longest(const std::vector<Run>& runs, Suits suits) {
  const Run* best = nullptr;
  for (const auto& run : runs) {
    if (suits(run) && (!best || lengthOf(run.stretch) > lengthOf(best->stretch) + step / 2)) best = &run;
  }
  return best;
}

}  // namespace

std::vector<model::PlacedDeck> placedAsGiven(const std::vector<model::Deck>& decks) {
  return model::placeDecks(decks, base::metres(1), base::metres(1000));
}

double distance(Point p, const Segment& s) {
  const double x = s.to.x - s.from.x, y = s.to.y - s.from.y, square = x * x + y * y;
  const double share =
      square > 0 ? std::clamp(((p.x - s.from.x) * x + (p.y - s.from.y) * y) / square, 0.0, 1.0) : 0;
  const Point near = along(s, share);
  return std::hypot(p.x - near.x, p.y - near.y);
}

bool isWithinReach(const std::vector<Point>& places, const std::vector<Segment>& from, double reach) {
  constexpr double slack = 0.01;
  return std::all_of(places.begin(), places.end(), [&](Point p) {
    return std::any_of(from.begin(), from.end(),
                       [&](const Segment& s) { return distance(p, s) <= reach + slack; });
  });
}

AccessGraph::AccessGraph(const model::Job& job) {
  areas_.resize(job.areas.size());
  for (std::size_t i = 0; i < areas_.size(); ++i) {
    const auto& deck = job.areas[i];
    areas_[i].isStoodOn = !std::holds_alternative<model::Strip>(deck.shape) &&
                          !std::holds_alternative<model::Screen>(deck.shape);
    if (deck.edgeHeight) areas_[i].height = metresOf(*deck.edgeHeight);
    if (deck.boards) areas_[i].pitch = metresOf(deck.boards->width + deck.boards->gap);
    if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape))
      areas_[i].pitch = metresOf(stairs->going);
  }
  addWays(job);
  findDepths();
  sortOrder(job);
}

void AccessGraph::addWays(const model::Job& job) {
  const auto placed = placedAsGiven(job.areas);
  for (const auto& p : placed) {
    areas_[p.index].outline = cornersOf(p.outline.edge);
    for (const auto& hole : p.outline.holes) areas_[p.index].holes.push_back(cornersOf(hole.edge));
  }
  std::vector<std::vector<Run>> runs(areas_.size());
  const auto neighbours = neighboursOf(job);
  for (const auto& p : placed) runs[p.index] = runsOf(p.index, areas_, job, neighbours);
  // Where the job tells a way out, one leaves there and nowhere else.
  std::vector<std::optional<Way>> told(areas_.size());
  for (const auto& p : placed) {
    const auto& deck = job.areas[p.index];
    if (!deck.wayOut) continue;
    const Point drawn = pointOf(model::extentOf(*model::outlineOf(deck)).from),
                corner = pointOf(p.extent.from);
    const Point out{metresOf(deck.wayOut->x) - drawn.x + corner.x,
                    metresOf(deck.wayOut->y) - drawn.y + corner.y};
    Way way{{}, {out, out}};
    for (std::size_t other = 0; other < areas_.size() && deck.at; ++other) {
      if (other != p.index && job.areas[other].at && touches(out, areas_[other].outline)) way.to = other;
    }
    told[p.index] = way;
  }
  for (const auto& p : placed) {
    const std::size_t own = p.index;
    auto& area = areas_[own];
    for (const auto& run : runs[own]) {
      const bool isReached = run.kind == model::EdgeKind::Open || run.kind == model::EdgeKind::Drop;
      if (run.beside || (isReached && area.height <= highestReach))
        area.stands.push_back({run.beside, run.stretch});
    }
    for (std::size_t other = 0; other < areas_.size(); ++other) {
      const auto* run = longest(runs[own], [&](const Run& r) {
        if (r.beside != other || lengthOf(r.stretch) < leastWay) return false;
        for (const auto& stairs : placed) {
          const bool isPart = stairs.index == own || stairs.index == other;
          if (isPart && stairs.isStairs && !isAtEnd(r.stretch, endsOf(stairs))) return false;
        }
        return true;
      });
      if (!run) continue;
      const bool isEither = p.isStairs || std::holds_alternative<model::Stairs>(job.areas[other].shape);
      const auto leads = [&](std::size_t from, std::size_t to) {
        return told[from] ? told[from]->to == to : true;
      };
      const bool isTold = told[own] || told[other];
      const bool isWay =
          !isTold || isEither || (told[own] && leads(own, other)) || (told[other] && leads(other, own));
      if (!isWay) continue;
      Segment over = run->stretch;
      for (const auto& [from, to] : {std::pair{own, other}, std::pair{other, own}}) {
        if (told[from] && told[from]->to == to) over = told[from]->over;
      }
      area.ways.push_back({other, over});
    }
    if (told[own]) {
      if (!told[own]->to) area.ways.push_back(*told[own]);
      else if (std::none_of(area.ways.begin(), area.ways.end(),
                            [&](const Way& w) { return w.to == told[own]->to; })) {
        area.ways.push_back(*told[own]);
        areas_[*told[own]->to].ways.push_back({own, told[own]->over});
      }
    } else if (p.isStairs) {
      const auto foot = endsOf(p)[0];
      if (const auto* run = longest(runs[own], [&](const Run& r) {
            return !r.beside && isAtEnd(r.stretch, {foot, foot});
          }))
        area.ways.push_back({{}, run->stretch});
    } else if (area.height <= mostStep) {
      const auto isOpen = [](const Run& r) { return !r.beside && r.kind == model::EdgeKind::Open; };
      const auto* run = longest(runs[own], [&](const Run& r) { return r.isOnPath && isOpen(r); });
      if (!run) run = longest(runs[own], isOpen);
      if (run) area.ways.push_back({{}, run->stretch});
    }
  }
  for (auto& area : areas_) {
    if (area.outline.empty()) area.ways.push_back({});
  }
  // What leads nowhere is taken to be left over its longest edge.
  findDepths();
  for (const auto& p : placed) {
    if (areas_[p.index].depth > 0) continue;
    const auto* run = longest(runs[p.index], [](const Run& r) { return !r.beside; });
    if (!run) run = &runs[p.index].front();
    areas_[p.index].ways.push_back({{}, run->stretch});
    areas_[p.index].stands.push_back({{}, run->stretch});
    assumed_.push_back(p.index);
    findDepths();
  }
}

const Way* AccessGraph::wayOut(std::size_t area) const {
  const Way* out = nullptr;
  const auto depth = [&](const Way& way) { return way.to ? areas_[*way.to].depth : 0; };
  for (const auto& way : areas_[area].ways) {
    if (!out || depth(way) < depth(*out)) out = &way;
  }
  return out;
}

void AccessGraph::findDepths() {
  std::vector<std::size_t> queue;
  for (std::size_t i = 0; i < areas_.size(); ++i) {
    areas_[i].depth = 0;
    for (const auto& way : areas_[i].ways) {
      if (way.to || areas_[i].depth > 0) continue;
      areas_[i].depth = 1;
      queue.push_back(i);
    }
  }
  for (std::size_t i = 0; i < queue.size(); ++i) {
    for (const auto& way : areas_[queue[i]].ways) {
      if (!way.to || areas_[*way.to].depth > 0) continue;
      areas_[*way.to].depth = areas_[queue[i]].depth + 1;
      queue.push_back(*way.to);
    }
  }
}

void AccessGraph::sortOrder(const model::Job& job) {
  for (std::size_t i = 0; i < areas_.size(); ++i) order_.push_back(i);
  const auto rank = [&](std::size_t i) {
    const auto& a = areas_[i];
    const bool isStairs = std::holds_alternative<model::Stairs>(job.areas[i].shape);
    return std::tuple(a.isStoodOn, -a.depth, isStairs, -a.height);
  };
  std::stable_sort(order_.begin(), order_.end(), [&](auto a, auto b) { return rank(a) < rank(b); });
}

}  // namespace schedule
