#include "base/geometry.h"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <chrono>

using namespace base;

namespace {

using Pts = std::vector<Pt>;

const Pts square = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
const Pts angle = {{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}};  // an L

Pts moved(Pts p, std::int64_t x, std::int64_t y) {
  for (Pt& q : p) q = {q.x + x, q.y + y};
  return p;
}

Pts box(std::int64_t x, std::int64_t y, std::int64_t w, std::int64_t h) {
  return {{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}};
}

}  // namespace

TEST_CASE("the shoelace formula gives the areas of published and recomputed outlines") {
  // Rosetta Code, task "Shoelace formula for polygonal area": 30. Seen.
  CHECK(twiceArea(Pts{{3, 4}, {5, 11}, {12, 8}, {9, 5}, {5, 6}}) == 60);
  // Wikipedia, "Shoelace formula", example: 16.5. Seen.
  CHECK(twiceArea(Pts{{1, 6}, {3, 1}, {7, 2}, {4, 4}, {8, 5}}) == 33);
  // Recomputed with Shapely 1.8.5 (GEOS 3.11.1): an L of 33, a 3-4-5 triangle of 6, a T of 37.78.
  CHECK(twiceArea(Pts{{0, 0}, {6, 0}, {6, 4}, {3, 4}, {3, 7}, {0, 7}}) == 66);
  CHECK(twiceArea(Pts{{0, 0}, {4, 0}, {0, 3}}) == 12);
  CHECK(twiceArea(Pts{{0, 0}, {84, 0}, {84, 36}, {51, 36}, {51, 62}, {22, 62}, {22, 36}, {0, 36}}) == 7556);
  CHECK(twiceArea(Pts{{0, 0}, {2, 0}, {2, 0}, {2, 2}, {0, 2}}) == 8);  // a repeated corner
  CHECK(twiceArea(Pts{{0, 0}, {1, 0}, {2, 0}, {2, 1}, {0, 1}}) == 4);  // a corner on a straight edge
}

TEST_CASE("outlines that cross or touch themselves are not simple") {
  CHECK(isSimple(square));
  CHECK(isSimple(angle));
  CHECK(isSimple(Pts{{0, 0}, {2, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}}));        // repeats do no harm
  CHECK(isSimple(Pts{{0, 0}, {1, 0}, {2, 0}, {2, 1}, {0, 1}}));                // nor does a flat corner
  CHECK_FALSE(isSimple(Pts{{0, 0}, {10, 10}, {10, 0}, {0, 10}}));              // a bow tie
  CHECK_FALSE(isSimple(Pts{{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}));      // a corner on another edge
  CHECK_FALSE(isSimple(Pts{{0, 0}, {10, 0}, {5, 0}, {5, 5}}));                 // back along its own edge
  CHECK_FALSE(isSimple(Pts{{0, 0}, {4, 0}, {2, 2}, {4, 4}, {0, 4}, {2, 2}}));  // twice through one point
  CHECK_FALSE(isSimple(Pts{{0, 0}, {5, 5}, {10, 10}}));                        // no area
  CHECK_FALSE(isSimple(Pts{{0, 0}, {5, 5}}));
  CHECK_FALSE(isSimple(Pts{}));
}

TEST_CASE("a point is inside, on the edge or outside") {
  CHECK(locate(angle, {2, 8}) == Where::Inside);
  CHECK(locate(angle, {4, 4}) == Where::Edge);
  CHECK(locate(angle, {7, 4}) == Where::Edge);
  CHECK(locate(angle, {5, 5}) == Where::Outside);
  CHECK(locate(angle, {-1, 4}) == Where::Outside);  // level with two corners
  CHECK(contains(angle, {0, 10}));
}

TEST_CASE("a cut-out may touch the deck's edge but not leave it") {
  CHECK(isWithin(box(2, 2, 3, 3), square));
  CHECK(isWithin(box(0, 0, 3, 3), square));
  CHECK(isWithin(square, square));
  CHECK_FALSE(isWithin(box(8, 8, 3, 1), square));
  CHECK_FALSE(isWithin(box(20, 20, 1, 1), square));
  CHECK_FALSE(isWithin(box(0, 0, 10, 10), angle));  // its corners lie on the L, its middle does not
  CHECK_FALSE(isWithin(box(2, 2, 4, 4), angle));
  // All corners on the edge of the L, one side across the notch.
  CHECK_FALSE(isWithin(Pts{{10, 4}, {4, 10}, {0, 0}}, angle));
}

TEST_CASE("cut-outs overlap when they share area, not when they touch") {
  CHECK_FALSE(overlap(box(0, 0, 5, 5), box(5, 0, 5, 5)));
  CHECK_FALSE(overlap(box(0, 0, 5, 5), box(5, 5, 5, 5)));
  CHECK_FALSE(overlap(angle, box(4, 4, 6, 6)));  // fills the notch
  CHECK(overlap(box(0, 0, 5, 5), box(4, 4, 5, 5)));
  CHECK(overlap(box(0, 0, 9, 9), box(2, 2, 1, 1)));
  CHECK(overlap(box(2, 2, 1, 1), box(0, 0, 9, 9)));
  CHECK(overlap(square, square));
  CHECK(overlap(square, Pts{{0, 0}, {10, 0}, {10, 10}}));         // half of it, corners shared
  CHECK(overlap(box(0, 3, 10, 4), box(3, 0, 4, 10)));             // a plus: no corner inside the other
  CHECK(overlap(square, Pts{{5, 0}, {10, 5}, {5, 10}, {0, 5}}));  // corners in the middles of edges
}

TEST_CASE("circles are compared with outlines to the nanometre") {
  CHECK(isWithin(Disc{{5, 5}, 10}, square));
  CHECK_FALSE(isWithin(Disc{{5, 5}, 11}, square));
  CHECK_FALSE(isWithin(Disc{{15, 5}, 2}, square));
  CHECK(isWithin(square, Disc{{5, 5}, 15}));  // corners at 7.07
  CHECK_FALSE(isWithin(square, Disc{{5, 5}, 14}));
  CHECK(isWithin(box(2, 2, 6, 6), Disc{{5, 5}, 9}));  // corners at 4.24
  CHECK(overlap(Disc{{12, 5}, 5}, square));
  CHECK_FALSE(overlap(Disc{{12, 5}, 4}, square));  // touches
  CHECK(overlap(Disc{{5, 5}, 2}, square));
  CHECK(isWithin(Disc{{3, 0}, 4}, Disc{{0, 0}, 10}));
  CHECK_FALSE(isWithin(Disc{{4, 0}, 4}, Disc{{0, 0}, 10}));
  CHECK_FALSE(overlap(Disc{{0, 0}, 4}, Disc{{3, 0}, 2}));
  CHECK(overlap(Disc{{0, 0}, 4}, Disc{{2, 0}, 2}));
}

TEST_CASE("a circle against a slanted edge needs more than 128 bits and stays exact") {
  // The edge from (0, 0) to (4, 3) times k has its inner side towards (3, -4); the centre is 5 k m away.
  const std::int64_t k = 1'000'000'000'000;  // kilometres
  const Pts wedge = {{0, 0}, {4 * k, 3 * k}, {4 * k, -30 * k}};
  const Pt centre = {2 * k + 3 * k / 10, 3 * k / 2 - 4 * k / 10};  // half a k from the edge
  CHECK(isWithin(Disc{centre, k}, wedge));
  CHECK_FALSE(isWithin(Disc{centre, k + 2}, wedge));
}

TEST_CASE("whole square roots are the largest that fit") {
  CHECK(squareRoot(0) == 0);
  CHECK(squareRoot(15) == 3);
  CHECK(squareRoot(16) == 4);
  rc::check("between its square and the next", [] {
    const auto n = *rc::gen::inRange<std::int64_t>(0, 4'000'000'000'000'000'000);
    const Wide r = squareRoot(Wide{n} * 1000);
    return r * r <= Wide{n} * 1000 && (r + 1) * (r + 1) > Wide{n} * 1000;
  });
}

TEST_CASE("three sides become the corners of a triangle") {
  CHECK(triangleCorners(4, 5, 3) == std::array<Pt, 3>{Pt{0, 0}, Pt{4, 0}, Pt{0, 3}});
  // An obtuse one hangs over to the left and is moved back: (1600 + 562500 - 592900) / 80 = -360.
  const auto t = triangleCorners(40, 770, 750);
  CHECK(t == std::array<Pt, 3>{Pt{360, 0}, Pt{400, 0}, Pt{0, 657}});  // sqrt(562500 - 129600) = 657.95
}

TEST_CASE("turning and moving an outline changes nothing about it") {
  rc::check([] {
    const auto d = *rc::gen::inRange<std::int64_t>(-1'000'000, 1'000'000);
    Pts turned = angle;
    std::reverse(turned.begin(), turned.end());
    const Pts far = moved(turned, d, -d);
    return isSimple(far) && twiceArea(far) == twiceArea(angle) && isWithin(far, moved(angle, d, -d)) &&
           overlap(far, moved(angle, d, -d));
  });
}

namespace {

/// A comb of so many teeth, each two wide and two apart: as many corners in one box as an outline may have.
Pts comb(int teeth, std::int64_t x, std::int64_t y, std::int64_t down) {
  Pts p = {{x, y}};
  for (int i = 0; i < teeth; ++i) {
    const std::int64_t left = x + 4 * i;
    p.insert(p.end(), {{left, y + down}, {left + 2, y + down}, {left + 2, y}, {left + 4, y}});
  }
  p.push_back({x + 4 * teeth, y - down});
  p.push_back({x, y - down});
  return p;
}

}  // namespace

TEST_CASE("outlines that reach into each other's boxes are compared exactly") {
  const Pts teeth = comb(49, 0, 0, 1000);
  Pts between = comb(49, 2, 0, 1000);  // the other way up, its teeth in the gaps
  for (Pt& p : between) p.y = 1001 - p.y;
  CHECK_FALSE(overlap(teeth, between));
  CHECK_FALSE(overlap(between, teeth));
  CHECK(isWithin(teeth, comb(49, 0, 0, 1000)));
  for (Pt& p : between) p.x += 1;
  CHECK(overlap(teeth, between));
  CHECK_FALSE(isWithin(teeth, between));
}

TEST_CASE("fifty outlines of two hundred corners that lie apart are told apart at once") {
  const auto from = std::chrono::steady_clock::now();
  std::vector<Pts> combs;
  for (int i = 0; i < 50; ++i) combs.push_back(comb(49, 200 * i, 0, 50));
  for (const Pts& a : combs)
    for (const Pts& b : combs)
      if (&a != &b) CHECK_FALSE(overlap(a, b));
  CHECK(std::chrono::steady_clock::now() - from < std::chrono::seconds{5});
}
