#include "drawings/plans/strip_drawer.h"

#include "drawings/plans/plan_parts.h"

#include <algorithm>

namespace drawings {

using base::Length;

StripsDrawer::StripsDrawer(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck,
                           const StripDeck& strips)
    : sheet_(sheet),
      placed_(placed),
      deck_(deck),
      strips_(strips),
      bands_(bandsOf(placed, deck, strips.edge)),
      out_(strips.edge.wayOut.value_or(model::Place{})) {
  const auto own = model::extentOf(*model::outlineOf(deck)).from;
  out_ = {out_.x - own.x + placed.extent.from.x, out_.y - own.y + placed.extent.from.y};
  const Length along = bands_.alongX ? out_.x : out_.y;
  const Length low = bands_.alongX ? placed.extent.from.x : placed.extent.from.y;
  const Length high = bands_.alongX ? placed.extent.to.x : placed.extent.to.y;
  leavesHigh_ = high - along <= along - low;
}

Point StripsDrawer::point(Length along, Length across) const {
  return bands_.alongX ? Point{sheet_.on(along), sheet_.on(across)}
                       : Point{sheet_.on(across), sheet_.on(along)};
}

void StripsDrawer::fill(const Band& band, const char* name) {
  Path path = bandPath(sheet_, placed_.outline, band, bands_.alongX);
  if (path.steps.empty()) return;
  path.fill = colour(sheet_.pen, name);
  put(sheet_.items, std::move(path));
}

void StripsDrawer::fill() {
  if (bands_.bands.empty()) {
    const Length low = bands_.alongX ? placed_.extent.from.y : placed_.extent.from.x;
    const Length high = bands_.alongX ? placed_.extent.to.y : placed_.extent.to.x;
    fill({low, high}, "tint");
  }
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) fill(bands_.bands[i], fillOf(i));
  drawDeckLines(sheet_, placed_, deck_, placed_.isStairs);
  const Stroke border = {colour(sheet_.pen, "ink"), hundredthsPt(90), {}, false};
  Path lines;
  const Length low = bands_.alongX ? placed_.extent.from.y : placed_.extent.from.x;
  for (const auto& band : bands_.bands) {
    const Length at = band.from;
    if (at <= low) continue;
    for (const auto& s : model::stretches(placed_.outline, at, bands_.alongX)) {
      moveTo(lines, point(s.from, at));
      lineTo(lines, point(s.to, at));
    }
  }
  lines.stroke = border;
  if (!lines.steps.empty()) put(sheet_.items, std::move(lines));
  if (!bands_.bands.empty()) drawCorner();
}

void StripsDrawer::drawCorner() {
  const Band& band = bands_.bands.front();
  const bool isLow = bands_.startsLow;
  const Length hair{1'000'000};
  const Length across = isLow ? band.from + hair : band.to - hair;
  const auto line = model::stretches(placed_.outline, across, bands_.alongX);
  if (line.empty()) return;
  const Length end = leavesHigh_ ? line.front().from : line.back().to;
  const Point at = point(end, isLow ? band.from : band.to);
  const Dim leg = std::min(Dim::mm(3), sheet_.on(band.to - band.from));
  const Dim along = leavesHigh_ ? leg : -leg, over = isLow ? leg : -leg;
  const auto beside = [&](Dim a, Dim b) {
    return bands_.alongX ? Point{at.x + a, at.y + b} : Point{at.x + b, at.y + a};
  };
  put(sheet_.items,
      polygon({at, beside(along, {}), beside({}, over)}, colour(sheet_.pen, "ink"), std::nullopt));
  const Point far = beside(along, over);
  sheet_.take({{std::min(at.x, far.x), std::min(at.y, far.y)}, {leg, leg}});
}

std::optional<Point> StripsDrawer::spot(const Band& band, Size size, From from) const {
  const Dim across = sheet_.on(band.to - band.from), own = bands_.alongX ? size.h : size.w,
            along = bands_.alongX ? size.w : size.h;
  if (own > across) return std::nullopt;
  const auto line = model::stretches(placed_.outline, middleOf(band), bands_.alongX);
  if (line.empty()) return std::nullopt;
  const Dim low = sheet_.on(line.front().from), high = sheet_.on(line.back().to) - along;
  if (high < low) return std::nullopt;
  constexpr int steps = 40;
  const Dim inset = std::min(tenths(40), (high - low) / 2);
  for (int i = 0; i <= steps; ++i) {
    Dim at;
    if (from == From::Middle)
      at = low + (high - low) * (steps / 2 + (i % 2 == 0 ? i / 2 : -(i + 1) / 2)) / steps;
    else if (leavesHigh_) at = low + inset + (high - low - inset) * i / steps;
    else at = high - inset - (high - low - inset) * i / steps;
    const Dim over = sheet_.on(middleOf(band)) - own / 2;
    const Point corner = bands_.alongX ? Point{at, over} : Point{over, at};
    if (sheet_.isOnBoards(placed_, {corner, size})) return corner;
  }
  return std::nullopt;
}

Side StripsDrawer::sideOfWayOut() const {
  const auto& box = placed_.extent;
  const Length toLeft = out_.x - box.from.x, toRight = box.to.x - out_.x, toTop = out_.y - box.from.y,
               toBottom = box.to.y - out_.y;
  const Length least = std::min({toLeft, toRight, toTop, toBottom});
  return least == toBottom  ? Side::Bottom
         : least == toRight ? Side::Right
         : least == toTop   ? Side::Top
                            : Side::Left;
}

void StripsDrawer::drawWayOut() {
  const Side side = sideOfWayOut();
  const bool isUpright = side == Side::Top || side == Side::Bottom,
             isOutHigh = side == Side::Bottom || side == Side::Right;
  const Rect area = sheet_.on(placed_.extent);
  const Dim low = isUpright ? area.at.x : area.at.y, high = isUpright ? right(area) : bottom(area);
  // At a corner that the next deck shares nobody could tell whose arrow it is.
  const Dim clear = std::min(Dim::mm(5), (high - low) / 2);
  const Dim wanted = isUpright ? sheet_.on(out_).x : sheet_.on(out_).y;
  const Dim middle = std::clamp(wanted, low + clear, high - clear);

  struct Exit {
    Dim at, edge, depth;  // along the side, across it, and how far the boards reach behind it
  };
  const auto exitAt = [&](Dim at) -> std::optional<Exit> {
    const auto line = model::stretches(placed_.outline.edge, sheet_.onSite(at), !isUpright);
    if (line.empty()) return std::nullopt;
    const auto& boards = isOutHigh ? line.back() : line.front();
    return Exit{at, sheet_.on(isOutHigh ? boards.to : boards.from), sheet_.on(boards.to - boards.from)};
  };
  const auto from = [&](const Exit& exit, Dim by) {
    const Dim across = isOutHigh ? exit.edge + by : exit.edge - by;
    return isUpright ? Point{exit.at, across} : Point{across, exit.at};
  };
  const auto own = exitAt(middle);
  if (!own) return;

  const Dim off = tenths(12), length = Dim::mm(7), half = tenths(15);
  const Rect beside = grown(around({from(*own, off), {}}, {from(*own, off + length), {}}), tenths(4));
  const Rect room = isUpright
                        ? Rect{{beside.at.x - half, beside.at.y}, {beside.size.w + half * 2, beside.size.h}}
                        : Rect{{beside.at.x, beside.at.y - half}, {beside.size.w, beside.size.h + half * 2}};
  if (sheet_.isFree(room)) {
    arrow(from(*own, off), from(*own, off + length));
    sheet_.take(room);
    letter(from(*own, off + length / 2), isUpright);
    return;
  }
  // The next deck lies there: the arrow stays on its own boards, its tip at the edge.
  constexpr int tries = 12;
  for (int i = 0; i <= tries; ++i) {
    const auto exit = exitAt(middle + Dim::mm(1) * (i % 2 == 0 ? i / 2 : -(i + 1) / 2));
    if (!exit) continue;
    const Dim inside = std::clamp(exit->depth * 9 / 20, tenths(20), Dim::mm(6)), rim = tenths(6);
    const Rect patch = isUpright
                           ? Rect{{exit->at - half, std::min(from(*exit, -inside).y, from(*exit, -rim).y)},
                                  {half * 2, inside - rim}}
                           : Rect{{std::min(from(*exit, -inside).x, from(*exit, -rim).x), exit->at - half},
                                  {inside - rim, half * 2}};
    if (i < tries && !sheet_.isOnBoards(placed_, patch)) continue;
    put(sheet_.items, box(patch, colour(sheet_.pen, "white"), std::nullopt));
    arrow(from(*exit, -inside), from(*exit, -rim));
    sheet_.take(grown(patch, tenths(4)));
    return;
  }
}

void StripsDrawer::arrow(Point from, Point to) {
  const auto accent = colour(sheet_.pen, "accent");
  const Dim head = Dim::mm(3), half = tenths(15);
  const bool isFlat = from.y == to.y;
  const Dim back = (isFlat ? to.x > from.x : to.y > from.y) ? -head : head;
  const Point base = isFlat ? Point{to.x + back, to.y} : Point{to.x, to.y + back};
  put(sheet_.items, drawings::line(from, base, {accent, hundredthsPt(260), {}, false}));
  put(sheet_.items,
      isFlat ? polygon({to, {base.x, base.y - half}, {base.x, base.y + half}}, accent, std::nullopt)
             : polygon({to, {base.x - half, base.y}, {base.x + half, base.y}}, accent, std::nullopt));
}

void StripsDrawer::letter(Point middle, bool isUpright) {
  auto span = typeset::spanIn(sheet_.pen.theme, "drawing", letterOf(placed_.index));
  span.face = model::Face::SansBold;
  span.colour = colour(sheet_.pen, "accent");
  const ShapedText w = words(sheet_.pen, span);
  const Dim air = tenths(26);
  for (const bool isAfter : {true, false}) {
    const Point at =
        isUpright ? Point{isAfter ? middle.x + air : middle.x - air - w.width, middle.y - w.height / 2}
                  : Point{middle.x - w.width / 2, isAfter ? middle.y + air : middle.y - air - w.height};
    if (!sheet_.isFree(grown({at, {w.width, w.height}}, tenths(5)))) continue;
    put(sheet_.items, w, {at.x, at.y + w.height});
    sheet_.take({at, {w.width, w.height}});
    return;
  }
}

}  // namespace drawings
