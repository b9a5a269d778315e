// Which sizes of a deck a plan tells, and where: in dimension lines, else close to the edge.
#include "drawings/plans/plan_chain.h"
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>

namespace drawings {

using base::Length;
using model::Place;

namespace {

bool isClockwise(const std::vector<Place>& corners) {
  base::Wide twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Place a = corners[i], b = corners[(i + 1) % corners.size()];
    twice += base::Wide{a.x.millionths} * b.y.millionths - base::Wide{b.x.millionths} * a.y.millionths;
  }
  return twice > 0;
}

/// The edges one sees when one looks at a polygon from a side.
Chain seenFrom(const Pen& pen, const std::vector<Place>& corners, Side side) {
  Chain chain{side, {}};
  const bool alongX = isAcross(side), clockwise = isClockwise(corners);
  struct Seen {
    Length from, to, near;
  };
  std::vector<Seen> edges;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    Place a = corners[i], b = corners[(i + 1) % corners.size()];
    if (!alongX) {
      std::swap(a.x, a.y);
      std::swap(b.x, b.y);
    }
    if (a.y != b.y || a.x == b.x) continue;
    // Clockwise, the upper edges run to the right and the right ones down.
    const bool isForward = (b.x > a.x) == clockwise;
    const bool facesUs = isForward == (side == Side::Top || side == Side::Right);
    if (facesUs) edges.push_back({std::min(a.x, b.x), std::max(a.x, b.x), a.y});
  }
  std::sort(edges.begin(), edges.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
  const auto isInFront = [&](Length a, Length b) { return isBefore(side) ? a < b : a > b; };
  const auto nearAt = [&](Length at, Length near) {
    for (const auto& e : edges)
      if ((e.from == at || e.to == at) && isInFront(e.near, near)) near = e.near;
    return near;
  };
  for (const auto& e : edges) {
    const bool isHidden = std::any_of(edges.begin(), edges.end(), [&](const auto& o) {
      return o.from < e.to && e.from < o.to && isInFront(o.near, e.near);
    });
    if (!isHidden)
      chain.parts.push_back(
          {e.from, e.to, nearAt(e.from, e.near), nearAt(e.to, e.near), sizeText(pen, e.to - e.from)});
  }
  return chain;
}

/// How far towards a side the deck reaches at the end of an overall size: where its extension line stops.
Length reach(const PlacedDeck& deck, Side side, Length at) {
  const bool alongX = isAcross(side);
  const Extent& e = deck.extent;
  std::optional<Length> best;
  for (const auto& corner : deck.outline.edge.corners) {
    if ((alongX ? corner.x : corner.y) != at) continue;
    const Length near = alongX ? corner.y : corner.x;
    if (!best || (isBefore(side) ? near < *best : near > *best)) best = near;
  }
  if (best) return *best;
  return alongX ? (isBefore(side) ? e.from.y : e.to.y) : (isBefore(side) ? e.from.x : e.to.x);
}

Chain overall(const Pen& pen, const PlacedDeck& deck, Side side, bool isRound) {
  const Extent& e = deck.extent;
  const Length from = isAcross(side) ? e.from.x : e.from.y, to = isAcross(side) ? e.to.x : e.to.y;
  const std::string size = sizeText(pen, to - from);
  return {
      side,
      {{from, to, reach(deck, side, from), reach(deck, side, to), isRound ? acrossText(pen, size) : size}}};
}

/// An edge from one corner to the next, and the way out from it.
struct Edge {
  Place a, b;
  bool isClockwise;  // the corners of its deck
  Length length() const { return distance(a, b); }
  bool isLevel() const { return a.y == b.y; }
  bool isUpright() const { return a.x == b.x; }
  Side outwards() const {
    if (isLevel()) return (b.x > a.x) == isClockwise ? Side::Top : Side::Bottom;
    return (b.y > a.y) == isClockwise ? Side::Right : Side::Left;
  }
};

std::vector<Edge> edgesOf(const std::vector<Place>& corners) {
  const bool clockwise = isClockwise(corners);
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < corners.size(); ++i)
    edges.push_back({corners[i], corners[(i + 1) % corners.size()], clockwise});
  return edges;
}

/// Writes the length of an edge close to it, inside or outside, near its middle. Upright on upright edges.
bool labelEdge(PlanSheet& sheet, const PlacedDeck& deck, const Edge& edge, bool isInside) {
  const Length length = edge.length();
  const ShapedText w = words(sheet.pen, "drawing", sizeText(sheet.pen, length));
  const Size size = edge.isUpright() ? Size{w.height, w.width} : Size{w.width, w.height};
  const Dim gap = tenths(isInside ? 9 : 12), air = tenths(isInside ? 5 : 8);
  const auto share = [&](Dim of, Length part) {
    return Dim{base::mulDiv(of.raw, part.millionths, length.millionths, base::Round::HalfUp)};
  };
  // The way out, of length one, is (b.y - a.y, a.x - b.x) / length for clockwise corners.
  const Length outX = edge.isClockwise ? edge.b.y - edge.a.y : edge.a.y - edge.b.y;
  const Length outY = edge.isClockwise ? edge.a.x - edge.b.x : edge.b.x - edge.a.x;
  const auto absolute = [](Dim d) { return d < Dim{} ? -d : d; };
  // So far from the edge the words' box clears it by the gap.
  const Dim clear = absolute(share(size.w / 2, outX)) + absolute(share(size.h / 2, outY)) + gap;
  const Dim off = isInside ? -clear : clear;
  for (const std::int64_t twelfth : {6, 5, 7, 4, 8, 3, 9}) {
    const auto between = [&](Length a, Length b) {
      return sheet.on(a + Length{(b - a).millionths * twelfth / 12});
    };
    const Point centre = {between(edge.a.x, edge.b.x) + share(off, outX),
                          between(edge.a.y, edge.b.y) + share(off, outY)};
    const Rect r = {{centre.x - size.w / 2, centre.y - size.h / 2}, size};
    if (isInside ? !sheet.isOnBoards(deck, grown(r, air)) : !sheet.isFree(grown(r, air))) continue;
    if (isInside) put(sheet.items, box(grown(r, air), colour(sheet.pen, "tint"), std::nullopt));
    edge.isUpright() ? putUpwards(sheet.items, w, centre) : putCentred(sheet.items, w, centre);
    sheet.take(grown(r, air));
    return true;
  }
  return false;
}

/// Tells the length of an edge that no chain tells: in a line of its own, else inside the deck, close to the
/// edge, else outside. It stands over no other deck.
void tellEdge(PlanSheet& sheet, const PlacedDeck& deck, const Edge& edge, bool mayGrow) {
  if (sheet.on(edge.length()) < Dim::mm(8)) return;
  if (edge.isLevel() || edge.isUpright()) {
    const Place least = {std::min(edge.a.x, edge.b.x), std::min(edge.a.y, edge.b.y)};
    const Place most = {std::max(edge.a.x, edge.b.x), std::max(edge.a.y, edge.b.y)};
    const bool isLevel = edge.isLevel();
    const Length near = isLevel ? least.y : least.x;
    const Measure measure = {isLevel ? least.x : least.y, isLevel ? most.x : most.y, near, near,
                             sizeText(sheet.pen, edge.length())};
    if (writeEdgeLine(sheet, measure, edge.outwards(), mayGrow)) return;
  }
  if (!labelEdge(sheet, deck, edge, true)) labelEdge(sheet, deck, edge, false);
}

/// A length a dimension line has told.
struct Told {
  bool isLevel = false;
  Length length;
  friend bool operator==(const Told&, const Told&) = default;
};

/// Tells the edges whose lengths no chain has told; each length once, but slopes always.
void tellRest(PlanSheet& sheet, const PlacedDeck& deck, std::vector<Told> told, bool mayGrow) {
  for (const Edge& edge : edgesOf(deck.outline.edge.corners)) {
    const Told one = {edge.isLevel(), edge.length()};
    const bool isSloping = !edge.isLevel() && !edge.isUpright();
    if (!isSloping && std::find(told.begin(), told.end(), one) != told.end()) continue;
    tellEdge(sheet, deck, edge, mayGrow);
    told.push_back(one);
  }
}

struct Wish {
  Side first, second;
};

bool writeOverall(PlanSheet& sheet, const PlacedDeck& deck, Wish sides, bool isRound = false) {
  return writeChain(sheet, deck, overall(sheet.pen, deck, sides.first, isRound)) ||
         writeChain(sheet, deck, overall(sheet.pen, deck, sides.second, isRound));
}

void dimensionPolygon(PlanSheet& sheet, const PlacedDeck& deck, Wish across, Wish upright, bool mayGrow) {
  const auto& corners = deck.outline.edge.corners;
  std::vector<Told> told;
  if (corners.size() > 4)
    for (const Side side : {Side::Top, Side::Bottom, Side::Left, Side::Right}) {
      const Chain chain = seenFrom(sheet.pen, corners, side);
      if (chain.parts.size() < 2 || chain.parts.size() > 6 || !writeChain(sheet, deck, chain)) continue;
      for (const auto& m : chain.parts) told.push_back({isAcross(side), m.to - m.from});
      Wish& wish = isAcross(side) ? across : upright;
      if (wish.first == side) std::swap(wish.first, wish.second);
    }
  if (writeOverall(sheet, deck, across)) told.push_back({true, deck.extent.width()});
  if (writeOverall(sheet, deck, upright)) told.push_back({false, deck.extent.height()});
  tellRest(sheet, deck, std::move(told), mayGrow);
}

}  // namespace

void dimensionDecks(PlanSheet& sheet, bool mayGrow) {
  if (sheet.placed.empty()) return;
  Extent all = sheet.placed[0].extent;
  for (const auto& p : sheet.placed)
    all = {{std::min(all.from.x, p.extent.from.x), std::min(all.from.y, p.extent.from.y)},
           {std::max(all.to.x, p.extent.to.x), std::max(all.to.y, p.extent.to.y)}};
  for (const auto& deck : sheet.placed) {
    const Extent& e = deck.extent;
    // The outer side of the whole drawing first.
    Wish across = {Side::Top, Side::Bottom}, upright = {Side::Left, Side::Right};
    if (e.from.y - all.from.y > all.to.y - e.to.y) std::swap(across.first, across.second);
    if (e.from.x - all.from.x > all.to.x - e.to.x) std::swap(upright.first, upright.second);
    if (deck.outline.edge.isCircle()) writeOverall(sheet, deck, across, true);
    else if (deck.isStairs)  // the treads tell the going
      writeOverall(sheet, deck, deck.up == Side::Top || deck.up == Side::Bottom ? across : upright);
    else dimensionPolygon(sheet, deck, across, upright, mayGrow);
  }
}

}  // namespace drawings
