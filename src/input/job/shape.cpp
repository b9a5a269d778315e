#include "input/job/shape.h"

#include "base/geometry.h"
#include "base/joined.h"
#include "input/yaml/words.h"

#include <algorithm>

namespace input {
namespace {

using base::Length;

constexpr std::size_t mostPoints = 200;

using Sides = Limits<Length>;

Length length(const Field& f, const Sides& sides) { return quantity(f, parseLength, sides); }

/// The parts of '6 m x 4 m', a unit at the end holding for all; fewer than two where it is something else.
std::vector<std::string> partsOf(const std::string& word) {
  std::vector<std::string> parts = {""};
  const std::string s = plain(word);
  for (std::size_t i = 0; i < s.size(); ++i) {
    const bool isTimes = s.compare(i, 2, "\u00D7") == 0;
    if (!isTimes && s[i] != 'x' && s[i] != 'X') {
      parts.back() += s[i];
      continue;
    }
    parts.emplace_back();
    if (isTimes) ++i;
  }
  const std::size_t unit = parts.back().find_last_of("0123456789");
  for (std::string& part : parts) {
    part = plain(part);
    if (const auto p = parseLength(part).problem; p && p->isBare && unit != std::string::npos)
      part = plain(part + parts.back().substr(unit + 1));
    if (parseLength(part).problem) return {};
  }
  return parts;
}

/// The words of a list, those of '6,5 m' put together again.
std::vector<std::string> joined(const std::vector<Field>& items) {
  std::vector<std::string> all;
  bool isOpen = false;  // the number before may go on behind the comma
  for (const Field& item : items) {
    if (!item.is(Node::Kind::Word)) return {};
    const std::string& word = item.node()->word;
    const auto problem = parseLength(word).problem;
    if (isOpen && !problem) all.back() += "." + word;
    else all.push_back(word);
    isOpen = problem && problem->isBare && word.find('.') == std::string::npos;
  }
  return all;
}

std::string listOf(const std::vector<std::string>& words) { return "[" + base::joined(words) + "]"; }

/// What was likely meant by a wrong number of lengths, else the example.
std::string lengthsHint(const Field& f, std::size_t count, const char* example, const Sides& sides) {
  std::vector<std::string> meant;
  if (f.is(Node::Kind::Word)) meant = partsOf(f.node()->word);
  else if (f.node()->items.size() == 1 && f.node()->items[0].kind == Node::Kind::Word)
    meant = partsOf(f.node()->items[0].word);
  else meant = joined(f.items());
  const bool areFine = std::all_of(meant.begin(), meant.end(), [&](const std::string& word) {
    const auto side = parseLength(word);
    return !side.problem && sides.least <= side.value && side.value <= sides.most;
  });
  return meant.size() == count && areFine ? "write " + listOf(meant)
                                          : std::string("write it like ") + example;
}

/// So many lengths in a list; empty when one of them is missing or wrong.
std::vector<Length> lengths(const Field& f, std::size_t count, const char* example, const Sides& sides) {
  if (f.is(Node::Kind::Word)) {
    f.error(std::to_string(count) + " lengths in a list are needed, not a single value",
            lengthsHint(f, count, example, sides));
    return {};
  }
  const std::vector<Field> items = f.items();
  if (!f.is(Node::Kind::List)) return {};
  if (items.size() != count) {
    f.error(std::to_string(count) + " lengths are needed, not " + std::to_string(items.size()),
            lengthsHint(f, count, example, sides));
    return {};
  }
  std::vector<Length> all;
  bool complete = true;
  for (const Field& item : items) {
    all.push_back(length(item, sides));
    complete = complete && !all.back().isZero();
  }
  return complete ? all : std::vector<Length>{};
}

/// Larger areas do not fit the sums of a job. The sizes may multiply beyond 64 bits, so no Area is made yet.
bool isTooLarge(const Field& f, base::Wide squareNanometres) {
  constexpr base::Wide most = base::Wide{100'000} * 1'000'000'000 * 1'000'000'000;
  if (squareNanometres <= most) return false;
  f.error("the area is larger than 100000 m2", "check numbers and units");
  return true;
}

base::Wide product(Length a, Length b) { return base::Wide{a.millionths} * b.millionths; }

std::optional<model::Shape> rectangle(const Field& f, const Sides& sides) {
  const std::vector<Length> s = lengths(f, 2, "[12.4 m, 6.2 m]", sides);
  if (s.empty() || isTooLarge(f, product(s[0], s[1]))) return {};
  return model::Rectangle{s[0], s[1]};
}

bool isOnOneLine(const std::vector<base::Pt>& points) {
  for (std::size_t i = 2; i < points.size(); ++i) {
    if (base::twiceArea(std::array{points[0], points[1], points[i]}) != 0) return false;
  }
  return true;
}

std::optional<model::Shape> polygon(const Field& f, const Sides&) {
  const std::vector<Field> items = f.items();
  if (!f.is(Node::Kind::List)) return {};
  if (items.size() > mostPoints) {
    f.error("more than " + std::to_string(mostPoints) + " points",
            "leave out those that lie between others on one line");
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
    f.error("an outline needs at least 3 different points",
            "list every corner, like [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m]]");
    return {};
  }
  if (isOnOneLine(points)) {
    f.error("the points lie on one line", "list every corner, like [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m]]");
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

std::optional<model::Shape> circle(const Field& f, const Sides& sides) {
  const Length d = length(f, sides);
  if (d.isZero() || isTooLarge(f, product(d, d))) return {};
  return model::Circle{d};
}

std::optional<model::Shape> ring(const Field& f, const Sides& sides) {
  const std::vector<Length> d = lengths(f, 2, "[6 m, 2 m], the outer diameter first", sides);
  if (d.empty() || isTooLarge(f, product(d[0], d[0]))) return {};
  if (d[1] >= d[0]) {
    f.error("the inner diameter is not smaller than the outer one", "write the outer diameter first");
    return {};
  }
  return model::Ring{d[0], d[1]};
}

std::optional<model::Shape> triangle(const Field& f, const Sides& sides) {
  const std::vector<Length> s = lengths(f, 3, "[3 m, 4 m, 5 m]", sides);
  if (s.empty() || isTooLarge(f, product(s[0], s[1]))) return {};
  if (s[0] + s[1] <= s[2] || s[1] + s[2] <= s[0] || s[2] + s[0] <= s[1]) {
    f.error("the sides do not close", "each side of a triangle is shorter than the other two together");
    return {};
  }
  return model::Triangle{s[0], s[1], s[2]};
}

std::optional<model::Shape> stairs(const Field& f, const Sides&) {
  constexpr Limits<Length> goings = {base::millimetres(10), base::metres(3),
                                     "from 10 mm to 3 m",   base::millimetres(180),
                                     base::metres(1),       "from 180 mm to 1 m (7 to 40 in)"};
  constexpr Limits<Length> rises = {base::millimetres(10),  base::metres(3),
                                    "from 10 mm to 3 m",    base::millimetres(75),
                                    base::millimetres(260), "from 75 mm to 260 mm (3 to 10 in)"};
  constexpr Limits<Length> widths = {base::millimetres(100), base::metres(500),
                                     "from 100 mm to 500 m", base::millimetres(400),
                                     base::metres(8),        "from 0.4 m to 8 m (16 in to 26 ft)"};
  Record r(f);
  model::Stairs s;
  s.steps = whole(r.must("steps", "4"), {1, 500, "from 1 to 500", 1, 60, "from 1 to 60"}, 0);
  s.width = quantity(r.must("width", "1.2 m"), parseLength, widths);
  s.going = quantity(r.must("going", "280 mm"), parseLength, goings);
  s.rise = quantity(r.must("rise", "175 mm"), parseLength, rises);
  r.finish();
  if (s.steps == 0 || s.width.isZero() || s.going.isZero() || s.rise.isZero()) return {};
  return s;
}

std::optional<model::Shape> screen(const Field& f, const Sides&) {
  constexpr Limits<Length> widths = {base::Length{1000},   base::metres(10'000),
                                     "from 1 um to 10 km", base::millimetres(400),
                                     base::metres(30),     "from 0.4 m to 30 m (16 in to 100 ft)"};
  constexpr Limits<Length> heights = {base::Length{1000},   base::metres(10'000),
                                      "from 1 um to 10 km", base::millimetres(200),
                                      base::metres(6),      "from 0.2 m to 6 m (8 in to 20 ft)"};
  Record r(f);
  model::Screen s;
  s.width = length(r.must("width", "3 m"), widths);
  s.height = length(r.must("height", "1.8 m"), heights);
  s.sides = whole(r.must("sides", "2"), {1, 2, "1 or 2"}, 2);
  s.solid = quantity(r.must("solid", "60 %"), parseShare,
                     {base::Share::whole(1), base::Share::whole(100), "from 1 % to 100 %",
                      base::Share::whole(10), base::Share::whole(100), "from 10 % to 100 %"});
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
  constexpr Limits<Length> runs = {base::Length{1000},   base::metres(10'000),
                                   "from 1 um to 10 km", base::millimetres(200),
                                   base::metres(150),    "from 0.2 m to 150 m (8 in to 500 ft)"};
  constexpr Limits<Length> girths = {base::Length{1000},   base::metres(10'000),
                                     "from 1 um to 10 km", base::millimetres(40),
                                     base::metres(2),      "from 40 mm to 2 m (1 1/2 in to 6 ft)"};
  const Length l = length(lengthField, runs), g = length(girthField, girths);
  if (l.isZero() || g.isZero() || isTooLarge(lengthField, product(l, g))) return {};
  return model::Strip{l, g};
}

/// Nothing has less edge around its area than a circle, and few decks are narrower than half a metre.
void checkPerimeter(const Field& f, base::Area area, Length perimeter) {
  const base::Wide square = product(perimeter, perimeter);
  const base::Wide squareMicrometres = area.millionths;
  // A circle: P2 = 4 pi A; pi as 3.14159 keeps a circle given to the millimetre.
  if (square / 1'000'000 * 100'000 < squareMicrometres * 4 * 314'159)
    f.error(inQuotes(f.word().value_or("")) + " does not reach around that area",
            "it is the whole outer edge; check numbers and units");
  // 0.5 m wide: P = 4 A/m + 1 m.
  else if (base::Wide{perimeter.millionths} > squareMicrometres / 1000 * 4 + base::metres(1).millionths)
    f.warn(inQuotes(f.word().value_or("")) + " makes the area narrower than 0.5 m",
           "check numbers and units");
}

std::optional<model::Shape> measured(const Field& area, const Field& perimeter) {
  constexpr Limits<Length> perimeters = {base::Length{1000},   base::metres(10'000),
                                         "from 1 um to 10 km", base::metres(1),
                                         base::metres(500),    "from 1 m to 500 m (3 to 1600 ft)"};
  model::Measured m;
  m.area = quantity(area, parseArea, anyArea);
  if (perimeter.isGiven()) m.perimeter = length(perimeter, perimeters);
  if (m.area.isZero() || (m.perimeter && m.perimeter->isZero())) return {};
  if (m.perimeter) checkPerimeter(perimeter, m.area, *m.perimeter);
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

std::optional<model::Shape> readShape(Record& r, const Limits<Length>& sides) {
  struct Kind {
    const char* key;
    std::optional<model::Shape> (*read)(const Field&, const Sides&);
  };
  constexpr Kind kinds[] = {{"rectangle", rectangle}, {"points", polygon}, {"circle", circle}, {"ring", ring},
                            {"triangle", triangle},   {"stairs", stairs},  {"screen", screen}};
  std::optional<model::Shape> shape;
  std::vector<std::string> given;
  for (const Kind& k : kinds) {
    const Field f = r.may(k.key);
    if (!f.isGiven()) continue;
    given.emplace_back(k.key);
    shape = k.read(f, sides);
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
