// The names of decks on the plan of a day's strips.
#include "drawings/plans/strip_drawer.h"

#include <algorithm>
#include <numeric>

namespace drawings {

namespace {

const Dim patchRim = tenths(8), wordGap = tenths(15);

Size rowSize(const std::vector<ShapedText>& row) {
  Size s;
  for (const auto& w : row) {
    s.w += w.width + (s.w.raw > 0 ? wordGap : Dim{});
    s.h = std::max(s.h, w.height);
  }
  return s;
}

void putRow(Items& items, const std::vector<ShapedText>& row, Point at) {
  const Dim height = rowSize(row).h;
  for (const auto& w : row) {
    put(items, w, {at.x, at.y + height});
    at.x += w.width + wordGap;
  }
}

}  // namespace

bool StripsDrawer::nameInside(const std::vector<ShapedText>& row) {
  std::vector<std::size_t> order(bands_.bands.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto wide = [&](std::size_t i) { return bands_.bands[i].to - bands_.bands[i].from; };
  std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return wide(a) > wide(b); });
  const Size size = rowSize(row), patch = {size.w + patchRim * 2, size.h + patchRim * 2};
  for (const Dim air : {tenths(15), Dim{}})  // clear of numbers and cut-outs where that can be
    for (const auto i : order) {
      const auto at = spot(bands_.bands[i], {patch.w + air * 2, patch.h + air * 2}, From::Middle);
      if (!at) continue;
      const Rect own = {{at->x + air, at->y + air}, patch};
      put(sheet_.items, box(own, colour(sheet_.pen, fillOf(i)), std::nullopt));
      putRow(sheet_.items, row, {own.at.x + patchRim, own.at.y + patchRim});
      sheet_.take(own);
      return true;
    }
  return false;
}

bool StripsDrawer::nameBeside(const std::vector<ShapedText>& row) {
  const Rect area = sheet_.on(placed_.extent);
  const Size size = rowSize(row);
  const Dim off = tenths(14);
  constexpr int eighths = 8;
  for (const Side side : {Side::Top, Side::Bottom, Side::Right, Side::Left})
    for (const int part : {4, 3, 5, 2, 6, 1, 7, 0, 8}) {
      const bool isAbove = side == Side::Top || side == Side::Bottom,
                 isLow = side == Side::Top || side == Side::Left;
      const Dim along = isAbove ? area.at.x + (area.size.w - size.w) * part / eighths
                                : area.at.y + (area.size.h - size.h) * part / eighths;
      const Dim middle = along + (isAbove ? size.w : size.h) / 2;
      const auto line = model::stretches(placed_.outline.edge, sheet_.onSite(middle), !isAbove);
      if (line.empty()) continue;
      const Dim edge = sheet_.on(isLow ? line.front().from : line.back().to);
      const Dim across = isLow ? edge - off - (isAbove ? size.h : size.w) : edge + off;
      const Point at = isAbove ? Point{along, across} : Point{across, along};
      const Rect room = grown({at, size}, tenths(8));
      if (!sheet_.isFree(room)) continue;
      putRow(sheet_.items, row, at);
      sheet_.take(room);
      return true;
    }
  return false;
}

void StripsDrawer::name() {
  const typeset::Span big = {
      letterOf(placed_.index), model::Face::TextBold, Dim::pt(12), {}, colour(sheet_.pen, "accent"), false};
  const std::vector<ShapedText> letter = {words(sheet_.pen, big)},
                                whole = {letter.front(), words(sheet_.pen, "drawing", deck_.name)};
  // The table below the plan has the names, so a letter will do.
  if (!nameInside(whole) && !nameBeside(whole) && !nameInside(letter)) nameBeside(letter);
}

}  // namespace drawings
