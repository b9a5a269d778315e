// Path data becomes steps on paper; arcs become curves of a quarter turn at most.
#include "base/geometry.h"
#include "drawings/pen/svg.h"

#include <algorithm>
#include <cstdlib>

namespace drawings {

namespace {

using base::Round;
using base::Wide;
using typeset::Step;

struct At {
  Micro x = 0, y = 0;
};

constexpr std::int64_t unit = 1'000'000'000;  // radius of the circle arcs are worked out on

std::int64_t root(Wide n) { return static_cast<std::int64_t>(base::squareRoot(n)); }
std::int64_t part(std::int64_t a, std::int64_t b, std::int64_t c) {
  return base::mulDiv(a, b, c, Round::HalfUp);
}

class PathReader {
 public:
  PathReader(const std::string& data, int line, const Frame& frame)
      : in_(data, line), line_(line), frame_(frame) {}

  std::vector<Step> steps() {
    char command = '\0';
    while (!in_.isAtEnd()) {
      if (!in_.isAtNumber()) command = in_.letter();
      else if (command == '\0' || command == 'Z' || command == 'z')
        throw SvgError(line_, "a path has a number without a command");
      if (steps_.empty() && command != 'M' && command != 'm')
        throw SvgError(line_, "a path does not begin with M");
      run(command);
      // Further pairs after a move are lines: SVG 1.1 (2011), 8.3.2.
      if (command == 'M') command = 'L';
      if (command == 'm') command = 'l';
    }
    return std::move(steps_);
  }

 private:
  void run(char command) {
    const bool isRelative = command >= 'a';
    const At from = isRelative ? now_ : At{};
    const bool isSmooth = lastWasCurve_;
    lastWasCurve_ = false;
    switch (isRelative ? static_cast<char>(command - 'a' + 'A') : command) {
      case 'M':
        now_ = start_ = pair(from);
        add(Step::Kind::Move, {}, {}, now_);
        return;
      case 'L':
        return lineTo(pair(from));
      case 'H':
        return lineTo(checked({from.x + in_.number(), now_.y}));
      case 'V':
        return lineTo(checked({now_.x, from.y + in_.number()}));
      case 'C': {
        const At a = pair(from), b = pair(from);
        return curveTo(a, b, pair(from));
      }
      case 'S': {
        const At a = isSmooth ? At{2 * now_.x - control_.x, 2 * now_.y - control_.y} : now_;
        const At b = pair(from);
        return curveTo(a, b, pair(from));
      }
      case 'Q': {
        const At q = pair(from), to = pair(from), now = now_;
        const auto towards = [&](At end) {
          return At{end.x + (q.x - end.x) * 2 / 3, end.y + (q.y - end.y) * 2 / 3};
        };
        curveTo(towards(now), towards(to), to);
        lastWasCurve_ = false;
        return;
      }
      case 'A':
        return arc(from);
      case 'Z':
        steps_.push_back({Step::Kind::Close, {}, {}, {}});
        now_ = start_;
        return;
      default:
        throw SvgError(line_, std::string("a path has the command '") + command + "'");
    }
  }

  At pair(At from) {
    const Micro x = in_.number();
    return checked({from.x + x, from.y + in_.number()});
  }

  At checked(At p) const {
    for (const Micro m : {p.x, p.y})
      if (m >= 2 * mostNumber || m <= -2 * mostNumber) throw SvgError(line_, "a path runs too far away");
    return p;
  }

  void add(Step::Kind kind, At a, At b, At to) {
    steps_.push_back({kind, frame_.on(a.x, a.y), frame_.on(b.x, b.y), frame_.on(to.x, to.y)});
  }

  void lineTo(At to) {
    add(Step::Kind::Line, to, to, to);
    now_ = to;
  }

  void curveTo(At a, At b, At to) {
    add(Step::Kind::Curve, a, b, to);
    now_ = to;
    control_ = b;
    lastWasCurve_ = true;
  }

  /// SVG 1.1 (2011), appendix F.6, on the circle of radius 'unit' instead of with angles.
  void arc(At from) {
    Micro rx = in_.number(), ry = in_.number();
    const Micro tilt = in_.number();
    const bool isLarge = in_.flag(), isSweep = in_.flag();
    const At to = pair(from), a = now_;
    if (rx <= 0 || ry <= 0) throw SvgError(line_, "an arc's radius is not above zero");
    if (tilt != 0 && rx != ry) throw SvgError(line_, "an arc is tilted");
    if (to.x == a.x && to.y == a.y) return;
    const Micro chord = std::max(std::abs(to.x - a.x), std::abs(to.y - a.y));
    if (chord / 1'000'000 > std::min(rx, ry))
      throw SvgError(line_, "an arc's radius is too small for its ends");
    At half = {part((a.x - to.x) / 2, unit, rx), part((a.y - to.y) / 2, unit, ry)};
    const std::int64_t reach = root(Wide{half.x} * half.x + Wide{half.y} * half.y);
    if (reach == 0) return lineTo(to);  // next to nothing of its circle
    if (reach > unit) {                 // radii too small for the chord grow until they span it
      rx = part(rx, reach, unit);
      ry = part(ry, reach, unit);
      half = {part(half.x, unit, reach), part(half.y, unit, reach)};
    }
    const std::int64_t length = std::min(reach, unit);
    const std::int64_t rise = root(Wide{unit} * unit - Wide{length} * length) * (isLarge == isSweep ? -1 : 1);
    const At centre = {part(rise, half.y, length), -part(rise, half.x, length)};
    const At middle = {(a.x + to.x) / 2 + part(centre.x, rx, unit),
                       (a.y + to.y) / 2 + part(centre.y, ry, unit)};
    At v = {half.x - centre.x, half.y - centre.y};
    const At end = {-half.x - centre.x, -half.y - centre.y};
    const std::int64_t way = isSweep ? 1 : -1;
    const auto place = [&](At p) {
      return At{middle.x + part(p.x, rx, unit), middle.y + part(p.y, ry, unit)};
    };
    const auto bend = [&](At p, At q, std::int64_t k, At onto) {
      const At c = {p.x - way * part(k, p.y, unit), p.y + way * part(k, p.x, unit)};
      const At d = {q.x + way * part(k, q.y, unit), q.y - way * part(k, q.x, unit)};
      curveTo(place(c), place(d), onto);
    };
    for (int quarter = 0; quarter < 4; ++quarter) {
      const Wide dot = Wide{v.x} * end.x + Wide{v.y} * end.y;
      const Wide cross = (Wide{v.x} * end.y - Wide{v.y} * end.x) * way;
      if (dot >= 0 && cross >= 0) {
        const std::int64_t cosine = base::divide(dot, unit, Round::HalfUp);
        const std::int64_t ofHalf = root(Wide{unit + std::min(cosine, unit)} * unit / 2);
        const std::int64_t ofQuarter = root(Wide{unit} * unit / (unit + ofHalf) * (unit - ofHalf));
        bend(v, end, ofQuarter * 4 / 3, to);
        break;
      }
      const At next = {-way * v.y, way * v.x};
      bend(v, next, 552'284'750, place(next));
      v = next;
    }
    lastWasCurve_ = false;
  }

  NumberReader in_;
  int line_;
  const Frame& frame_;
  std::vector<Step> steps_;
  At now_, start_, control_;
  bool lastWasCurve_ = false;
};

}  // namespace

std::vector<typeset::Step> readPathData(const std::string& data, int line, const Frame& frame) {
  return PathReader(data, line, frame).steps();
}

}  // namespace drawings
