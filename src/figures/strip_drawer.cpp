#include "figures/strip_drawer.h"

#include "figures/plan_parts.h"

#include <algorithm>

namespace figures {

using base::Length;

namespace {

const Dim roundRadius = tenths(24), patchRim = tenths(8);

Size grownSize(Size s, Dim by) { return {s.w + by, s.h + by}; }

}  // namespace

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

void StripsDrawer::fill() {
  if (bands_.bands.empty()) {
    const Length low = bands_.alongX ? placed_.extent.from.y : placed_.extent.from.x;
    const Length high = bands_.alongX ? placed_.extent.to.y : placed_.extent.to.x;
    fill({low, high}, "tint");
  }
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) fill(bands_.bands[i], i % 2 == 0 ? "tint" : "white");
  drawDeckLines(sheet_, placed_, deck_, placed_.isStairs);
  const Stroke border = {colour(sheet_.pen, "ink"), hundredthsPt(90), {}, false};
  Path lines;
  for (std::size_t i = 1; i < bands_.bands.size(); ++i) {
    const Length at = std::max(bands_.bands[i - 1].from, bands_.bands[i].from);
    for (const auto& s : model::stretches(placed_.outline, at, bands_.alongX)) {
      moveTo(lines, point(s.from, at));
      lineTo(lines, point(s.to, at));
    }
  }
  lines.stroke = border;
  if (!lines.steps.empty()) put(sheet_.items, std::move(lines));
  if (!bands_.bands.empty()) drawCorner();
}

void StripsDrawer::number() {
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
    const Words w = numeral(std::to_string(i + 1));
    if (!numberInside(bands_.bands[i], w)) numberOutside(bands_.bands[i], std::to_string(i + 1));
  }
}

void StripsDrawer::tell() {
  for (std::size_t i = 0; i < bands_.bands.size() && i < strips_.starts.size(); ++i) {
    if (strips_.starts[i].empty()) continue;
    const Band& band = bands_.bands[i];
    const Words start = words(sheet_.pen, "drawing", strips_.starts[i]);
    const Words litres = boldWords(sheet_.pen, "drawing", strips_.litres[i]);
    const Dim gap = Dim::mm(2), lead = tenths(14);
    const bool isFlat = bands_.alongX;
    const Size flat = {start.width + gap + litres.width, start.height};
    const Size tall = {std::max(start.width, litres.width), start.height + lead + litres.height};
    const Size size = isFlat ? flat : tall;
    const Size whole = grownSize(size, patchRim * 2);
    if (isFlat && i % static_cast<std::size_t>(everyNth(whole.h)) != 0) continue;
    auto at = spot(band, whole, From::Middle, isFlat);
    const bool isInside = at.has_value();
    if (!at && !isFlat) at = spotBeside(band, whole);
    if (!at) continue;
    const Rect patch = {*at, grownSize(size, patchRim * 2)};
    if (isInside)
      put(sheet_.items, box(patch, colour(sheet_.pen, i % 2 == 0 ? "tint" : "white"), std::nullopt));
    const Point corner = {at->x + patchRim, at->y + patchRim};
    if (isFlat) {
      put(sheet_.items, start, {corner.x, corner.y + start.height});
      put(sheet_.items, litres, {corner.x + start.width + gap, corner.y + start.height});
    } else {
      put(sheet_.items, start, {corner.x + (size.w - start.width) / 2, corner.y + start.height});
      put(sheet_.items, litres, {corner.x + (size.w - litres.width) / 2, corner.y + size.h});
    }
    sheet_.take(patch);
  }
}

void StripsDrawer::drawWayOut() {
  const auto& box = placed_.extent;
  const Length toLeft = out_.x - box.from.x, toRight = box.to.x - out_.x, toTop = out_.y - box.from.y,
               toBottom = box.to.y - out_.y;
  const Length least = std::min({toLeft, toRight, toTop, toBottom});
  const Side side = least == toBottom  ? Side::Bottom
                    : least == toRight ? Side::Right
                    : least == toTop   ? Side::Top
                                       : Side::Left;
  const Point edge = sheet_.on(out_);
  const Dim off = tenths(12), length = Dim::mm(9);
  const auto from = [&](Dim by) -> Point {
    switch (side) {
      case Side::Left:
        return {edge.x - by, edge.y};
      case Side::Right:
        return {edge.x + by, edge.y};
      case Side::Top:
        return {edge.x, edge.y - by};
      case Side::Bottom:
        return {edge.x, edge.y + by};
    }
    throw std::logic_error("internal error: no such side");
  };
  const Rect room = grown(around({from(off), {}}, {from(off + length), {}}), tenths(10));
  if (!sheet_.isFree(room)) {  // the next deck lies there
    arrow(from(-tenths(25)), from(tenths(35)));
    return;
  }
  arrow(from(off), from(off + length));
  sheet_.take(room);
  sayWayOut(from(off + length / 2), side == Side::Top || side == Side::Bottom);
}

void StripsDrawer::sayWayOut(Point middle, bool isUpright) {
  const Words w = [&] {
    auto span = typeset::spanIn(sheet_.pen.theme, "drawing", sheet_.pen.language("strips.way_out"));
    span.face = model::Face::SansBold;
    span.colour = colour(sheet_.pen, "accent");
    return words(sheet_.pen, span);
  }();
  const Dim air = tenths(22);
  for (const Point at : isUpright ? std::vector<Point>{{middle.x + air, middle.y - w.height / 2},
                                                       {middle.x - air - w.width, middle.y - w.height / 2}}
                                  : std::vector<Point>{{middle.x - w.width / 2, middle.y - air - w.height},
                                                       {middle.x - w.width / 2, middle.y + air}}) {
    if (!sheet_.isFree(grown({at, {w.width, w.height}}, tenths(5)))) continue;
    put(sheet_.items, w, {at.x, at.y + w.height});
    sheet_.take({at, {w.width, w.height}});
    return;
  }
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

Words StripsDrawer::numeral(const std::string& text) const {
  auto span = typeset::spanIn(sheet_.pen.theme, "drawing", text);
  span.face = model::Face::SansBold;
  span.colour = colour(sheet_.pen, "white");
  return words(sheet_.pen, span);
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
}

std::int64_t StripsDrawer::everyNth(Dim high) const {
  // The last strip takes what boards are left: it does not count, unless it is the only one.
  Dim least = sheet_.on(bands_.bands.front().to - bands_.bands.front().from);
  for (std::size_t i = 1; i + 1 < bands_.bands.size(); ++i)
    least = std::min(least, sheet_.on(bands_.bands[i].to - bands_.bands[i].from));
  return (high.raw + least.raw - 1) / std::max<std::int64_t>(1, least.raw);
}

std::optional<Point> StripsDrawer::spot(const Band& band, Size size, From from, bool mayReachOver) const {
  const Dim across = sheet_.on(band.to - band.from), own = bands_.alongX ? size.h : size.w,
            along = bands_.alongX ? size.w : size.h;
  if (own > across && !mayReachOver) return std::nullopt;
  const Length middle = {(band.from.millionths + band.to.millionths) / 2};
  const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
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
    const Dim over = sheet_.on(middle) - own / 2;
    const Point corner = bands_.alongX ? Point{at, over} : Point{over, at};
    if (sheet_.isOnBoards(placed_, {corner, size})) return corner;
  }
  return std::nullopt;
}

std::optional<Point> StripsDrawer::spotBeside(const Band& band, Size size) const {
  const Length middle = {(band.from.millionths + band.to.millionths) / 2};
  const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
  if (line.empty()) return std::nullopt;
  const Dim off = tenths(10);
  for (const bool isLow : {!leavesHigh_, leavesHigh_}) {
    const Point end = point(isLow ? line.front().from : line.back().to, middle);
    const Point corner = bands_.alongX
                             ? Point{isLow ? end.x - off - size.w : end.x + off, end.y - size.h / 2}
                             : Point{end.x - size.w / 2, isLow ? end.y - off - size.h : end.y + off};
    if (sheet_.isFree({corner, size})) return corner;
  }
  return std::nullopt;
}

bool StripsDrawer::numberInside(const Band& band, const Words& w) {
  const Dim wide = std::max(roundRadius * 2, w.width + tenths(16));
  const auto at = spot(band, {wide, roundRadius * 2}, From::End);
  if (!at) return false;
  const Point centre = {at->x + wide / 2, at->y + roundRadius};
  put(sheet_.items, circle(centre, wide / 2, colour(sheet_.pen, "accent"), std::nullopt));
  putCentred(sheet_.items, w, centre);
  sheet_.take(grown({*at, {wide, roundRadius * 2}}, tenths(8)));
  return true;
}

void StripsDrawer::numberOutside(const Band& band, const std::string& text) {
  const Length middle = {(band.from.millionths + band.to.millionths) / 2};
  const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
  if (line.empty()) return;
  const Words w = boldWords(sheet_.pen, "drawing", text);
  const Dim off = tenths(22);
  for (const bool isLow : {leavesHigh_, !leavesHigh_}) {
    const Point end = point(isLow ? line.front().from : line.back().to, middle);
    const Dim reach = isLow ? -off : off;
    const Point tip = bands_.alongX ? Point{end.x + reach, end.y} : Point{end.x, end.y + reach};
    const Point at =
        bands_.alongX ? Point{isLow ? tip.x - tenths(6) - w.width : tip.x + tenths(6), tip.y - w.height / 2}
                      : Point{tip.x - w.width / 2, isLow ? tip.y - tenths(6) - w.height : tip.y + tenths(6)};
    const Rect room = grown({at, {w.width, w.height}}, tenths(7));
    if (!sheet_.isFree(room)) continue;
    put(sheet_.items, figures::line(end, tip, {colour(sheet_.pen, "ink"), hundredthsPt(40), {}, false}));
    put(sheet_.items, w, {at.x, at.y + w.height});
    sheet_.take(room);
    return;
  }
}

void StripsDrawer::arrow(Point from, Point to) {
  const auto accent = colour(sheet_.pen, "accent");
  const Dim head = Dim::mm(3), half = tenths(15);
  const bool isFlat = from.y == to.y;
  const Dim back = (isFlat ? to.x > from.x : to.y > from.y) ? -head : head;
  const Point base = isFlat ? Point{to.x + back, to.y} : Point{to.x, to.y + back};
  put(sheet_.items, figures::line(from, base, {accent, hundredthsPt(260), {}, false}));
  put(sheet_.items,
      isFlat ? polygon({to, {base.x, base.y - half}, {base.x, base.y + half}}, accent, std::nullopt)
             : polygon({to, {base.x - half, base.y}, {base.x + half, base.y}}, accent, std::nullopt));
}

}  // namespace figures
