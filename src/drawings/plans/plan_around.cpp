// What lies around the decks: house, water, trees as the job draws them, and what it tells of each edge.
#include "base/geometry.h"
#include "drawings/pen/hatch.h"
#include "drawings/pen/turn.h"
#include "drawings/plans/plan_parts.h"

#include <algorithm>

namespace drawings {

namespace {

using Corners = std::vector<Point>;
using model::Surrounding;

const char* wordOf(Surrounding kind) {
  switch (kind) {
    case Surrounding::House:
      return "around.house";
    case Surrounding::Wall:
      return "around.wall";
    case Surrounding::Water:
      return "around.water";
    case Surrounding::Tree:
      return "around.tree";
    case Surrounding::Path:
      return "around.path";
  }
  throw std::logic_error("internal error: no such surrounding");
}

/// So much of a colour of the theme, the rest white.
model::Colour softened(const Pen& pen, const char* name, int percent) {
  const auto part = [&](std::uint8_t channel) {
    return static_cast<std::uint8_t>(255 - (255 - channel) * percent / 100);
  };
  const auto c = colour(pen, name);
  return {part(c.r), part(c.g), part(c.b)};
}

model::Colour fillOf(const Pen& pen, Surrounding kind) {
  switch (kind) {
    case Surrounding::House:
      return softened(pen, "wall", 30);
    case Surrounding::Wall:
      return colour(pen, "wall");
    case Surrounding::Water:
      return softened(pen, "notice", 14);
    case Surrounding::Tree:
      return colour(pen, "white");
    case Surrounding::Path:
      return softened(pen, "rule", 20);
  }
  throw std::logic_error("internal error: no such surrounding");
}

Point onCircle(Point centre, Dim radius, int degrees) {
  const Turn turn = turnBy(degrees);
  const auto off = [&](std::int64_t part) {
    return Dim{base::mulDiv(radius.raw, part, Turn::unit, base::Round::HalfUp)};
  };
  return {centre.x + off(turn.cos), centre.y + off(turn.sin)};
}

Corners cornersOf(const PlanSheet& sheet, const Loop& loop) {
  Corners corners;
  for (const auto& corner : loop.corners) corners.push_back(sheet.on(corner));
  if (!loop.isCircle()) return corners;
  constexpr int degrees = 6;
  const Point centre = sheet.on(loop.centre);
  const Dim radius = sheet.on(loop.radius);
  for (int at = 0; at < 360; at += degrees) corners.push_back(onCircle(centre, radius, at));
  return corners;
}

/// Of a line from a to b, where it crosses this x or y.
Point crossing(Point a, Point b, Dim at, bool isX) {
  const Dim along = isX ? b.x - a.x : b.y - a.y, across = isX ? b.y - a.y : b.x - a.x;
  const Dim before = at - (isX ? a.x : a.y);
  const bool isBack = along < Dim{};
  const Dim by{base::mulDiv(across.raw, isBack ? -before.raw : before.raw, isBack ? -along.raw : along.raw,
                            base::Round::HalfUp)};
  return isX ? Point{at, a.y + by} : Point{a.x + by, at};
}

/// What of a closed line lies within a rectangle, side by side of it.
Corners clipped(Corners corners, const Rect& r) {
  struct Border {
    Dim at;
    bool isX, isHigh;
    bool keeps(Point p) const {
      const Dim value = isX ? p.x : p.y;
      return isHigh ? value <= at : value >= at;
    }
  };
  for (const auto& border : {Border{r.at.x, true, false}, Border{right(r), true, true},
                             Border{r.at.y, false, false}, Border{bottom(r), false, true}}) {
    Corners kept;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point a = corners[i], b = corners[(i + 1) % corners.size()];
      if (border.keeps(a)) kept.push_back(a);
      if (border.keeps(a) != border.keeps(b)) kept.push_back(crossing(a, b, border.at, border.isX));
    }
    corners = std::move(kept);
  }
  return corners;
}

Rect boundsOf(const Corners& corners) {
  Rect r{corners.front(), {}};
  for (const Point p : corners) r = drawings::around(r, {p, {}});
  return r;
}

/// A thing of the site on the sheet.
class Thing {
 public:
  Thing(const PlanSheet& sheet, const model::Around& one, model::Place by, const Rect& visible)
      : pen_(sheet.pen), one_(one), visible_(visible) {
    const auto outline = model::outlineOf(one);
    if (!outline) return;
    whole_ = cornersOf(sheet, model::moved(*outline, by).edge);
    seen_ = clipped(whole_, visible);
  }

  /// Slivers of what lies beyond the drawing would only puzzle.
  bool isSeen() const {
    if (seen_.size() < 3) return false;
    const auto narrow = [](const Rect& r) { return std::min(r.size.w, r.size.h); };
    return narrow(boundsOf(seen_)) >= std::min(Dim::mm(2), narrow(boundsOf(whole_)));
  }
  Rect bounds() const { return boundsOf(seen_); }

  void draw(Items& items) const {
    put(items, polygon(seen_, fillOf(pen_, one_.kind), std::nullopt));
    if (one_.kind == Surrounding::Water) putWaves(items);
    if (one_.kind == Surrounding::Tree) putCrown(items);
    if (one_.kind != Surrounding::Path) putEdge(items);
  }

  /// Its word near its middle, where that is free.
  void name(PlanSheet& sheet, Items& items) const {
    const auto text = one_.name.empty() ? pen_.language(wordOf(one_.kind)) : one_.name;
    const ShapedText w = legible(pen_, "drawing", text);
    const Dim rim = tenths(8), step = Dim::mm(2);
    const Rect all = bounds();
    const Point middle = {all.at.x + all.size.w / 2, all.at.y + all.size.h / 2};
    std::optional<Rect> best;
    const auto awayOf = [&](const Rect& r) {
      const Dim x = r.at.x + r.size.w / 2 - middle.x, y = r.at.y + r.size.h / 2 - middle.y;
      return std::max(x, -x) + std::max(y, -y);
    };
    for (Dim y = all.at.y; y + w.height + rim * 2 <= bottom(all); y += step) {
      for (Dim x = all.at.x; x + w.width + rim * 2 <= right(all); x += step) {
        const Rect r = {{x, y}, {w.width + rim * 2, w.height + rim * 2}};
        if ((!best || awayOf(r) < awayOf(*best)) && holds(r) && sheet.isFree(r)) best = r;
      }
    }
    if (!best) return;
    put(items, box(*best, fillOf(pen_, one_.kind), std::nullopt));
    put(items, w, {best->at.x + rim, bottom(*best) - rim});
    sheet.take(*best);
  }

 private:
  Stroke thin(std::int64_t hundredths) const {
    return {colour(pen_, "rule"), hundredthsPt(hundredths), {}, true};
  }

  bool holds(const Rect& r) const {
    const auto inPage = [](Point p) { return base::Pt{p.x.raw, p.y.raw}; };
    std::vector<base::Pt> outline, own;
    for (const Point p : whole_) outline.push_back(inPage(p));
    for (const Point p :
         {r.at, Point{right(r), r.at.y}, Point{right(r), bottom(r)}, Point{r.at.x, bottom(r)}})
      own.push_back(inPage(p));
    return visible_.at.x <= r.at.x && visible_.at.y <= r.at.y && right(r) <= right(visible_) &&
           bottom(r) <= bottom(visible_) && base::isWithin(own, outline);
  }

  /// Where it ends, not where the drawing does.
  void putEdge(Items& items) const {
    Path path;
    for (std::size_t i = 0; i < seen_.size(); ++i) {
      const Point a = seen_[i], b = seen_[(i + 1) % seen_.size()];
      const auto areBoth = [&](Dim at, bool isX) {
        return isX ? a.x == at && b.x == at : a.y == at && b.y == at;
      };
      if (areBoth(visible_.at.x, true) || areBoth(right(visible_), true) || areBoth(visible_.at.y, false) ||
          areBoth(bottom(visible_), false))
        continue;
      moveTo(path, a);
      lineTo(path, b);
    }
    path.stroke = one_.kind == Surrounding::House ? Stroke{colour(pen_, "wall"), hundredthsPt(200), {}, false}
                                                  : thin(60);
    if (!path.steps.empty()) put(items, std::move(path));
  }

  void putWaves(Items& items) const {
    const Dim half = tenths(35), high = tenths(11), pitch = Dim::mm(6);
    const Rect all = bounds();
    Path path;
    bool isOdd = false;
    for (Dim y = all.at.y + high * 2; y + high <= bottom(all); y += pitch, isOdd = !isOdd) {
      for (Dim x = all.at.x + (isOdd ? half * 2 : high); x + half * 2 <= right(all); x += half * 5) {
        if (!holds({{x, y - high}, {half * 2, high * 2}})) continue;
        moveTo(path, {x, y});
        for (const Dim up : {-high, high}) {
          const Point from = path.steps.back().to, to = {from.x + half, y};
          path.steps.push_back(
              {typeset::Step::Kind::Curve, {from.x + half / 3, y + up}, {to.x - half / 3, y + up}, to});
        }
      }
    }
    path.stroke = thin(50);
    if (!path.steps.empty()) put(items, std::move(path));
  }

  /// Twelve twigs around a trunk.
  void putCrown(Items& items) const {
    const Rect all = boundsOf(whole_);
    const Point middle = {all.at.x + all.size.w / 2, all.at.y + all.size.h / 2};
    const Dim radius = std::min(all.size.w, all.size.h) / 2;
    Path twigs;
    for (int at = 0; at < 360; at += 30) {
      const Point from = onCircle(middle, radius * 38 / 100, at),
                  until = onCircle(middle, radius * 70 / 100, at);
      if (!isVisible(from) || !isVisible(until)) continue;
      moveTo(twigs, from);
      lineTo(twigs, until);
    }
    twigs.stroke = thin(60);
    if (!twigs.steps.empty()) put(items, std::move(twigs));
    if (isVisible(middle)) put(items, circle(middle, radius * 16 / 100, colour(pen_, "rule"), std::nullopt));
  }

  bool isVisible(Point p) const {
    return visible_.at.x <= p.x && p.x <= right(visible_) && visible_.at.y <= p.y && p.y <= bottom(visible_);
  }

  const Pen& pen_;
  const model::Around& one_;
  Rect visible_;
  Corners whole_, seen_;
};

std::vector<Thing> thingsOf(const PlanSheet& sheet, const std::vector<model::Around>& around, model::Place by,
                            const Rect& visible) {
  std::vector<Thing> things;
  for (const auto& one : around) {
    Thing thing(sheet, one, by, visible);
    if (thing.isSeen()) things.push_back(std::move(thing));
  }
  return things;
}

const char* wordOf(model::EdgeKind kind) {
  switch (kind) {
    case model::EdgeKind::Wall:
      return "strips.wall";
    case model::EdgeKind::Water:
      return "strips.water";
    case model::EdgeKind::Drop:
      return "strips.drop";
    case model::EdgeKind::Open:
      break;
  }
  return nullptr;
}

/// The side of the page that a side of the site looks to: quarter turns clockwise from the top.
int quarterOf(model::Compass side, int north) {
  return ((static_cast<int>(side) * 90 + north + 45) / 90 % 4 + 4) % 4;
}

}  // namespace

void makeRoomAround(PlanSheet& sheet, const std::vector<model::Around>& around, model::Place by,
                    const Rect& rim) {
  for (const auto& thing : thingsOf(sheet, around, by, rim)) sheet.reach(thing.bounds());
}

void drawAround(PlanSheet& sheet, const std::vector<model::Around>& around, model::Place by,
                const Rect& visible) {
  Items below;
  const auto things = thingsOf(sheet, around, by, visible);
  for (const auto& thing : things) thing.draw(below);
  for (const auto& thing : things) thing.name(sheet, below);
  sheet.items.insert(sheet.items.begin(), below.begin(), below.end());
}

std::string aroundText(const Pen& pen, const std::vector<model::Around>& around) {
  std::string all;
  for (const auto& one : around)
    all += (all.empty() ? "" : ", ") + (one.name.empty() ? pen.language(wordOf(one.kind)) : one.name);
  return all.empty() ? "" : pen.language("plan.around", {{"things", all}});
}

void drawEdges(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck,
               std::optional<int> north) {
  const Rect area = sheet.on(placed.extent);
  for (const auto& edge : deck.edges) {
    const char* word = wordOf(edge.kind);
    if (word == nullptr) continue;
    const int quarter = quarterOf(edge.side, north.value_or(0));
    const bool isFlat = quarter % 2 == 0, isLow = quarter == 0 || quarter == 3;
    const Dim thick = tenths(16), off = tenths(10), clear = tenths(4);
    const Dim length = isFlat ? area.size.w : area.size.h;
    const Dim across = isFlat ? (isLow ? area.at.y - off - thick : bottom(area) + off)
                              : (isLow ? area.at.x - off - thick : right(area) + off);
    const Rect bar =
        isFlat ? Rect{{area.at.x, across}, {length, thick}} : Rect{{across, area.at.y}, {thick, length}};
    const ShapedText w = legible(sheet.pen, "drawing", sheet.pen.language(word));
    const bool isWall = edge.kind == model::EdgeKind::Wall;
    if (sheet.isFree(bar)) {
      put(sheet.items, box(bar, colour(sheet.pen, isWall ? "wall" : "white"), std::nullopt));
      if (!isWall)
        putHatched(sheet.items, bar, edge.kind == model::EdgeKind::Water ? Hatch::Level : Hatch::Slash,
                   sheet.pen);
      sheet.take(bar);
    }
    const Dim beyond = isFlat ? w.height : w.width;
    const Dim at = isLow ? across - clear * 2 - beyond : across + thick + clear * 2;
    for (const int eighth : {4, 2, 6, 1, 7}) {
      const Dim along =
          (isFlat ? area.at.x : area.at.y) + length * eighth / 8 - (isFlat ? w.width : w.height) / 2;
      const Rect room = grown(
          isFlat ? Rect{{along, at}, {w.width, w.height}} : Rect{{at, along}, {w.width, w.height}}, clear);
      if (!sheet.isFree(room)) continue;
      put(sheet.items, w, {room.at.x + clear, bottom(room) - clear});
      sheet.take(room);
      break;
    }
  }
}

}  // namespace drawings
