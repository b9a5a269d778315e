// Cut-outs lie on their deck and do not share area with each other. Checked exactly: outlines and circles on
// a grid of nanometres.
#include "base/geometry.h"
#include "input/job/shape.h"

namespace input {
namespace {

using Points = std::vector<base::Pt>;
/// What a shape covers on the plan; nothing for shapes that have no outline there.
using Footprint = std::variant<std::monostate, Points, base::Disc>;

Points moved(Points p, base::Pt by) {
  for (base::Pt& q : p) q = {q.x + by.x, q.y + by.y};
  return p;
}

struct FootprintOf {
  base::Pt at;
  bool isDeck;  // decks have their corner at the origin, circles as cut-outs their centre at 'at'

  Footprint operator()(const model::Rectangle& r) const {
    const std::int64_t x = r.x.millionths, y = r.y.millionths;
    return moved({{0, 0}, {x, 0}, {x, y}, {0, y}}, at);
  }
  Footprint operator()(const model::Polygon& p) const {
    Points points;
    for (const model::Place& q : p.points) points.push_back({q.x.millionths, q.y.millionths});
    return moved(points, at);
  }
  Footprint operator()(const model::Circle& c) const { return disc(c.diameter); }
  Footprint operator()(const model::Ring& r) const { return disc(r.outer); }
  Footprint operator()(const model::Triangle& t) const {
    const auto corners = base::triangleCorners(t.a.millionths, t.b.millionths, t.c.millionths);
    return moved({corners.begin(), corners.end()}, at);
  }
  Footprint operator()(const model::Stairs&) const { return {}; }
  Footprint operator()(const model::Strip&) const { return {}; }
  Footprint operator()(const model::Screen&) const { return {}; }
  Footprint operator()(const model::Measured&) const { return {}; }

 private:
  Footprint disc(base::Length diameter) const {
    const std::int64_t half = isDeck ? diameter.millionths / 2 : 0;
    return base::Disc{{at.x + half, at.y + half}, diameter.millionths};
  }
};

Footprint footprint(const model::CutOut& c) {
  return std::visit(FootprintOf{{c.at.x.millionths, c.at.y.millionths}, false}, c.shape);
}

struct IsWithin {
  bool operator()(const Points& a, const Points& b) const { return base::isWithin(a, b); }
  bool operator()(const Points& a, const base::Disc& b) const { return base::isWithin(a, b); }
  bool operator()(const base::Disc& a, const Points& b) const { return base::isWithin(a, b); }
  bool operator()(const base::Disc& a, const base::Disc& b) const { return base::isWithin(a, b); }
  template <class A, class B>
  bool operator()(const A&, const B&) const {
    return true;  // one of them has no place on the plan
  }
};

struct Overlap {
  bool operator()(const Points& a, const Points& b) const { return base::overlap(a, b); }
  bool operator()(const Points& a, const base::Disc& b) const { return base::overlap(b, a); }
  bool operator()(const base::Disc& a, const Points& b) const { return base::overlap(a, b); }
  bool operator()(const base::Disc& a, const base::Disc& b) const { return base::overlap(a, b); }
  template <class A, class B>
  bool operator()(const A&, const B&) const {
    return false;
  }
};

/// Cut-outs that lie on the deck can fill it only with their own kind: outlines an outline, a circle a
/// circle.
bool leavesNothing(const Footprint& deck, const std::vector<model::CutOut>& cutOuts) {
  base::Wide left = 0;
  if (const auto* outline = std::get_if<Points>(&deck)) left = base::twiceArea(*outline);
  for (const model::CutOut& c : cutOuts) {
    const Footprint cut = footprint(c);
    if (const auto* outline = std::get_if<Points>(&cut)) left -= base::twiceArea(*outline);
    const auto *disc = std::get_if<base::Disc>(&cut), *whole = std::get_if<base::Disc>(&deck);
    if (disc != nullptr && whole != nullptr && disc->diameter >= whole->diameter) return true;
  }
  return std::holds_alternative<Points>(deck) && left <= 0;
}

}  // namespace

void checkCutOuts(const model::Shape& deck, const std::vector<model::CutOut>& cutOuts,
                  const std::vector<Field>& fields) {
  const Footprint whole = std::visit(FootprintOf{{0, 0}, true}, deck);
  Footprint hole;
  if (const auto* ring = std::get_if<model::Ring>(&deck)) {
    const std::int64_t centre = ring->outer.millionths / 2;
    hole = base::Disc{{centre, centre}, ring->inner.millionths};
  }
  bool fit = true;
  for (std::size_t i = 0; i < cutOuts.size(); ++i) {
    const Footprint cut = footprint(cutOuts[i]);
    if (!std::visit(IsWithin{}, cut, whole) || std::visit(Overlap{}, cut, hole)) {
      fields[i].error(
          "the cut-out does not lie on the deck",
          "'at' is the centre of a circle and the upper left corner of other shapes, from the deck's "
          "upper left corner: to the right, down");
      fit = false;
      continue;
    }
    for (std::size_t k = 0; k < i; ++k) {
      if (!std::visit(Overlap{}, cut, footprint(cutOuts[k]))) continue;
      fields[i].error("the cut-out overlaps cut-out " + std::to_string(k + 1),
                      "check 'at' of both, or make one shape of them");
      fit = false;
      break;
    }
  }
  if (fit && leavesNothing(whole, cutOuts))
    fields.back().error("the cut-outs leave nothing of the deck", "check their sizes");
}

}  // namespace input
