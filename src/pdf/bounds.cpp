// The box around the items of a figure. Letters count as high as their size: close enough for a reader that
// scrolls to a figure.
#include "pdf/bounds.h"

#include "pdf/objects/notation.h"

#include <algorithm>

namespace pdf {
namespace {

using typeset::Dim;
using typeset::Point;

class Box {
 public:
  void operator()(const typeset::TextRun& run) {
    const Point end = run.isUpright ? Point{run.baseline.x + run.width, run.baseline.y - run.size}
                                    : Point{run.baseline.x - run.size, run.baseline.y - run.width};
    take(run.baseline);
    take(end);
  }
  void operator()(const typeset::Path& path) {
    for (const typeset::Step& step : path.steps) {
      if (step.kind == typeset::Step::Kind::Close) continue;
      take(step.to);
      if (step.kind != typeset::Step::Kind::Curve) continue;
      take(step.a);  // a curve stays inside its control points
      take(step.b);
    }
  }
  void operator()(const typeset::PlacedImage& image) { takeRect(image.box); }
  void operator()(const typeset::Link& link) { takeRect(link.box); }

  std::string entry(Dim pageHeight) const {
    if (isEmpty_) return "";
    return " /BBox [" + number(low_.x) + " " + number(pageHeight - high_.y) + " " + number(high_.x) + " " +
           number(pageHeight - low_.y) + "]";
  }

 private:
  void take(Point p) {
    low_ = isEmpty_ ? p : Point{std::min(low_.x, p.x), std::min(low_.y, p.y)};
    high_ = isEmpty_ ? p : Point{std::max(high_.x, p.x), std::max(high_.y, p.y)};
    isEmpty_ = false;
  }
  void takeRect(const typeset::Rect& rect) {
    take(rect.at);
    take({rect.at.x + rect.size.w, rect.at.y + rect.size.h});
  }

  Point low_, high_;
  bool isEmpty_ = true;
};

}  // namespace

std::string layoutOf(const typeset::Document& document, int tag, std::size_t page) {
  Box box;
  for (const typeset::Item& item : document.pages.at(page).items)
    if (item.tag == tag) std::visit(box, item.what);
  return "<</O /Layout /Placement /Block" + box.entry(document.pages[page].size.h) + ">>";
}

}  // namespace pdf
