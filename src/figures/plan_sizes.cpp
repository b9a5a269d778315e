// Dimension lines: 4 to 5 mm off the edge, 45-degree ticks, the figure in a gap of the line.
#include "figures/plan_parts.h"
#include "figures/plan_words.h"

#include <algorithm>

namespace figures {

using base::Length;
using model::Place;

namespace {

/// One length to be shown beside a deck. 'from' and 'to' lie along the dimension line.
struct Measure {
  Length from, to;
  Length nearFrom, nearTo;  // where the edge it measures lies, across the line, at both ends
  std::string text;
};

/// Measures in one line on one side of a deck.
struct Chain {
  Side side = Side::Top;
  std::vector<Measure> parts;
};

bool isAcross(Side side) { return side == Side::Top || side == Side::Bottom; }  // the line runs along x
bool isBefore(Side side) { return side == Side::Top || side == Side::Left; }

class ChainWriter {
 public:
  ChainWriter(PlanSheet& sheet, const PlacedDeck& deck, const Chain& chain, Dim off)
      : sheet_(sheet), chain_(chain), alongX_(isAcross(chain.side)) {
    const Rect area = sheet.on(deck.extent);
    const Dim edge = alongX_ ? (isBefore(chain.side) ? area.at.y : bottom(area))
                             : (isBefore(chain.side) ? area.at.x : right(area));
    at_ = isBefore(chain.side) ? edge - off : edge + off;
  }

  /// Draws the chain if its figures fit and nothing is in the way.
  bool write() {
    for (const auto& m : chain_.parts)
      if (!prepare(m)) return false;
    for (const auto& r : rooms_)
      if (!sheet_.isFree(r)) return false;
    for (const auto& r : extensions_)
      if (!sheet_.isFree(r, true)) return false;
    for (auto& path : paths_) put(sheet_.items, std::move(path));
    for (const auto& f : figures_)
      alongX_ ? putCentred(sheet_.items, f.words, f.at) : putUpwards(sheet_.items, f.words, f.at);
    for (const auto& r : rooms_) sheet_.take(r);
    for (const auto& r : extensions_) sheet_.takeThin(r);
    return true;
  }

 private:
  struct Figure {
    Words words;
    Point at;
  };

  Point point(Dim along, Dim across) const { return alongX_ ? Point{along, across} : Point{across, along}; }
  Rect rect(Dim from, Dim to, Dim near, Dim far) const {
    return around({point(from, near), {}}, {point(to, far), {}});
  }
  void draw(Dim fromAlong, Dim fromAcross, Dim toAlong, Dim toAcross, std::int64_t width) {
    const Stroke s = {colour(sheet_.pen, "ink"), hundredthsPt(width), {}, false};
    paths_.push_back(line(point(fromAlong, fromAcross), point(toAlong, toAcross), s));
  }

  bool prepare(const Measure& m) {
    const Dim from = sheet_.on(m.from), to = sheet_.on(m.to);
    const Words w = words(sheet_.pen, "drawing", m.text);
    const Dim gap = tenths(10), half = tenths(18);
    const bool isInside = to - from >= w.width + gap * 2 + tenths(30);
    if (!isInside && chain_.parts.size() > 1) return false;
    if (isInside) {
      const Dim middle = (from + to) / 2, clear = w.width / 2 + gap;
      draw(from, at_, middle - clear, at_, 40);
      draw(middle + clear, at_, to, at_, 40);
      figures_.push_back({w, point(middle, at_)});
      rooms_.push_back(rect(from, to, at_ - half, at_ + half));
    } else {  // the figure stands beside the line: to its right, or above it
      const Dim beyond = tenths(18) + w.width / 2;
      const Dim centre = alongX_ ? to + beyond : from - beyond;
      draw(from, at_, to, at_, 40);
      figures_.push_back({w, point(centre, at_)});
      const Dim end = w.width / 2 + gap;
      rooms_.push_back(
          rect(std::min(from, centre - end), std::max(to, centre + end), at_ - half, at_ + half));
    }
    addEnd(from, sheet_.on(m.nearFrom));
    addEnd(to, sheet_.on(m.nearTo));
    return true;
  }

  /// Tick and extension line.
  void addEnd(Dim along, Dim near) {
    const Dim tick = tenths(8);
    const Stroke s = {colour(sheet_.pen, "ink"), hundredthsPt(80), {}, false};
    const Point p = point(along, at_);
    paths_.push_back(line({p.x - tick, p.y + tick}, {p.x + tick, p.y - tick}, s));
    extensions_.push_back(rect(along - tick, along + tick, at_ - tick, at_ + tick));
    const Dim start = isBefore(chain_.side) ? near - tick : near + tick;
    const Dim end = isBefore(chain_.side) ? at_ - tick : at_ + tick;
    draw(along, start, along, end, 25);
    extensions_.push_back(rect(along - tenths(3), along + tenths(3), start, end));
  }

  PlanSheet& sheet_;
  const Chain& chain_;
  bool alongX_;
  Dim at_;
  std::vector<Path> paths_;
  std::vector<Figure> figures_;
  std::vector<Rect> rooms_, extensions_;
};

bool writeChain(PlanSheet& sheet, const PlacedDeck& deck, const Chain& chain) {
  for (const std::int64_t off : {45, 95, 145, 195, 245})
    if (ChainWriter(sheet, deck, chain, tenths(off)).write()) return true;
  return false;
}

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

/// Writes the length of an edge beside its middle, on the outside.
void labelEdge(PlanSheet& sheet, Place a, Place b, bool clockwise) {
  const Length length = distance(a, b);
  if (sheet.on(length) < Dim::mm(8)) return;
  const Words w = words(sheet.pen, "drawing", sizeText(sheet.pen, length));
  const Point middle = sheet.on(Place{{(a.x + b.x).millionths / 2}, {(a.y + b.y).millionths / 2}});
  const auto outwards = [&](Length part, Dim off) {
    const Dim d = {base::mulDiv(off.raw, part.millionths, length.millionths, base::Round::HalfUp)};
    return clockwise ? d : -d;
  };
  for (const std::int64_t more : {12, 30, 50}) {
    // Far enough that the words' box clears the edge, plus a little.
    const Point centre = {middle.x + outwards(b.y - a.y, w.width / 2 + tenths(more)),
                          middle.y + outwards(a.x - b.x, w.height / 2 + tenths(more))};
    const Rect r = {{centre.x - w.width / 2, centre.y - w.height / 2}, {w.width, w.height}};
    if (!sheet.isFree(grown(r, tenths(6)))) continue;
    putCentred(sheet.items, w, centre);
    sheet.take(r);
    return;
  }
}

void labelSlopes(PlanSheet& sheet, const std::vector<Place>& corners) {
  const bool clockwise = isClockwise(corners);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Place a = corners[i], b = corners[(i + 1) % corners.size()];
    if (a.x != b.x && a.y != b.y) labelEdge(sheet, a, b, clockwise);
  }
}

/// A length a dimension line has told.
struct Told {
  bool isLevel = false;
  Length length;
  friend bool operator==(const Told&, const Told&) = default;
};

/// Labels the upright and level edges whose lengths nothing has told.
void labelRest(PlanSheet& sheet, const PlacedDeck& deck, const std::vector<Told>& told) {
  const auto& corners = deck.outline.edge.corners;
  const bool clockwise = isClockwise(corners);
  std::vector<Told> done = told;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Place a = corners[i], b = corners[(i + 1) % corners.size()];
    const Told edge = {a.y == b.y, distance(a, b)};
    const bool isSloping = a.x != b.x && a.y != b.y;
    if (isSloping || std::find(done.begin(), done.end(), edge) != done.end()) continue;
    labelEdge(sheet, a, b, clockwise);
    done.push_back(edge);
  }
}

struct Wish {
  Side first, second;
};

bool writeOverall(PlanSheet& sheet, const PlacedDeck& deck, Wish sides, bool isRound = false) {
  return writeChain(sheet, deck, overall(sheet.pen, deck, sides.first, isRound)) ||
         writeChain(sheet, deck, overall(sheet.pen, deck, sides.second, isRound));
}

void dimensionPolygon(PlanSheet& sheet, const PlacedDeck& deck, Wish across, Wish upright) {
  const auto& corners = deck.outline.edge.corners;
  std::vector<Told> told;
  labelSlopes(sheet, corners);
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
  labelRest(sheet, deck, told);
}

}  // namespace

void dimensionDecks(PlanSheet& sheet) {
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
    else dimensionPolygon(sheet, deck, across, upright);
  }
}

}  // namespace figures
