// A value against its limits, small enough for a cell of a table.
#include "drawings/pen/hatch.h"

#include <algorithm>

namespace drawings {

typeset::Drawing gauge(const Gauge& gauge, const Pen& pen, Dim width) {
  const Dim over = tenths(3);  // of a mark above and below the bar
  const Dim high = Dim::milli(pen.theme.styles.at("note").rise) - over * 2;
  const auto on = [&](int thousandths) { return width * std::clamp(thousandths, 0, 1000) / 1000; };
  const auto part = [&](Dim from, Dim to) { return Rect{{from, over}, {to - from, high}}; };
  typeset::Drawing out;
  const Dim value = on(gauge.value);
  const Dim solid = gauge.marks.empty() ? value : std::min(value, on(gauge.marks.front()));
  put(out.items,
      box(part({}, width), colour(pen, "white"), Stroke{colour(pen, "rule"), hundredthsPt(50), {}, false}));
  if (solid > Dim{}) putHatched(out.items, part({}, solid), Hatch::Accent, pen);
  if (value > solid) putHatched(out.items, part(solid, value), Hatch::Tight, pen);
  int passed = 0;
  for (const int mark : gauge.marks) {
    passed += gauge.value >= mark ? 1 : 0;
    put(out.items, line({on(mark), {}}, {on(mark), high + over * 2},
                        Stroke{colour(pen, "ink"), hundredthsPt(140), {}, false}));
  }
  out.size = {width, high + over * 2};
  out.alt = pen.language("gauge.alt",
                         {{"passed", std::to_string(passed)}, {"marks", std::to_string(gauge.marks.size())}});
  return out;
}

}  // namespace drawings
