#include "drawings/pen/hatch.h"

#include <algorithm>

namespace drawings {

namespace {

/// Lines at 45 degrees, cut at the box. 'isBack' leans them to the left.
void addSlashes(Path& path, const Rect& r, Dim apart, bool isBack) {
  const Dim w = r.size.w, h = r.size.h;
  for (Dim foot = -h + apart / 2; foot < w; foot += apart) {
    const Dim from = std::max(foot, Dim{}), to = std::min(foot + h, w);
    if (from >= to) continue;
    const auto at = [&](Dim x) { return Point{isBack ? right(r) - x : r.at.x + x, bottom(r) - (x - foot)}; };
    moveTo(path, at(from));
    lineTo(path, at(to));
  }
}

void addUprights(Path& path, const Rect& r, Dim apart) {
  for (Dim x = apart / 2; x < r.size.w; x += apart) {
    moveTo(path, {r.at.x + x, r.at.y});
    lineTo(path, {r.at.x + x, bottom(r)});
  }
}

void addLevels(Path& path, const Rect& r, Dim apart) {
  for (Dim y = apart; y < r.size.h; y += apart) {
    moveTo(path, {r.at.x, r.at.y + y});
    lineTo(path, {right(r), r.at.y + y});
  }
}

void addDots(Path& path, const Rect& r, Dim apart) {
  const Dim radius = tenths(3);
  bool isOdd = false;
  for (Dim y = apart / 2; y + radius < r.size.h; y += apart / 2, isOdd = !isOdd)
    for (Dim x = isOdd ? apart : apart / 2; x + radius < r.size.w; x += apart)
      addEllipse(path, r.at + Point{x, y}, radius, radius);
}

std::optional<model::Colour> fillOf(Hatch hatch, const Pen& pen) {
  switch (hatch) {
    case Hatch::Tint:
    case Hatch::Tight:
      return colour(pen, "tint");
    case Hatch::Wood:
      return colour(pen, "wood");
    case Hatch::Accent:
      return colour(pen, "accent");
    case Hatch::Plain:
    case Hatch::Slash:
    case Hatch::Backslash:
    case Hatch::Upright:
    case Hatch::Level:
    case Hatch::Crossed:
    case Hatch::Dashes:
    case Hatch::Dark:
    case Hatch::DarkBack:
    case Hatch::Dots:
      break;
  }
  return std::nullopt;
}

Path linesOf(Hatch hatch, const Rect& r) {
  Path path;
  switch (hatch) {
    case Hatch::Slash:
      addSlashes(path, r, tenths(20), false);
      break;
    case Hatch::Backslash:
      addSlashes(path, r, tenths(20), true);
      break;
    case Hatch::Tight:
      addSlashes(path, r, tenths(10), false);
      break;
    case Hatch::Upright:
      addUprights(path, r, tenths(14));
      break;
    case Hatch::Level:
      addLevels(path, r, tenths(10));
      break;
    case Hatch::Dashes:
      addLevels(path, r, tenths(12));
      break;
    case Hatch::Crossed:
      addSlashes(path, r, tenths(16), false);
      addSlashes(path, r, tenths(16), true);
      break;
    case Hatch::Dark:
      addSlashes(path, r, tenths(12), false);
      break;
    case Hatch::DarkBack:
      addSlashes(path, r, tenths(12), true);
      break;
    case Hatch::Dots:
      addDots(path, r, tenths(20));
      break;
    case Hatch::Plain:
    case Hatch::Tint:
    case Hatch::Wood:
    case Hatch::Accent:
      break;
  }
  return path;
}

Dim weightOf(Hatch hatch) {
  if (hatch == Hatch::Dark || hatch == Hatch::DarkBack) return hundredthsPt(110);
  return hundredthsPt(hatch == Hatch::Dashes ? 80 : 40);
}

}  // namespace

void putHatched(Items& items, const Rect& r, Hatch hatch, const Pen& pen) {
  const auto ink = colour(pen, "ink");
  if (const auto fill = fillOf(hatch, pen)) put(items, box(r, fill, std::nullopt));
  if (Path lines = linesOf(hatch, r); !lines.steps.empty()) {
    std::vector<Dim> dash;
    if (hatch == Hatch::Dashes) dash = {tenths(9), tenths(11)};
    if (hatch == Hatch::Dots) lines.fill = ink;
    else lines.stroke = Stroke{ink, weightOf(hatch), std::move(dash), false};
    put(items, std::move(lines));
  }
  put(items, box(r, std::nullopt, Stroke{ink, hundredthsPt(50), {}, false}));
}

void putOnPatch(Items& items, const ShapedText& w, const Rect& r) {
  const Dim air = tenths(8);
  const Size patch = {w.width + air * 2, w.height + air * 2};
  if (patch.w + air * 2 > r.size.w || patch.h > r.size.h) return;
  const Point middle = {r.at.x + r.size.w / 2, r.at.y + r.size.h / 2};
  put(items, box({{middle.x - patch.w / 2, middle.y - patch.h / 2}, patch}, model::Colour{255, 255, 255},
                 std::nullopt));
  putCentred(items, w, middle);
}

}  // namespace drawings
