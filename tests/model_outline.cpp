// Lines across outlines of many corners.
#include "model/outline.h"

#include <catch2/catch.hpp>

namespace {

/// A star around (x, y): every other corner lies further out, and all differ.
model::Polygon star(int corners, std::int64_t x, std::int64_t y) {
  model::Polygon p;
  std::int64_t state = 7;
  for (int i = 0; i < corners; ++i) {
    state =
        state * 48271 % 2147483647;  // the minimal standard generator of Park and Miller, 1988. From memory
    const std::int64_t reach = 500'000'000 + (i % 2) * 400'000'000 + state % 50'000'000;
    // Corners go round on a square, which needs no sine.
    const std::int64_t way = 8 * reach * i / corners, side = way / (2 * reach),
                       on = way % (2 * reach) - reach;
    const std::int64_t dx[] = {on, reach, -on, -reach}, dy[] = {-reach, on, reach, -on};
    p.points.push_back({{x + dx[side]}, {y + dy[side]}});
  }
  return p;
}

std::vector<std::pair<std::int64_t, std::int64_t>> endsOf(const std::vector<model::Stretch>& stretches) {
  std::vector<std::pair<std::int64_t, std::int64_t>> ends;
  for (const auto& s : stretches) ends.emplace_back(s.from.millionths, s.to.millionths);
  return ends;
}

}  // namespace

TEST_CASE("a line across an outline of many corners meets the same sides as one that tries them all") {
  for (const int corners : {3, 31, 32, 33, 47, 48, 49, 199, 200}) {
    const auto polygon = star(corners, 2'000'000'000, 3'000'000'000);
    const auto outline = model::moved(*model::outlineOf(model::Shape{polygon}), {{1'000}, {-7'000}});
    const model::Loop plain{outline.edge.corners, {}, {}};
    std::vector<base::Length> places;
    for (std::int64_t at = 900'000'000; at < 4'100'000'000; at += 9'999'937) places.push_back({at});
    for (const auto& corner : outline.edge.corners) places.insert(places.end(), {corner.x, corner.y});
    std::size_t found = 0;
    for (const base::Length at : places)
      for (const bool alongX : {true, false}) {
        const auto all = endsOf(model::stretches(plain, at, alongX));
        CHECK(endsOf(model::stretches(outline.edge, at, alongX)) == all);
        found += all.size();
      }
    CHECK(found > 100);
  }
}
