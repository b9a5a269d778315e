#include "base/geometry.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace base {
namespace {

__extension__ using UWide = unsigned __int128;

struct Edge {
  Pt a, b;
};

Edge edge(Outline o, std::size_t i) { return {o[i], o[(i + 1) % o.size()]}; }

int sign(Wide n) { return n > 0 ? 1 : n < 0 ? -1 : 0; }

/// Twice the signed area of o, a, b.
Wide turn(Pt o, Pt a, Pt b) { return Wide{a.x - o.x} * (b.y - o.y) - Wide{a.y - o.y} * (b.x - o.x); }

Wide squaredDistance(Pt a, Pt b) {
  const Wide dx = a.x - b.x, dy = a.y - b.y;
  return dx * dx + dy * dy;
}

/// Along the edge, as a number that grows from its start to its end.
Wide along(Edge e, Pt p) { return Wide{e.b.x - e.a.x} * (p.x - e.a.x) + Wide{e.b.y - e.a.y} * (p.y - e.a.y); }

/// The smallest rectangle around something, sides along the axes: two comparisons spare most of the 128-bit
/// arithmetic.
struct Box {
  Pt least, most;

  bool holds(Pt p) const { return least.x <= p.x && p.x <= most.x && least.y <= p.y && p.y <= most.y; }
};

Box boxOf(Edge e) {
  return {{std::min(e.a.x, e.b.x), std::min(e.a.y, e.b.y)}, {std::max(e.a.x, e.b.x), std::max(e.a.y, e.b.y)}};
}

Box boxOf(Outline o) {
  constexpr std::int64_t far = std::numeric_limits<std::int64_t>::max();
  Box box{{far, far}, {-far, -far}};
  for (const Pt p : o) {
    box.least = {std::min(box.least.x, p.x), std::min(box.least.y, p.y)};
    box.most = {std::max(box.most.x, p.x), std::max(box.most.y, p.y)};
  }
  return box;
}

/// They share more than an edge.
bool overlap(const Box& a, const Box& b) {
  return a.least.x < b.most.x && b.least.x < a.most.x && a.least.y < b.most.y && b.least.y < a.most.y;
}

bool isOn(Edge e, Pt p) { return boxOf(e).holds(p) && turn(e.a, e.b, p) == 0; }

/// They meet in one point that is an end of neither.
bool cross(Edge e, Edge f) {
  const Box a = boxOf(e), b = boxOf(f);
  const bool isApart =
      a.most.x < b.least.x || b.most.x < a.least.x || a.most.y < b.least.y || b.most.y < a.least.y;
  return !isApart && sign(turn(e.a, e.b, f.a)) * sign(turn(e.a, e.b, f.b)) < 0 &&
         sign(turn(f.a, f.b, e.a)) * sign(turn(f.a, f.b, e.b)) < 0;
}

bool meet(Edge e, Edge f) {
  return cross(e, f) || isOn(e, f.a) || isOn(e, f.b) || isOn(f, e.a) || isOn(f, e.b);
}

/// The point and every outline are doubled before halves are needed: middles of edges, radii.
Pt doubled(Pt p) { return {2 * p.x, 2 * p.y}; }

std::vector<Pt> doubled(Outline o) {
  std::vector<Pt> all;
  for (const Pt p : o) all.push_back(doubled(p));
  return all;
}

struct Product256 {
  UWide high, low;
  friend bool operator<(const Product256& a, const Product256& b) {
    return a.high != b.high ? a.high < b.high : a.low < b.low;
  }
};

Product256 multiply(UWide a, UWide b) {
  constexpr UWide mask = ~std::uint64_t{0};
  const UWide a0 = a & mask, a1 = a >> 64, b0 = b & mask, b1 = b >> 64;
  const UWide low = a0 * b0, cross1 = a1 * b0, cross2 = a0 * b1;
  const UWide middle = (low >> 64) + (cross1 & mask) + (cross2 & mask);
  return {a1 * b1 + (cross1 >> 64) + (cross2 >> 64) + (middle >> 64), (middle << 64) | (low & mask)};
}

/// The edge comes nearer to p than r.
bool isNearer(Edge e, Pt p, std::int64_t r) {
  const Wide squaredRadius = Wide{r} * r;
  const Wide at = along(e, p), end = squaredDistance(e.a, e.b);
  if (at <= 0) return squaredDistance(e.a, p) < squaredRadius;
  if (at >= end) return squaredDistance(e.b, p) < squaredRadius;
  // Twice the triangle over the edge's length is the distance; both sides squared, nothing divided.
  const Wide t = turn(e.a, e.b, p);
  const auto twice = static_cast<UWide>(t < 0 ? -t : t);
  return multiply(twice, twice) < multiply(static_cast<UWide>(squaredRadius), static_cast<UWide>(end));
}

bool isAnyEdgeNearer(Outline o, Pt p, std::int64_t r) {
  for (std::size_t i = 0; i < o.size(); ++i) {
    if (isNearer(edge(o, i), p, r)) return true;
  }
  return false;
}

/// Where the outline of one shape runs against another shape.
struct Course {
  bool crosses = false, inside = false, outside = false;
};

/// Cuts every edge at the other's corners. Where nothing crosses, each piece lies wholly inside, on the edge
/// or outside, so its middle tells.
Course course(Outline line, Outline shape) {
  Course c;
  const std::vector<Pt> twice = doubled(shape);
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Edge e = edge(line, i);
    std::vector<Pt> cuts = {e.a, e.b};
    for (std::size_t k = 0; k < shape.size(); ++k) {
      c.crosses = c.crosses || cross(e, edge(shape, k));
      if (isOn(e, shape[k])) cuts.push_back(shape[k]);
    }
    std::sort(cuts.begin(), cuts.end(), [&](Pt p, Pt q) { return along(e, p) < along(e, q); });
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
      const Pt middle = {cuts[k].x + cuts[k + 1].x, cuts[k].y + cuts[k + 1].y};
      const Where w = locate(twice, middle);
      c.inside = c.inside || w == Where::Inside;
      c.outside = c.outside || w == Where::Outside;
    }
  }
  return c;
}

}  // namespace

Wide twiceArea(Outline o) {
  Wide sum = 0;
  for (std::size_t i = 0; i < o.size(); ++i) sum += turn(o[0], edge(o, i).a, edge(o, i).b);
  return sum < 0 ? -sum : sum;
}

std::vector<Pt> withoutRepeats(Outline o) {
  std::vector<Pt> all;
  for (const Pt p : o) {
    if (all.empty() || all.back() != p) all.push_back(p);
  }
  while (all.size() > 1 && all.back() == all.front()) all.pop_back();
  return all;
}

bool isSimple(Outline outline) {
  const std::vector<Pt> o = withoutRepeats(outline);
  const std::size_t n = o.size();
  if (n < 3 || twiceArea(o) == 0) return false;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = i + 1; k < n; ++k) {
      const Edge e = edge(o, i), f = edge(o, k);
      if (k == i + 1) {  // neighbours share a corner, and nothing more
        if (isOn(e, f.b) || isOn(f, e.a)) return false;
      } else if (i == 0 && k == n - 1) {
        if (isOn(e, f.a) || isOn(f, e.b)) return false;
      } else if (meet(e, f)) {
        return false;
      }
    }
  }
  return true;
}

Where locate(Outline o, Pt p) {
  bool inside = false;
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Edge e = edge(o, i);
    if (isOn(e, p)) return Where::Edge;
    // A ray to the right of p meets edges that start above it and end on or below it, or the reverse.
    if ((e.a.y > p.y) != (e.b.y > p.y)) {
      const bool right = (turn(e.a, e.b, p) > 0) == (e.b.y > e.a.y);
      if (right) inside = !inside;
    }
  }
  return inside ? Where::Inside : Where::Outside;
}

bool isWithin(Outline inner, Outline outer) {
  const Course c = course(inner, outer);
  return !c.crosses && !c.outside;
}

bool isWithin(Outline inner, Disc outer) {
  for (const Pt p : inner) {
    if (squaredDistance(doubled(p), doubled(outer.centre)) > Wide{outer.diameter} * outer.diameter)
      return false;
  }
  return true;
}

bool isWithin(Disc inner, Outline outer) {
  return contains(outer, inner.centre) &&
         !isAnyEdgeNearer(doubled(outer), doubled(inner.centre), inner.diameter);
}

bool isWithin(Disc inner, Disc outer) {
  const Wide room = outer.diameter - inner.diameter;
  return room >= 0 && squaredDistance(doubled(inner.centre), doubled(outer.centre)) <= room * room;
}

bool overlap(Outline a, Outline b) {
  if (!overlap(boxOf(a), boxOf(b))) return false;
  const Course ab = course(a, b), ba = course(b, a);
  if (ab.crosses || ab.inside || ba.inside) return true;
  return !ab.outside;  // a runs wholly along b: they are the same shape
}

bool overlap(Disc a, Outline b) {
  return locate(b, a.centre) == Where::Inside || isAnyEdgeNearer(doubled(b), doubled(a.centre), a.diameter);
}

bool overlap(Disc a, Disc b) {
  const Wide reach = a.diameter + b.diameter;
  return squaredDistance(doubled(a.centre), doubled(b.centre)) < reach * reach;
}

Wide squareRoot(Wide n) {
  // The machine's root is near; which whole number it is, is decided exactly.
  auto root = static_cast<Wide>(std::sqrt(static_cast<long double>(n)));
  while (root * root > n) --root;
  while ((root + 1) * (root + 1) <= n) ++root;
  return root;
}

Wide squareRootOfProduct(Wide a, Wide b) {
  const Product256 n = multiply(static_cast<UWide>(a), static_cast<UWide>(b));
  UWide low = 0, high = UWide{1} << 127;  // a and b are below it, and so is the root
  while (high - low > 1) {
    const UWide middle = low + (high - low) / 2;
    (n < multiply(middle, middle) ? high : low) = middle;
  }
  return static_cast<Wide>(low);
}

std::array<Pt, 3> triangleCorners(std::int64_t a, std::int64_t b, std::int64_t c) {
  const Wide aa = Wide{a} * a, bb = Wide{b} * b, cc = Wide{c} * c;
  const std::int64_t x = divide(aa + cc - bb, Wide{2} * a, Round::HalfEven);
  const Wide rest = cc - Wide{x} * x;
  const auto y = static_cast<std::int64_t>(squareRoot(rest > 0 ? rest : 0));
  const std::int64_t left = std::min<std::int64_t>(x, 0);
  return {Pt{-left, 0}, Pt{a - left, 0}, Pt{x - left, y}};
}

}  // namespace base
