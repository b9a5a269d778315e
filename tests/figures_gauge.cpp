// The bar of a day against its limits.
#include "figures_pen.h"

#include <catch2/catch.hpp>

using figures_test::metric;
using typeset::Dim;

namespace {

/// Right ends of the drawing's filled boxes and x of its upright lines, in hundredths of its width.
struct Seen {
  std::vector<std::int64_t> boxes, marks;
  std::string alt;
};

Seen seen(const drawings::Gauge& gauge) {
  const Dim width = Dim::mm(30);
  const auto drawing = drawings::gauge(gauge, metric().pen(), width);
  CHECK(drawing.size.w.raw == width.raw);
  CHECK(drawing.size.h <=
        Dim::milli(metric().look.styles.at("note").rise));  // no higher than a line of notes
  Seen s{{}, {}, drawing.alt};
  for (const auto& item : drawing.items) {
    const auto* path = std::get_if<typeset::Path>(&item.what);
    if (!path || path->steps.empty()) continue;
    Dim left = path->steps[0].to.x, right = left;
    for (const auto& step : path->steps) {
      if (step.kind == typeset::Step::Kind::Close) continue;
      left = std::min(left, step.to.x);
      right = std::max(right, step.to.x);
    }
    const auto end = (right.raw * 100 + width.raw / 2) / width.raw;
    if (path->fill) s.boxes.push_back(end);
    else if (left == right) s.marks.push_back(end);
  }
  return s;
}

}  // namespace

TEST_CASE("a bar is solid up to the first mark and hatched beyond it") {
  const Seen below = seen({400, {500, 800}});
  CHECK(below.boxes == std::vector<std::int64_t>{100, 40});
  CHECK(below.marks == std::vector<std::int64_t>{50, 80});
  CHECK(below.alt == "Bar: 0 of 2 marks passed.");
  const Seen beyond = seen({700, {500, 800}});
  CHECK(beyond.boxes == std::vector<std::int64_t>{100, 50, 70});
  CHECK(beyond.alt == "Bar: 1 of 2 marks passed.");
}

TEST_CASE("a value off the scale fills it, one below it leaves it empty") {
  CHECK(seen({1700, {500}}).boxes == std::vector<std::int64_t>{100, 50, 100});
  CHECK(seen({-200, {500}}).boxes == std::vector<std::int64_t>{100});
  CHECK(seen({500, {500}}).alt == "Bar: 1 of 1 marks passed.");  // at the limit is past it
}
