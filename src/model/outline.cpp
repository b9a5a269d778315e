#include "model/outline.h"

#include "base/geometry.h"

#include <algorithm>
#include <array>

namespace model {

using base::Length;

namespace {

Loop rectangle(Length w, Length h) { return {{{}, {w, {}}, {w, h}, {{}, h}}, {}, {}}; }

Loop circle(Length diameter) {
  const Length r = {diameter.millionths / 2};
  return {{}, {r, r}, r};
}

Loop triangle(const Triangle& t) {
  Loop loop;
  for (const auto p : base::triangleCorners(t.a.millionths, t.b.millionths, t.c.millionths))
    loop.corners.push_back({{p.x}, {p.y}});
  return loop;
}

Length root(base::Wide n) { return {static_cast<std::int64_t>(base::squareRoot(n))}; }

Place sum(Place a, Place b) { return {a.x + b.x, a.y + b.y}; }

Loop moved(Loop loop, Place by) {
  for (auto& corner : loop.corners) corner = sum(corner, by);
  for (auto& reach : loop.reaches) reach = {sum(reach.from, by), sum(reach.to, by)};
  loop.centre = sum(loop.centre, by);
  return loop;
}

void widen(Extent& e, Place p) {
  e.from = {std::min(e.from.x, p.x), std::min(e.from.y, p.y)};
  e.to = {std::max(e.to.x, p.x), std::max(e.to.y, p.y)};
}

constexpr std::size_t sidesOfReach = 16;

Loop polygon(const std::vector<Place>& corners) {
  Loop loop{corners, {}, {}};
  if (corners.size() <= 2 * sidesOfReach) return loop;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (i % sidesOfReach == 0) loop.reaches.push_back({corners[i], corners[i]});
    widen(loop.reaches.back(), corners[i]);
    widen(loop.reaches.back(), corners[(i + 1) % corners.size()]);
  }
  return loop;
}

struct Maker {
  std::optional<Outline> operator()(const Rectangle& r) const { return Outline{rectangle(r.x, r.y), {}}; }
  std::optional<Outline> operator()(const Polygon& p) const { return Outline{polygon(p.points), {}}; }
  std::optional<Outline> operator()(const Circle& c) const { return Outline{circle(c.diameter), {}}; }
  std::optional<Outline> operator()(const Ring& r) const {
    const Length rim = {(r.outer - r.inner).millionths / 2};
    return Outline{circle(r.outer), {Outline{moved(circle(r.inner), {rim, rim}), {}}}};
  }
  std::optional<Outline> operator()(const Triangle& t) const { return Outline{triangle(t), {}}; }
  std::optional<Outline> operator()(const Stairs& s) const {
    return Outline{rectangle(s.going * s.steps, s.width), {}};
  }
  std::optional<Outline> operator()(const Strip&) const { return std::nullopt; }
  std::optional<Outline> operator()(const Screen&) const { return std::nullopt; }
  std::optional<Outline> operator()(const Measured&) const { return std::nullopt; }
};

/// Where the line at 'at' enters and leaves a loop, in order. Drawings ask thousands of times, so what is
/// usual needs no memory of its own.
class Crossings {
 public:
  Crossings(const Loop& loop, Length at, bool alongX) {
    if (loop.isCircle()) {
      cross(loop, alongX ? at - loop.centre.y : at - loop.centre.x, alongX ? loop.centre.x : loop.centre.y);
      return;
    }
    const auto& corners = loop.corners;
    if (loop.reaches.empty()) {
      cross(corners, 0, corners.size(), at, alongX);
    } else {
      for (std::size_t i = 0; i < loop.reaches.size(); ++i) {
        const auto& [from, to] = loop.reaches[i];
        if (alongX ? from.y <= at && at < to.y : from.x <= at && at < to.x)
          cross(corners, i * sidesOfReach, std::min((i + 1) * sidesOfReach, corners.size()), at, alongX);
      }
    }
    std::sort(begin(), begin() + size_);
  }

  std::size_t size() const { return static_cast<std::size_t>(size_); }
  Length operator[](std::size_t i) const { return many_.empty() ? few_[i] : many_[i]; }

 private:
  Length* begin() { return many_.empty() ? few_.data() : many_.data(); }
  void add(Length end) {
    const auto size = static_cast<std::size_t>(size_);
    if (many_.empty() && size == few_.size()) many_.assign(few_.begin(), few_.end());
    if (many_.empty()) few_[size] = end;
    else many_.push_back(end);
    ++size_;
  }

  void cross(const Loop& circle, Length off, Length middle) {
    const std::int64_t r = circle.radius.millionths, d = off.millionths;
    if (d >= r || -d >= r) return;
    const Length half = root(base::Wide{r} * r - base::Wide{d} * d);
    add(middle - half);
    add(middle + half);
  }

  void cross(const std::vector<Place>& corners, std::size_t from, std::size_t to, Length at, bool alongX) {
    for (std::size_t i = from; i < to; ++i) {
      Place a = corners[i], b = corners[i + 1 < corners.size() ? i + 1 : 0];
      if (!alongX) {
        std::swap(a.x, a.y);
        std::swap(b.x, b.y);
      }
      // A corner on the line counts with the edge above it only, so that crossings always come in pairs.
      if ((a.y <= at) == (b.y <= at)) continue;
      if (b.y < a.y) std::swap(a, b);
      if (a.x == b.x) add(a.x);
      else
        add(a.x +
            base::scaled(b.x - a.x, (at - a.y).millionths, (b.y - a.y).millionths, base::Round::HalfUp));
    }
  }

  std::array<Length, 32> few_;
  std::vector<Length> many_;  // instead, where there are more
  std::ptrdiff_t size_ = 0;
};

std::vector<Stretch> without(const std::vector<Stretch>& from, const std::vector<Stretch>& taken) {
  std::vector<Stretch> left = from;
  for (const auto& t : taken) {
    std::vector<Stretch> next;
    next.reserve(left.size() + 1);
    for (const auto& s : left) {
      if (t.to <= s.from || t.from >= s.to) {
        next.push_back(s);
        continue;
      }
      if (t.from > s.from) next.push_back({s.from, t.from});
      if (t.to < s.to) next.push_back({t.to, s.to});
    }
    left = std::move(next);
  }
  return left;
}

/// A circle lies around its place, anything else below and to the right of it.
std::optional<Outline> outlineAt(const Shape& shape, Place at) {
  const auto outline = outlineOf(shape);
  if (!outline) return {};
  const Loop& edge = outline->edge;
  return moved(*outline, edge.isCircle() ? Place{at.x - edge.radius, at.y - edge.radius} : at);
}

}  // namespace

std::optional<Outline> outlineOf(const Shape& shape) { return std::visit(Maker{}, shape); }

std::optional<Outline> outlineOf(const Deck& deck) {
  auto outline = outlineOf(deck.shape);
  if (!outline) return outline;
  for (const auto& cut : deck.without) {
    if (auto hole = outlineAt(cut.shape, cut.at)) outline->holes.push_back(std::move(*hole));
  }
  return outline;
}

std::optional<Outline> outlineOf(const Around& one) { return outlineAt(one.shape, one.at); }

Outline moved(const Outline& outline, Place by) {
  Outline out{moved(outline.edge, by), {}};
  for (const auto& hole : outline.holes) out.holes.push_back(moved(hole, by));
  return out;
}

Extent extentOf(const Outline& outline) {
  const Loop& edge = outline.edge;
  if (edge.isCircle())
    return {{edge.centre.x - edge.radius, edge.centre.y - edge.radius},
            {edge.centre.x + edge.radius, edge.centre.y + edge.radius}};
  Extent e{edge.corners[0], edge.corners[0]};
  for (const auto& corner : edge.corners) widen(e, corner);
  return e;
}

std::vector<Stretch> stretches(const Loop& edge, Length at, bool alongX) {
  const Crossings ends(edge, at, alongX);
  std::vector<Stretch> out;
  out.reserve(ends.size() / 2);
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2)
    if (ends[i] < ends[i + 1]) out.push_back({ends[i], ends[i + 1]});
  return out;
}

std::vector<Stretch> stretches(const Outline& outline, Length at, bool alongX) {
  std::vector<Stretch> out = stretches(outline.edge, at, alongX);
  for (const auto& hole : outline.holes) {
    const auto taken = stretches(hole, at, alongX);
    if (!taken.empty()) out = without(out, taken);
  }
  return out;
}

bool touches(Place place, const Outline& outline, Length near) {
  for (const Length y : {place.y - near, place.y, place.y + near}) {
    for (const Stretch& s : stretches(outline, y, true)) {
      if (s.from - near <= place.x && place.x <= s.to + near) return true;
    }
  }
  return false;
}

bool runsAlongX(const Extent& extent, Run run) {
  if (extent.width() == extent.height()) return true;
  return (extent.width() > extent.height()) == (run == Run::LongSide);
}

std::vector<Seam> seams(const Outline& outline, const Boards& boards, std::int64_t every) {
  const Extent extent = extentOf(outline);
  const bool alongX = runsAlongX(extent, boards.run);
  const Length first = alongX ? extent.from.y : extent.from.x;
  const Length last = alongX ? extent.to.y : extent.to.x;
  const Length pitch = (boards.width + boards.gap) * every;
  std::vector<Seam> out;
  for (Length at = first + pitch; at < last; at += pitch)
    for (const auto& s : stretches(outline, at, alongX))
      out.push_back(alongX ? Seam{{s.from, at}, {s.to, at}} : Seam{{at, s.from}, {at, s.to}});
  return out;
}

Length distance(Place a, Place b) {
  const base::Wide dx = (a.x - b.x).millionths, dy = (a.y - b.y).millionths;
  return root(dx * dx + dy * dy);
}

}  // namespace model
