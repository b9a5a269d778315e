#include "estimate/measure.h"
#include "fixtures.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

/// An area in millionths of a square metre, which are square millimetres.
std::int64_t squareMillimetres(Area a) { return divide(a.millionths, 1'000'000, Round::HalfUp); }
/// A length in millionths of a metre.
std::int64_t micrometres(Length l) { return divide(l.millionths, 1000, Round::HalfUp); }

model::Polygon polygon(const std::vector<std::pair<double, double>>& metresXY) {
  model::Polygon p;
  for (const auto& [x, y] : metresXY)
    p.points.push_back({{static_cast<std::int64_t>(x * 1e9 + (x < 0 ? -0.5 : 0.5))},
                        {static_cast<std::int64_t>(y * 1e9 + (y < 0 ? -0.5 : 0.5))}});
  return p;
}

}  // namespace

TEST_CASE("outlines have the area and the perimeter that others computed", "[estimate]") {
  struct Row {
    const char* source;
    std::vector<std::pair<double, double>> points;  // metres
    std::int64_t area;                              // square millimetres
    std::int64_t perimeter;                         // micrometres
  };
  // The first area is the worked example of Wikipedia, 'Shoelace formula' (seen); its perimeter and the other
  // rows were recomputed with Shapely 1.8.5 (GEOS 3.11.1), the regular ones by n/2 sin(2 pi/n) for radius 1.
  const Row rows[] = {
      {"shoelace example", {{1, 6}, {3, 1}, {7, 2}, {4, 4}, {8, 5}}, 16'500'000, 24'307'995},
      {"L shape", {{0, 0}, {6, 0}, {6, 4}, {3, 4}, {3, 7}, {0, 7}}, 33'000'000, 26'000'000},
      {"3-4-5 triangle", {{0, 0}, {4, 0}, {0, 3}}, 6'000'000, 12'000'000},
      {"T shape",
       {{0, 0}, {8.4, 0}, {8.4, 3.6}, {5.1, 3.6}, {5.1, 6.2}, {2.2, 6.2}, {2.2, 3.6}, {0, 3.6}},
       37'780'000,
       29'200'000},
      {"repeated corner", {{0, 0}, {2, 0}, {2, 0}, {2, 2}, {0, 2}}, 4'000'000, 8'000'000},
      {"corner on an edge", {{0, 0}, {1, 0}, {2, 0}, {2, 1}, {0, 1}}, 2'000'000, 6'000'000},
      {"quadrilateral", {{0, 0}, {5, 1}, {4, 4}, {1, 3}}, 12'000'000, 14'585'852},
      {"regular triangle", {{1, 0}, {-0.5, 0.866025403784}, {-0.5, -0.866025403784}}, 1'299'038, 5'196'152},
      {"regular octagon",
       {{1, 0},
        {0.707106781187, 0.707106781187},
        {0, 1},
        {-0.707106781187, 0.707106781187},
        {-1, 0},
        {-0.707106781187, -0.707106781187},
        {0, -1},
        {0.707106781187, -0.707106781187}},
       2'828'427,
       6'122'935},
      {"regular dodecagon",
       {{1, 0},
        {0.866025403784, 0.5},
        {0.5, 0.866025403784},
        {0, 1},
        {-0.5, 0.866025403784},
        {-0.866025403784, 0.5},
        {-1, 0},
        {-0.866025403784, -0.5},
        {-0.5, -0.866025403784},
        {0, -1},
        {0.5, -0.866025403784},
        {0.866025403784, -0.5}},
       3'000'000,
       6'211'657},
  };
  for (const auto& row : rows) {
    INFO(row.source);
    auto shape = polygon(row.points);
    const auto flat = estimate::measureShape(shape);
    CHECK(squareMillimetres(flat.area) == row.area);
    CHECK(micrometres(flat.perimeter) == row.perimeter);
    CHECK(estimate::isSimple(shape.points));

    std::reverse(shape.points.begin(), shape.points.end());
    CHECK(estimate::measureShape(shape).area == flat.area);  // the way round does not matter
  }
}

TEST_CASE("an outline that crosses itself is not simple", "[estimate]") {
  CHECK_FALSE(estimate::isSimple(polygon({{0, 0}, {2, 2}, {2, 0}, {0, 2}}).points));
  CHECK_FALSE(estimate::isSimple(polygon({{0, 0}, {1, 0}}).points));
}

TEST_CASE("rectangles in US customary sizes are exact", "[estimate]") {
  // 40 ft 6 in = 486 in and 12 ft = 144 in of 25.4 mm each: NIST SP 811 (2008), App. B.8.
  const auto flat = estimate::measureShape(model::Rectangle{{486 * 25'400'000LL}, {144 * 25'400'000LL}});
  CHECK(flat.area == Area{486LL * 92'903'040'000});  // 40.5 ft x 12 ft = 486 ft2
  CHECK(flat.perimeter == Length{1260 * 25'400'000LL});
}

TEST_CASE("circles and rings use pi to the square micrometre", "[estimate]") {
  // pi = 3.141 592 653 589 793 238...
  const auto circle = estimate::measureShape(model::Circle{metres(2)});
  CHECK(circle.area == Area{3'141'592'653'590});     // pi x 1 m2
  CHECK(circle.perimeter == Length{6'283'185'307});  // pi x 2 m
  const auto large = estimate::measureShape(model::Circle{metres(2000)});
  CHECK(large.area.millionths / 1000 == 3'141'592'653'589'793);  // 3.14 km2, right to 16 digits
  const auto ring = estimate::measureShape(model::Ring{metres(4), metres(2)});
  CHECK(ring.area == Area{9'424'777'960'769});      // pi x (4 - 1) m2
  CHECK(ring.perimeter == Length{18'849'555'922});  // pi x (4 + 2) m
}

TEST_CASE("triangles are measured from their sides", "[estimate]") {
  const auto right = estimate::measureShape(model::Triangle{metres(3), metres(4), metres(5)});
  CHECK(right.area == squareMetres(6));
  CHECK(right.perimeter == metres(12));
  // An equal-sided one of 1 m: sqrt(3)/4 = 0.433 012 701 892 m2.
  CHECK(estimate::measureShape(model::Triangle{metres(1), metres(1), metres(1)}).area ==
        Area{433'012'701'892});
  // 13, 14 and 15 enclose 84, the textbook example; at this size Heron's product needs more than 128 bits.
  CHECK(estimate::measureShape(model::Triangle{metres(1300), metres(1400), metres(1500)}).area ==
        squareMetres(840'000));
  // In sixty-fourths of an inch: 3/64, 4/64 and 5/64 in.
  CHECK(estimate::measureShape(model::Triangle{{3 * 396'875}, {4 * 396'875}, {5 * 396'875}}).area ==
        Area{945'059});  // 6 x 0.396 875^2 mm2 = 0.945 058 59
  CHECK(estimate::measureShape(model::Triangle{metres(1), metres(1), metres(3)}).area == Area{});
}

TEST_CASE("stairs, strips and screens are counted by the surface that is worked on", "[estimate]") {
  const auto stairs =
      estimate::measureShape(model::Stairs{4, millimetres(1200), millimetres(280), millimetres(170)});
  CHECK(stairs.area == Area::whole(2'160'000));  // 4 x 1.2 m x 0.45 m = 2.16 m2
  CHECK(stairs.perimeter == millimetres(6000));  // 2 x (1.2 m + 4 x 0.45 m)
  const auto rail = estimate::measureShape(model::Strip{metres(6), millimetres(250)});
  CHECK(rail.area == Area::whole(1'500'000));    // 6 m x 0.25 m
  CHECK(rail.perimeter == millimetres(12'500));  // 2 x (6 m + 0.25 m)
  const auto screen = estimate::measureShape(model::Screen{metres(3), metres(2), 2, percent(60)});
  CHECK(screen.area == Area::whole(7'200'000));  // 3 m x 2 m x 2 sides x 60 %
}

TEST_CASE("a measured area without a perimeter gets that of a square", "[estimate]") {
  CHECK(estimate::measureShape(model::Measured{squareMetres(49), {}}).perimeter == metres(28));  // 4 x 7 m
  CHECK(estimate::measureShape(model::Measured{squareMetres(49), metres(30)}).perimeter == metres(30));
}

TEST_CASE("cut-outs take off area and add edges to cut in", "[estimate]") {
  model::Deck d = sampleDeck();
  d.without = {{model::Circle{metres(2)}, {metres(5), metres(2)}, "tree"},
               {model::Rectangle{metres(1), metres(1)}, {metres(1), metres(1)}, ""}};
  const auto m = estimate::measureDeck(d);
  CHECK(m.area == Area{35'858'407'346'410});  // 40 - pi - 1 = 35.858 407 346 410 m2
  CHECK(m.perimeter == metres(28));           // 2 x (10 + 4) m
  CHECK(m.cutIn == Length{38'283'185'307});   // 28 + 2 pi + 4 m
}

TEST_CASE("boards, fixings and joists follow from the pitch", "[estimate]") {
  model::Deck d = sampleDeck();  // 10 m x 4 m, pitch 100 mm
  auto m = estimate::measureDeck(d);
  CHECK(m.boardMetres == metres(400));  // 40 m2 / 0.1 m
  CHECK(m.boards == 40);                // 4 m / 0.1 m
  CHECK(m.fixings == 2000);             // 40 m2 / (0.1 m x 0.4 m) x 2
  CHECK(m.across == metres(4));
  CHECK(m.along == metres(10));

  d.boards->run = model::Run::ShortSide;
  m = estimate::measureDeck(d);
  CHECK(m.boards == 100);  // 10 m / 0.1 m
  CHECK(m.along == metres(4));

  d.boards->gap = millimetres(6);
  m = estimate::measureDeck(d);
  CHECK(m.boards == 100);    // 10 m / 0.101 m = 99.01: the last one is sawn along
  CHECK(m.fixings == 1981);  // 40 / (0.101 x 0.4) x 2 = 1980.2

  d.shape = model::Rectangle{metres(4), metres(10)};  // the long side now runs down the page
  d.boards->run = model::Run::LongSide;
  m = estimate::measureDeck(d);
  CHECK(m.along == metres(10));
  CHECK(m.boards == 40);  // 4 m / 0.101 m = 39.6
}

TEST_CASE("boards of a square deck run along x either way", "[estimate]") {
  model::Deck d = sampleDeck();
  d.shape = model::Rectangle{metres(4), metres(4)};
  for (const auto run : {model::Run::LongSide, model::Run::ShortSide}) {
    d.boards->run = run;
    CHECK(estimate::measureDeck(d).along == metres(4));
    CHECK(estimate::measureDeck(d).boards == 40);
  }
}

TEST_CASE("the wetted surface counts edges, lower faces and reeded profiles", "[estimate]") {
  model::Deck d = sampleDeck();  // 40 m2, pitch 100 mm, 20 mm thick
  const auto wetted = [&] { return estimate::measureDeck(d).wetted; };
  CHECK(wetted() == squareMetres(40));
  d.boards->wetted = model::Wetted::TopAndEdges;
  CHECK(wetted() == squareMetres(56));  // 40 x (1 + 2 x 20/100)
  d.boards->wetted = model::Wetted::AllFaces;
  CHECK(wetted() == squareMetres(96));  // 40 x (2 + 2 x 20/100)
  d.boards->face = model::BoardFace::Reeded;
  CHECK(wetted() == squareMetres(106));  // 40 x (1.25 + 1 + 0.4): only the upper face is reeded
  d.boards->wetted = model::Wetted::Top;
  CHECK(wetted() == squareMetres(50));  // 40 x 1.25
  d.boards.reset();
  CHECK(wetted() == squareMetres(40));
}

TEST_CASE("the box around a shape is what it covers on the plan", "[estimate]") {
  const auto box = [](const model::Shape& s) { return estimate::extent(s); };
  CHECK(box(model::Rectangle{metres(3), metres(2)}).x == metres(3));
  CHECK(box(model::Ring{metres(4), metres(2)}).y == metres(4));
  const auto l = box(polygon({{1, 1}, {6, 1}, {6, 4}, {3, 4}, {3, 7}, {1, 7}}));
  CHECK(l.x == metres(5));
  CHECK(l.y == metres(6));
  const auto triangle = box(model::Triangle{metres(4), metres(5), metres(3)});
  CHECK(triangle.x == metres(4));
  CHECK(triangle.y == metres(3));
  CHECK(box(sampleSteps().shape).y == millimetres(1120));  // 4 x 280 mm
}

TEST_CASE("the sums of all decks are their parts added up", "[estimate]") {
  const auto a = estimate::measureDeck(sampleDeck()), b = estimate::measureDeck(sampleSteps());
  const auto all = estimate::sumOf({a, b});
  CHECK(all.area == a.area + b.area);
  CHECK(all.cutIn == metres(34));  // 28 + 6
  CHECK(all.fixings == 2000);
  CHECK(all.along == metres(10));
}

TEST_CASE("a slanting edge is measured to the nearest nanometre", "[estimate]") {
  // 1, the square root of 2, 1.414, and 1
  CHECK(estimate::measureShape(model::Polygon{{{{0}, {0}}, {{1}, {1}}, {{0}, {1}}}}).perimeter == Length{3});
}
