#include "drawings/plans/plan_chain.h"

#include <algorithm>

namespace drawings {

namespace {

bool holds(const Rect& outer, const Rect& r) {
  return outer.at.x <= r.at.x && right(r) <= right(outer) && outer.at.y <= r.at.y &&
         bottom(r) <= bottom(outer);
}

class ChainWriter {
 public:
  /// The line stands 'off' the level 'edge', farther out on the chain's side.
  ChainWriter(PlanSheet& sheet, const Chain& chain, Dim edge, Dim off)
      : sheet_(sheet), chain_(chain), alongX_(isAcross(chain.side)) {
    at_ = isBefore(chain.side) ? edge - off : edge + off;
  }

  /// Draws the chain if its figures fit and nothing is in the way.
  bool write() {
    for (const auto& m : chain_.parts)
      if (!prepare(m)) return false;
    for (const auto& r : rooms_)
      if (!sheet_.isFree(shortened(r))) return false;
    for (const auto& r : extensions_)
      if (!sheet_.isFree(r, true)) return false;
    draw();
    return true;
  }

  /// The same for one edge: another deck's edge may take the place of a thin line.
  bool writeEdge(bool mayGrow) {
    isOnlyInside_ = true;
    if (!prepare(chain_.parts.front())) return false;
    const Rect& room = rooms_.front();
    if (!mayGrow && !holds(sheet_.bounds(), room)) return false;
    if (!sheet_.isFree(shortened(room))) return false;
    draw();
    return true;
  }

 private:
  struct Figure {
    ShapedText words;
    Point at;
  };

  /// Lines in one row may touch where one ends and the next begins.
  Rect shortened(Rect r) const {
    const Dim by = tenths(5);
    (alongX_ ? r.at.x : r.at.y) += by;
    (alongX_ ? r.size.w : r.size.h) -= by * 2;
    return r;
  }
  void draw() {
    for (auto& path : paths_) put(sheet_.items, std::move(path));
    for (const auto& f : figures_)
      alongX_ ? putCentred(sheet_.items, f.words, f.at) : putUpwards(sheet_.items, f.words, f.at);
    for (const auto& r : rooms_) sheet_.take(r);
    for (const auto& r : extensions_) sheet_.takeThin(r);
  }

  Point point(Dim along, Dim across) const { return alongX_ ? Point{along, across} : Point{across, along}; }
  Rect rect(Dim from, Dim to, Dim near, Dim far) const {
    return around({point(from, near), {}}, {point(to, far), {}});
  }
  void drawLine(Dim fromAlong, Dim fromAcross, Dim toAlong, Dim toAcross, std::int64_t width) {
    const Stroke s = {colour(sheet_.pen, "ink"), hundredthsPt(width), {}, false};
    paths_.push_back(line(point(fromAlong, fromAcross), point(toAlong, toAcross), s));
  }

  bool prepare(const Measure& m) {
    const Dim from = sheet_.on(m.from), to = sheet_.on(m.to);
    const ShapedText w = words(sheet_.pen, "drawing", m.text);
    const Dim gap = tenths(10), half = tenths(18);
    const bool isInside = to - from >= w.width + gap * 2 + tenths(30);
    if (!isInside && (isOnlyInside_ || chain_.parts.size() > 1)) return false;
    if (isInside) {
      const Dim middle = (from + to) / 2, clear = w.width / 2 + gap;
      drawLine(from, at_, middle - clear, at_, 40);
      drawLine(middle + clear, at_, to, at_, 40);
      figures_.push_back({w, point(middle, at_)});
      rooms_.push_back(rect(from, to, at_ - half, at_ + half));
    } else {  // the figure stands beside the line: to its right, or above it
      const Dim beyond = tenths(18) + w.width / 2;
      const Dim centre = alongX_ ? to + beyond : from - beyond;
      drawLine(from, at_, to, at_, 40);
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
    drawLine(along, start, along, end, 25);
    extensions_.push_back(rect(along - tenths(3), along + tenths(3), start, end));
  }

  PlanSheet& sheet_;
  const Chain& chain_;
  bool alongX_;
  bool isOnlyInside_ = false;  // the figure has to fit into the line
  Dim at_;
  std::vector<Path> paths_;
  std::vector<Figure> figures_;
  std::vector<Rect> rooms_, extensions_;
};

}  // namespace

bool writeChain(PlanSheet& sheet, const PlacedDeck& deck, const Chain& chain) {
  const Rect area = sheet.on(deck.extent);
  const Dim edge = isAcross(chain.side) ? (isBefore(chain.side) ? area.at.y : bottom(area))
                                        : (isBefore(chain.side) ? area.at.x : right(area));
  for (const std::int64_t off : {45, 95, 145, 195, 245})
    if (ChainWriter(sheet, chain, edge, tenths(off)).write()) return true;
  return false;
}

bool writeEdgeLine(PlanSheet& sheet, const Measure& edge, Side side, bool mayGrow) {
  const Chain chain{side, {edge}};
  for (const std::int64_t off : {45, 30, 60})
    if (ChainWriter(sheet, chain, sheet.on(edge.nearFrom), tenths(off)).writeEdge(mayGrow)) return true;
  return false;
}

}  // namespace drawings
