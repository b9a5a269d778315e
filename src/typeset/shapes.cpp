// Small paths of the house: rules, frames, marks of lists, the alert sign.
#include "typeset/shapes.h"

namespace typeset {
namespace {

Step moveTo(Dim x, Dim y) { return {Step::Kind::Move, {}, {}, {x, y}}; }
Step lineTo(Dim x, Dim y) { return {Step::Kind::Line, {}, {}, {x, y}}; }
Step close() { return {Step::Kind::Close, {}, {}, {}}; }

std::vector<Step> boxSteps(Rect r) {
  const Dim x = r.at.x, y = r.at.y, x2 = x + r.size.w, y2 = y + r.size.h;
  return {moveTo(x, y), lineTo(x2, y), lineTo(x2, y2), lineTo(x, y2), close()};
}

Item stroked(std::vector<Step> steps, Dim weight, Colour colour, bool isRound = false) {
  Path path;
  path.steps = std::move(steps);
  path.stroke = Stroke{colour, weight, {}, isRound};
  return {std::move(path), artifact};
}

Item filled(std::vector<Step> steps, Colour colour) {
  Path path;
  path.steps = std::move(steps);
  path.fill = colour;
  path.isEvenOdd = true;
  return {std::move(path), artifact};
}

/// Tenths of a millimetre.
Dim tenths(std::int64_t n) { return Dim::mm(n) / 10; }

}  // namespace

Item lineItem(Point from, Point to, Dim weight, Colour colour) {
  return stroked({moveTo(from.x, from.y), lineTo(to.x, to.y)}, weight, colour);
}

Item filledBox(Rect box, Colour colour) { return filled(boxSteps(box), colour); }

Item frame(Rect box, Dim weight, Colour colour) { return stroked(boxSteps(box), weight, colour); }

Item alertSign(Rect box, Colour colour) {
  const auto x = [&](std::int64_t percent) { return box.at.x + box.size.w * percent / 100; };
  const auto y = [&](std::int64_t percent) { return box.at.y + box.size.h * percent / 100; };
  std::vector<Step> steps;
  const auto curve = [&](Point a, Point b, Point to) { steps.push_back({Step::Kind::Curve, a, b, to}); };
  // Corners are rounded, as on the signs that hang beside it.
  steps.push_back(moveTo(x(45), y(3)));
  curve({x(47), y(-1)}, {x(53), y(-1)}, {x(55), y(3)});
  steps.push_back(lineTo(x(99), y(92)));
  curve({x(101), y(96)}, {x(99), y(100)}, {x(95), y(100)});
  steps.push_back(lineTo(x(5), y(100)));
  curve({x(1), y(100)}, {x(-1), y(96)}, {x(1), y(92)});
  steps.push_back(close());
  for (const Step& s :
       {moveTo(x(44), y(34)), lineTo(x(56), y(34)), lineTo(x(53), y(70)), lineTo(x(47), y(70)), close(),
        moveTo(x(45), y(77)), lineTo(x(55), y(77)), lineTo(x(55), y(88)), lineTo(x(45), y(88)), close()})
    steps.push_back(s);
  return filled(std::move(steps), colour);
}

Item dashMark(Point at, Colour colour) {
  const Dim y = at.y + Dim::milli(7'100);
  return lineItem({at.x, y}, {at.x + tenths(26), y}, Dim::pt(1), colour);
}

Item crossMark(Point at, Colour colour) {
  const Dim y = at.y + Dim::milli(4'900), d = Dim::mm(2);
  return stroked({moveTo(at.x, y), lineTo(at.x + d, y + d), moveTo(at.x, y + d), lineTo(at.x + d, y)},
                 Dim::pt(1), colour);
}

Item tickMark(Point at, Colour colour) {
  const Dim y = at.y + Dim::milli(7'800);
  return stroked(
      {moveTo(at.x, y), lineTo(at.x + tenths(9), y + tenths(10)), lineTo(at.x + tenths(27), y - tenths(13))},
      Dim::milli(1'200), colour, true);
}

Item boxMark(Point at, Colour colour) {
  const Dim size = tenths(34), weight = Dim::milli(800);
  const Dim y = at.y + Dim::milli(10'500) + tenths(5) - size;
  return frame({{at.x + weight / 2, y + weight / 2}, {size - weight, size - weight}}, weight, colour);
}

}  // namespace typeset
