#include "input/shape.h"

#include "base/geometry.h"
#include "input/words.h"

namespace input {
namespace {

using base::Length;

constexpr std::size_t mostPoints = 200;

Length length(const Field& f) { return quantity(f, parseLength, anyLength); }

/// So many lengths in a list; empty when one of them is missing or wrong.
std::vector<Length> lengths(const Field& f, std::size_t count, const char* example) {
  const std::vector<Field> items = f.items();
  if (!f.is(Node::Kind::List)) return {};
  if (items.size() != count) {
    f.error(std::to_string(count) + " lengths are needed, not " + std::to_string(items.size()),
            std::string("write it like ") + example);
    return {};
  }
  std::vector<Length> all;
  bool complete = true;
  for (const Field& item : items) {
    all.push_back(length(item));
    complete = complete && !all.back().isZero();
  }
  return complete ? all : std::vector<Length>{};
}

/// Larger areas do not fit the sums of a job. The sizes may multiply beyond 64 bits, so no Area is made yet.
bool isTooLarge(const Field& f, base::Wide squareNanometres) {
  constexpr base::Wide most = base::Wide{100'000} * 1'000'000'000 * 1'000'000'000;
  if (squareNanometres <= most) return false;
  f.error("the area is larger than 100000 m2");
  return true;
}

base::Wide product(Length a, Length b) { return base::Wide{a.millionths} * b.millionths; }

std::optional<model::Shape> rectangle(const Field& f) {
  const std::vector<Length> sides = lengths(f, 2, "[12.4 m, 6.2 m]");
  if (sides.empty() || isTooLarge(f, product(sides[0], sides[1]))) return {};
  return model::Rectangle{sides[0], sides[1]};
}

bool isOnOneLine(const std::vector<base::Pt>& points) {
  for (std::size_t i = 2; i < points.size(); ++i) {
    if (base::twiceArea(std::array{points[0], points[1], points[i]}) != 0) return false;
  }
  return true;
}

std::optional<model::Shape> polygon(const Field& f) {
  const std::vector<Field> items = f.items();
  if (!f.is(Node::Kind::List)) return {};
  if (items.size() > mostPoints) {
    f.error("more than " + std::to_string(mostPoints) + " points");
    return {};
  }
  std::vector<base::Pt> all;
  bool complete = true;
  for (const Field& item : items) {
    const std::optional<model::Place> p = readPlace(item);
    complete = complete && p;
    if (p) all.push_back({p->x.millionths, p->y.millionths});
  }
  if (!complete) return {};
  const std::vector<base::Pt> points = base::withoutRepeats(all);
  if (points.size() < 3) {
    f.error("an outline needs at least 3 different points");
    return {};
  }
  if (isOnOneLine(points)) {
    f.error("the points lie on one line");
    return {};
  }
  if (!base::isSimple(points)) {
    f.error("the outline crosses or touches itself",
            "list the corners in the order in which you walk around the deck");
    return {};
  }
  if (isTooLarge(f, base::twiceArea(points) / 2)) return {};
  model::Polygon shape;
  for (const base::Pt p : points) shape.points.push_back({{p.x}, {p.y}});
  return shape;
}

std::optional<model::Shape> circle(const Field& f) {
  const Length d = length(f);
  if (d.isZero() || isTooLarge(f, product(d, d))) return {};
  return model::Circle{d};
}

std::optional<model::Shape> ring(const Field& f) {
  const std::vector<Length> d = lengths(f, 2, "[6 m, 2 m], the outer diameter first");
  if (d.empty() || isTooLarge(f, product(d[0], d[0]))) return {};
  if (d[1] >= d[0]) {
    f.error("the inner diameter is not smaller than the outer one", "write the outer diameter first");
    return {};
  }
  return model::Ring{d[0], d[1]};
}

std::optional<model::Shape> triangle(const Field& f) {
  const std::vector<Length> s = lengths(f, 3, "[3 m, 4 m, 5 m]");
  if (s.empty() || isTooLarge(f, product(s[0], s[1]))) return {};
  if (s[0] + s[1] <= s[2] || s[1] + s[2] <= s[0] || s[2] + s[0] <= s[1]) {
    f.error("the sides do not close", "each side of a triangle is shorter than the other two together");
    return {};
  }
  return model::Triangle{s[0], s[1], s[2]};
}

std::optional<model::Shape> stairs(const Field& f) {
  constexpr Limits<Length> stepSizes = {base::millimetres(10), base::metres(3), "from 10 mm to 3 m"};
  Record r(f);
  model::Stairs s;
  s.steps = whole(r.must("steps"), {1, 500, "from 1 to 500"}, 0);
  s.width = quantity(r.must("width"), parseLength,
                     {base::millimetres(100), base::metres(500), "from 100 mm to 500 m"});
  s.going = quantity(r.must("going"), parseLength, stepSizes);
  s.rise = quantity(r.must("rise"), parseLength, stepSizes);
  r.finish();
  if (s.steps == 0 || s.width.isZero() || s.going.isZero() || s.rise.isZero()) return {};
  return s;
}

std::optional<model::Shape> screen(const Field& f) {
  Record r(f);
  model::Screen s;
  s.width = length(r.must("width"));
  s.height = length(r.must("height"));
  s.sides = whole(r.must("sides"), {1, 2, "1 or 2"}, 2);
  s.solid =
      quantity(r.must("solid"), parseShare, {{1'000'000}, base::Share::whole(100), "from 1 % to 100 %"});
  r.finish();
  if (s.width.isZero() || s.height.isZero() || s.solid.isZero()) return {};
  if (isTooLarge(f, product(s.width, s.height) * s.sides)) return {};
  return s;
}

std::optional<model::Shape> strip(const Record& r, const Field& lengthField, const Field& girthField) {
  if (!lengthField.isGiven() || !girthField.isGiven()) {
    r.field().error(std::string("'") + (girthField.isGiven() ? "length" : "girth") + "' is missing",
                    "a strip is written like {length: 18.6 m, girth: 300 mm}");
    return {};
  }
  const Length l = length(lengthField), g = length(girthField);
  if (l.isZero() || g.isZero() || isTooLarge(lengthField, product(l, g))) return {};
  return model::Strip{l, g};
}

std::optional<model::Shape> measured(const Field& area, const Field& perimeter) {
  model::Measured m;
  m.area = quantity(area, parseArea, anyArea);
  if (perimeter.isGiven()) m.perimeter = length(perimeter);
  if (m.area.isZero() || (m.perimeter && m.perimeter->isZero())) return {};
  return m;
}

}  // namespace

std::optional<model::Place> readPlace(const Field& f) {
  const std::vector<Field> items = f.items();
  if (!f.is(Node::Kind::List)) return {};
  if (items.size() != 2) {
    f.error("a place has 2 lengths, not " + std::to_string(items.size()),
            "write it like [6 m, 3 m]: to the right, down");
    return {};
  }
  constexpr Length unread = base::metres(20'000);
  const Length x = quantity(items[0], parseLength, anyPlace, unread);
  const Length y = quantity(items[1], parseLength, anyPlace, unread);
  if (x == unread || y == unread) return {};
  return model::Place{x, y};
}

std::optional<model::Shape> readShape(Record& r) {
  struct Kind {
    const char* key;
    std::optional<model::Shape> (*read)(const Field&);
  };
  constexpr Kind kinds[] = {{"rectangle", rectangle}, {"points", polygon}, {"circle", circle}, {"ring", ring},
                            {"triangle", triangle},   {"stairs", stairs},  {"screen", screen}};
  std::optional<model::Shape> shape;
  std::vector<std::string> given;
  for (const Kind& k : kinds) {
    const Field f = r.may(k.key);
    if (!f.isGiven()) continue;
    given.emplace_back(k.key);
    shape = k.read(f);
  }
  const Field lengthField = r.may("length"), girthField = r.may("girth");
  if (lengthField.isGiven() || girthField.isGiven()) {
    given.emplace_back(lengthField.isGiven() ? "length" : "girth");
    shape = strip(r, lengthField, girthField);
  }
  const Field area = r.may("area"), perimeter = r.may("perimeter");
  if (area.isGiven()) {
    given.emplace_back("area");
    shape = measured(area, perimeter);
  } else if (perimeter.isGiven()) {
    perimeter.error("a perimeter goes with a measured area", "add 'area', or leave it out");
  }
  if (given.size() > 1) {
    r.field().error("two shapes are given: '" + given[0] + "' and '" + given[1] + "'",
                    "make two areas of them");
    return {};
  }
  if (given.empty() && r.field().is(Node::Kind::Map)) {
    r.field().error(
        "no shape is given",
        "known: rectangle, points, circle, ring, triangle, stairs, screen, length and girth, or area");
  }
  return shape;
}

}  // namespace input
