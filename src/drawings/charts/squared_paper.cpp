// Squared paper, to sketch on by hand.
#include "drawings/pen/paths.h"

#include <algorithm>

namespace drawings {

typeset::Drawing squaredPaper(const std::string& alt, const Pen& pen, Size most) {
  const bool isMetric = pen.region.units == model::UnitSystem::Metric;
  constexpr std::int64_t inch = 72, quarter = 4;
  const Dim square = isMetric ? Dim::mm(5) : Dim::pt(inch) / quarter;
  const std::int64_t strong = isMetric ? 2 : quarter;  // each so many squares
  const std::int64_t across = most.w.raw / square.raw, down = most.h.raw / square.raw;
  typeset::Drawing out;
  out.size = {square * across, square * down};
  Path fine, heavy;
  fine.stroke = Stroke{colour(pen, "rule"), hundredthsPt(35), {}, false};
  heavy.stroke = Stroke{colour(pen, "rule"), hundredthsPt(80), {}, false};
  const auto add = [&](std::int64_t n, std::int64_t last, Point from, Point to) {
    Path& path = n % strong == 0 || n == last ? heavy : fine;
    moveTo(path, from);
    lineTo(path, to);
  };
  for (std::int64_t n = 0; n <= across; ++n) add(n, across, {square * n, {}}, {square * n, out.size.h});
  for (std::int64_t n = 0; n <= down; ++n) add(n, down, {{}, square * n}, {out.size.w, square * n});
  put(out.items, std::move(fine));
  put(out.items, std::move(heavy));
  out.alt = alt;
  return out;
}

}  // namespace drawings
