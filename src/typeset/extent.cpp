#include "typeset/extent.h"

#include <algorithm>

namespace typeset {
namespace {

struct Box {
  Rect operator()(const TextRun& run) const {
    if (run.isUpright) return {{run.baseline.x, run.baseline.y - run.size}, {run.width, run.size}};
    return {{run.baseline.x - run.size, run.baseline.y - run.width}, {run.size, run.width}};
  }
  Rect operator()(const Path& path) const { return extentOf(path); }
  Rect operator()(const PlacedImage& image) const { return image.box; }
  Rect operator()(const Link& link) const { return link.box; }
};

}  // namespace

Rect extentOf(const Path& path) {
  bool isFirst = true;
  Point least, most;
  const auto add = [&](Point p) {
    if (isFirst) least = most = p;
    isFirst = false;
    least = {std::min(least.x, p.x), std::min(least.y, p.y)};
    most = {std::max(most.x, p.x), std::max(most.y, p.y)};
  };
  for (const Step& s : path.steps) {
    if (s.kind == Step::Kind::Close) continue;
    if (s.kind == Step::Kind::Curve) {
      add(s.a);
      add(s.b);
    }
    add(s.to);
  }
  return {least, {most.x - least.x, most.y - least.y}};
}

Rect extentOf(const Item& item) { return std::visit(Box{}, item.what); }

Rect joined(const Rect& a, const Rect& b) {
  const Point least = {std::min(a.at.x, b.at.x), std::min(a.at.y, b.at.y)};
  return {least,
          {std::max(a.at.x + a.size.w, b.at.x + b.size.w) - least.x,
           std::max(a.at.y + a.size.h, b.at.y + b.size.h) - least.y}};
}

}  // namespace typeset
