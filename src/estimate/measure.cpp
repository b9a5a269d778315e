#include "estimate/measure.h"

#include "base/geometry.h"

#include <algorithm>

namespace estimate {
namespace {

using base::Area;
using base::divide;
using base::Length;
using base::mulDiv;
using base::Round;
using base::Wide;

// A convergent of pi, right to 16 digits (3.141 592 653 589 793 16): small enough to multiply the square of
// a kilometre in nanometres within 128 bits.
constexpr std::int64_t piOver = 245'850'922, piUnder = 78'256'779;

constexpr std::int64_t squareNanometres = 1'000'000;  // in a square micrometre
constexpr std::int64_t wholeShare = 100'000'000;      // 100 % in millionths

/// The square root, to the nearest whole number.
std::int64_t nearestRoot(Wide n) {
  const Wide root = base::squareRoot(n);
  return static_cast<std::int64_t>(n - root * root > root ? root + 1 : root);
}

std::vector<base::Pt> outlineOf(const std::vector<model::Place>& points) {
  std::vector<base::Pt> outline;
  for (const auto& p : points) outline.push_back({p.x.millionths, p.y.millionths});
  return outline;
}

Area discArea(Wide diameterSquared) {
  return {divide(diameterSquared * piOver, Wide{piUnder} * 4 * squareNanometres, Round::HalfUp)};
}

Length around(Length diameter) { return {mulDiv(diameter.millionths, piOver, piUnder, Round::HalfUp)}; }

Wide squared(Length l) { return Wide{l.millionths} * l.millionths; }

/// The side of a square of that area.
Length squareSide(Area a) { return {nearestRoot(Wide{a.millionths} * squareNanometres)}; }

struct Measurer {
  Flat operator()(const model::Rectangle& r) const { return {r.x * r.y, (r.x + r.y) * 2}; }

  Flat operator()(const model::Polygon& polygon) const {
    const auto o = outlineOf(polygon.points);
    Flat flat{{divide(base::twiceArea(o), 2 * squareNanometres, Round::HalfUp)}, {}};
    for (std::size_t i = 0; i < o.size(); ++i) {
      const auto& a = o[i];
      const auto& b = o[(i + 1) % o.size()];
      const Wide dx = b.x - a.x, dy = b.y - a.y;
      flat.perimeter += Length{nearestRoot(dx * dx + dy * dy)};
    }
    return flat;
  }

  Flat operator()(const model::Circle& c) const {
    return {discArea(squared(c.diameter)), around(c.diameter)};
  }

  Flat operator()(const model::Ring& r) const {
    return {discArea(squared(r.outer) - squared(r.inner)), around(r.outer + r.inner)};
  }

  /// Heron's formula without its halves: 16 A^2 = (a+b+c)(-a+b+c) (a-b+c)(a+b-c).
  Flat operator()(const model::Triangle& t) const {
    const Wide a = t.a.millionths, b = t.b.millionths, c = t.c.millionths;
    const Wide p = (a + b + c) * (-a + b + c), q = (a - b + c) * (a + b - c);
    const Flat flat{{}, t.a + t.b + t.c};
    if (p <= 0 || q <= 0) return flat;  // the sides do not close
    return {{divide(base::squareRootOfProduct(p, q), 4 * squareNanometres, Round::HalfUp)}, flat.perimeter};
  }

  Flat operator()(const model::Stairs& s) const {
    const Length girth = (s.going + s.rise) * s.steps;
    return {s.width * girth, (s.width + girth) * 2};
  }

  Flat operator()(const model::Strip& s) const { return {s.length * s.girth, (s.length + s.girth) * 2}; }

  Flat operator()(const model::Screen& s) const {
    const Area faces = s.width * s.height * s.sides;
    return {scaled(faces, s.solid.millionths, wholeShare, Round::HalfUp), (s.width + s.height) * 2};
  }

  Flat operator()(const model::Measured& m) const {
    return {m.area, m.perimeter ? *m.perimeter : squareSide(m.area) * 4};
  }
};

struct Boxer {
  model::Place operator()(const model::Rectangle& r) const { return {r.x, r.y}; }
  model::Place operator()(const model::Polygon& p) const { return box(outlineOf(p.points)); }
  model::Place operator()(const model::Circle& c) const { return {c.diameter, c.diameter}; }
  model::Place operator()(const model::Ring& r) const { return {r.outer, r.outer}; }
  model::Place operator()(const model::Triangle& t) const {
    return box(base::triangleCorners(t.a.millionths, t.b.millionths, t.c.millionths));
  }
  model::Place operator()(const model::Stairs& s) const { return {s.width, s.going * s.steps}; }
  model::Place operator()(const model::Strip& s) const { return {s.length, s.girth}; }
  model::Place operator()(const model::Screen& s) const { return {s.width, s.height}; }
  model::Place operator()(const model::Measured& m) const { return {squareSide(m.area), squareSide(m.area)}; }

  static model::Place box(base::Outline points) {
    base::Pt least = points.front(), most = points.front();
    for (const auto& p : points) {
      least = {std::min(least.x, p.x), std::min(least.y, p.y)};
      most = {std::max(most.x, p.x), std::max(most.y, p.y)};
    }
    return {{most.x - least.x}, {most.y - least.y}};
  }
};

/// Boards, fixings and the surface that takes product, for a deck with boards. The gaps are counted as
/// timber: what runs into them is taken for the edges' share.
void addBoards(model::Measures& m, const model::Deck& deck, const model::Boards& boards) {
  const Length pitch = boards.width + boards.gap;
  m.boardMetres = {mulDiv(m.area.millionths, squareNanometres, pitch.millionths, Round::HalfUp)};
  const auto boardsOn = [&](Length across) { return divide(across.millionths, pitch.millionths, Round::Up); };
  m.boards = boardsOn(m.across);
  if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape))
    m.boards =
        stairs->steps * (boardsOn(stairs->going) + boardsOn(stairs->rise));  // treads and risers lie across
  if (deck.joists && deck.fixings) {
    const Wide crossing = Wide{pitch.millionths} * deck.joists->millionths;
    m.fixings =
        divide(Wide{m.area.millionths} * squareNanometres * deck.fixings->perCrossing, crossing, Round::Up);
  }

  // The upper face may be reeded; the lower one and the edges are smooth.
  if (boards.face == model::BoardFace::Reeded)
    m.wetted = scaled(m.area, boards.reededFactor.millionths, wholeShare, Round::HalfUp);
  const Area edges = scaled(m.area, boards.thickness.millionths * 2, pitch.millionths, Round::HalfUp);
  switch (boards.wetted) {
    case model::Wetted::Top:
      break;
    case model::Wetted::TopAndEdges:
      m.wetted += edges;
      break;
    case model::Wetted::AllFaces:
      m.wetted += m.area + edges;
      break;
  }
}

}  // namespace

Flat measureShape(const model::Shape& shape) { return std::visit(Measurer{}, shape); }

model::Place extent(const model::Shape& shape) { return std::visit(Boxer{}, shape); }

bool isSimple(const std::vector<model::Place>& points) { return base::isSimple(outlineOf(points)); }

model::Measures measureDeck(const model::Deck& deck) {
  const Flat outer = measureShape(deck.shape);
  model::Measures m;
  m.area = outer.area;
  m.perimeter = m.cutIn = outer.perimeter;
  for (const auto& cut : deck.without) {
    const Flat hole = measureShape(cut.shape);
    m.area = m.area - hole.area;
    m.cutIn += hole.perimeter;
  }
  m.wetted = m.area;

  // In a square deck the boards run along x either way.
  const model::Place box = extent(deck.shape);
  const bool longSide = !deck.boards || deck.boards->run == model::Run::LongSide;
  const bool alongX = box.x == box.y || (box.x > box.y) == longSide;
  m.along = alongX ? box.x : box.y;
  m.across = alongX ? box.y : box.x;
  // Rails, fascia, posts and screens are worked all round by hand: they have no edge to cut in, no gaps and
  // no faces beyond the girth or the sides that were measured.
  const bool isAllRound =
      std::holds_alternative<model::Strip>(deck.shape) || std::holds_alternative<model::Screen>(deck.shape);
  if (isAllRound) m.cutIn = {};
  else if (deck.boards) addBoards(m, deck, *deck.boards);
  return m;
}

model::Measures sumOf(const std::vector<model::Measures>& decks) {
  model::Measures all;
  for (const auto& m : decks) {
    all.area += m.area;
    all.perimeter += m.perimeter;
    all.cutIn += m.cutIn;
    all.wetted += m.wetted;
    all.boardMetres += m.boardMetres;
    all.boards += m.boards;
    all.fixings += m.fixings;
    all.across = std::max(all.across, m.across);
    all.along = std::max(all.along, m.along);
  }
  return all;
}

}  // namespace estimate
