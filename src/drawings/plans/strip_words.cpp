// What a strip tells in itself: its number, when it is cut in, laid and wiped, and what it takes; and the
// names of the decks.
#include "drawings/plans/strip_drawer.h"

#include <algorithm>
#include <numeric>

namespace drawings {

namespace {

const Dim gap = tenths(18), rowGap = tenths(12);

Dim heightOfDisc(bool isSmall) { return tenths(isSmall ? 42 : 56); }

Dim heightOf(const std::vector<ShapedText>& row) {
  Dim high;
  for (const auto& w : row) high = std::max(high, w.height);
  return high;
}

Dim widthOf(const std::vector<ShapedText>& row) {
  Dim wide;
  for (const auto& w : row) wide += w.width + (wide > Dim{} ? gap : Dim{});
  return wide;
}

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

StripsDrawer::Block StripsDrawer::blockOf(std::size_t band, Shape shape) const {
  const auto& pen = sheet_.pen;
  const auto& strip = strips_.strips[bands_.strips[band]];
  const bool isSmall = shape == Shape::Small;
  const Dim large = Dim::pt(isSmall ? 12 : 15), middle = Dim::pt(isSmall ? 10 : 12),
            small = Dim::pt(isSmall ? 9 : 10), rim = tenths(isSmall ? 1 : 6),
            discWidth = heightOfDisc(isSmall);
  const auto step = [&](const char* key, const std::string& time) {
    return sized(pen, small, pen.language(key, {{"time", time}}), false);
  };
  const ShapedText lay = sized(pen, large, strip.lay, true),
                   litres = sized(pen, middle, strips_.amountOf(strip), true);
  Block block;
  if (shape != Shape::Rows) {
    std::vector<ShapedText> row;
    if (!strip.cutIn.empty()) row.push_back(step("strips.cut_in_at", strip.cutIn));
    row.push_back(lay);
    row.push_back(litres);
    if (!strip.wipe.empty()) row.push_back(step("strips.wipe_at", strip.wipe));
    block.rows = {std::move(row)};
  } else {
    block.rows = {{litres}, {lay}};
    if (!strip.cutIn.empty()) block.rows.push_back({step("strips.cut_in_at", strip.cutIn)});
    if (!strip.wipe.empty()) block.rows.push_back({step("strips.wipe_at", strip.wipe)});
  }
  for (std::size_t i = 0; i < block.rows.size(); ++i) {
    const Dim disc = i == 0 ? discWidth + gap : Dim{};
    block.size.w = std::max(block.size.w, disc + widthOf(block.rows[i]));
    const Dim own = std::max(heightOf(block.rows[i]), i == 0 ? discWidth : Dim{});
    block.size.h += own + (i == 0 ? Dim{} : rowGap);
  }
  block.size = {block.size.w + rim * 2, block.size.h + rim * 2};
  return block;
}

bool StripsDrawer::tellAs(Shape shape) {
  const bool isSmall = shape == Shape::Small;
  const Dim rim = tenths(isSmall ? 1 : 6), discWidth = heightOfDisc(isSmall);
  std::vector<std::pair<Block, Point>> blocks;
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
    Block block = blockOf(i, shape);
    const auto at = spot(bands_.bands[i], block.size, From::Middle);
    if (!at) return false;
    blocks.push_back({std::move(block), *at});
  }
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const auto& [block, at] = blocks[i];
    put(sheet_.items, box({at, block.size}, colour(sheet_.pen, fillOf(i)), std::nullopt));
    Dim y = at.y + rim;
    for (std::size_t row = 0; row < block.rows.size(); ++row) {
      const Dim own = std::max(heightOf(block.rows[row]), row == 0 ? discWidth : Dim{});
      Dim x = at.x + rim;
      if (row == 0) {
        const Point centre = {x + discWidth / 2, y + own / 2};
        put(sheet_.items, circle(centre, discWidth / 2, colour(sheet_.pen, "accent"), std::nullopt));
        auto span = typeset::spanIn(sheet_.pen.theme, "drawing", std::to_string(bands_.numbers[i]));
        span.face = model::Face::SansBold;
        span.size = Dim::pt(isSmall || bands_.numbers[i] >= 100 ? 9 : 12);
        span.colour = colour(sheet_.pen, "white");
        putCentred(sheet_.items, words(sheet_.pen, span), centre);
        x += discWidth + gap;
      }
      for (const auto& w : block.rows[row]) {
        put(sheet_.items, w, {x, y + own / 2 + w.height / 2});
        x += w.width + gap;
      }
      y += own + rowGap;
    }
    sheet_.take({at, block.size});
  }
  return true;
}

bool StripsDrawer::tell() {
  if (bands_.bands.empty() || strips_.strips.size() != strips_.edge.strips.size()) return false;
  for (const auto i : bands_.strips)
    if (strips_.strips[i].lay.empty()) return false;
  return tellAs(Shape::OneRow) || tellAs(Shape::Rows) || tellAs(Shape::Small);
}

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
  const typeset::StyledText big = {
      letterOf(placed_.index), model::Face::TextBold, Dim::pt(12), {}, colour(sheet_.pen, "accent"), false};
  const std::vector<ShapedText> letter = {words(sheet_.pen, big)},
                                whole = {letter.front(), words(sheet_.pen, "drawing", deck_.name)};
  // The table below the plan has the names, so a letter will do.
  if (!nameInside(whole) && !nameBeside(whole) && !nameInside(letter)) nameBeside(letter);
}

}  // namespace drawings
