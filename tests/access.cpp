// How one gets about on a site: which areas touch, what leads to the ground, and what that means for the
// order of coats and of boards.
#include "fixtures.h"
#include "near.h"
#include "schedule/crew/work.h"

#include <catch2/catch.hpp>

using namespace model;
using base::metres;
using base::millimetres;
using schedule::AccessGraph;

namespace {

Deck floorAt(const char* name, std::int64_t x, std::int64_t y, std::int64_t width, std::int64_t height) {
  Deck d = fixtures::sampleDeck();
  d.name = name;
  d.shape = Rectangle{metres(width), metres(height)};
  d.at = Place{metres(x), metres(y)};
  return d;
}

Job jobOf(std::vector<Deck> areas) {
  Job job;
  job.areas = std::move(areas);
  return job;
}

std::vector<schedule::Where> crossed(const AccessGraph& graph, std::size_t from) {
  return graph.path(from, {}, [](std::size_t) { return false; }).value();
}

}  // namespace

TEST_CASE("a low deck is left over its longest open edge, a high one by the deck beside it") {
  Deck high = floorAt("High", 0, 0, 6, 3), low = floorAt("Low", 6, 0, 4, 3);
  high.edgeHeight = millimetres(900);
  const AccessGraph graph(jobOf({high, low}));
  REQUIRE(graph.areas()[0].ways.size() == 1);
  CHECK(graph.areas()[0].ways[0].to == 1u);
  CHECK(graph.areas()[0].ways[0].at().x == near(6));
  CHECK(graph.areas()[0].depth == 2);
  CHECK(graph.areas()[1].depth == 1);
  CHECK(crossed(graph, 0) == std::vector<schedule::Where>{1});
  CHECK(crossed(graph, 1).empty());
  CHECK(graph.assumed().empty());
}

TEST_CASE("where the job tells the way out, one leaves there and nowhere else") {
  Deck far = floorAt("Far", 0, 0, 6, 3), near = floorAt("Near", 6, 0, 4, 3);
  far.wayOut = Place{metres(6), metres(1)};
  const AccessGraph graph(jobOf({far, near}));
  REQUIRE(graph.areas()[0].ways.size() == 1);
  CHECK(graph.areas()[0].ways[0].to == 1u);
  CHECK(graph.areas()[0].depth == 2);
}

TEST_CASE("stairs are entered by their foot and their top, never over their sides") {
  Deck high = floorAt("High", 0, 0, 6, 3);
  high.edgeHeight = metres(1);
  Deck stairs = fixtures::sampleSteps();  // 1.12 m x 1.2 m: they rise towards the deck
  stairs.at = Place{metres(6), metres(1)};
  const AccessGraph graph(jobOf({high, stairs}));
  CHECK(graph.areas()[0].depth == 2);
  CHECK(graph.areas()[1].depth == 1);
  CHECK(crossed(graph, 0) == std::vector<schedule::Where>{1});
}

TEST_CASE("an area that nothing is known of is taken to be left over its longest edge, and told") {
  Deck high = floorAt("High", 0, 0, 6, 3);
  high.edgeHeight = metres(2);
  const AccessGraph graph(jobOf({high}));
  CHECK(graph.assumed() == std::vector<std::size_t>{0});
  CHECK(graph.areas()[0].depth == 1);
}

TEST_CASE("no way leads over a wall or the water, and nobody wipes from there") {
  Deck jetty = floorAt("Jetty", 0, 0, 6, 2);
  jetty.edges = {
      {Compass::North, EdgeKind::Wall}, {Compass::East, EdgeKind::Water}, {Compass::South, EdgeKind::Water}};
  const AccessGraph graph(jobOf({jetty}));
  REQUIRE(graph.areas()[0].ways.size() == 1);
  CHECK(graph.areas()[0].ways[0].at().x == near(0));
  REQUIRE(graph.areas()[0].stands.size() == 1);
  CHECK(graph.areas()[0].stands[0].edge.from.x == near(0));
}

TEST_CASE("what the plan draws beside a deck stands in the way as what is told of its edges does") {
  Job job = jobOf({floorAt("Jetty", 0, 0, 6, 2)});
  job.around = {{Surrounding::House, Rectangle{metres(8), metres(3)}, {metres(-1), metres(-3)}, ""},
                {Surrounding::Water, Rectangle{metres(9), metres(9)}, {metres(6), metres(-2)}, ""},
                {Surrounding::Water, Rectangle{metres(6), metres(5)}, {metres(0), metres(2)}, ""},
                {Surrounding::Tree, Circle{metres(2)}, {metres(-1), metres(1)}, ""}};
  const AccessGraph graph(job);
  REQUIRE(graph.areas()[0].ways.size() == 1);
  CHECK(graph.areas()[0].ways[0].at().x == near(0));
  REQUIRE(graph.areas()[0].stands.size() == 1);
  CHECK(graph.areas()[0].stands[0].edge.from.x == near(0));

  // What is told of a side counts before what is drawn there.
  job.areas[0].edges = {{Compass::South, EdgeKind::Open}};
  CHECK(AccessGraph(job).areas()[0].ways[0].at().y == near(2));
}

TEST_CASE("a deck is left where a path leads away from it, if one does") {
  Job job = jobOf({floorAt("Deck", 0, 0, 6, 2)});
  job.around = {{Surrounding::Path, Rectangle{metres(1), metres(8)}, {metres(4), metres(-8)}, ""}};
  const auto way = AccessGraph(job).areas()[0].ways.at(0).at();
  CHECK(way.x == near(4.5));
  CHECK(way.y == near(0));
}

TEST_CASE("a pole reaches less far past the end of a shorter board") {
  // An L: boards of 5.4 m along the left, of 2.8 m from 4.6 m on.
  Deck deck = floorAt("Deck", 0, 0, 8, 6);
  deck.shape = Polygon{{{metres(0), metres(0)},
                        {millimetres(4600), metres(0)},
                        {millimetres(4600), millimetres(2600)},
                        {metres(8), millimetres(2600)},
                        {metres(8), millimetres(5400)},
                        {metres(0), millimetres(5400)}}};
  deck.boards->run = Run::ShortSide;
  const auto row = schedule::rowOf(schedule::placedAsGiven({deck}).at(0), deck);
  REQUIRE(row);
  const double pitch = static_cast<double>(row->pitch.millionths) / 1e9;
  const int corner = static_cast<int>(4.6 / pitch);
  const auto within = [&](double m) { return static_cast<int>(m / pitch); };
  CHECK(schedule::isReachedFromBoard(*row, corner - within(3.2), within(3.2), corner - 1));
  // From the first short board: 2.6 m past its end and 2.2 m across are 3.4 m, 2.6 m and 2.6 m are 3.7 m.
  CHECK(schedule::isReachedFromBoard(*row, corner + 1 - within(2.2), within(2.2), corner + 1));
  CHECK_FALSE(schedule::isReachedFromBoard(*row, corner + 1 - within(2.6), within(2.6), corner + 1));
}

TEST_CASE("the compass turns with the plan") {
  Deck deck = floorAt("Deck", 0, 0, 6, 2);
  deck.edges = {{Compass::North, EdgeKind::Wall}};
  Job job = jobOf({deck});
  job.site.north = 90;  // the right side of the plan
  const AccessGraph graph(job);
  for (const auto& stand : graph.areas()[0].stands) CHECK(stand.edge.from.x + stand.edge.to.x < 12);
}

TEST_CASE("coats go over before under, far before near, stairs after the deck they lead from") {
  Deck far = floorAt("Far", 0, 0, 6, 3), near = floorAt("Near", 6, 0, 4, 3);
  far.edgeHeight = metres(1);
  Deck rail;
  rail.shape = Strip{metres(8), millimetres(400)};
  const AccessGraph graph(jobOf({near, far, rail}));
  CHECK(graph.order() == std::vector<std::size_t>{2, 1, 0});
}

TEST_CASE("boards are laid towards the way out, from both sides where it lies amid their ends") {
  const auto runs = [](Place out) {
    Deck deck = floorAt("Deck", 0, 0, 10, 4);  // 40 boards of 100 mm along x
    deck.wayOut = out;
    const Job job = jobOf({deck});
    const AccessGraph graph(job);
    const auto row = schedule::rowOf(schedule::placedAsGiven(job.areas)[0], deck);
    std::vector<std::vector<int>> all;
    for (const auto& run : schedule::runsOf(*row, 0, graph))
      all.push_back({run.first, run.count, run.isDown});
    return all;
  };
  using Runs = std::vector<std::vector<int>>;
  CHECK(runs({metres(5), metres(0)}) == Runs{{39, 40, 1}});  // the upper edge: from the lower one upwards
  CHECK(runs({metres(5), metres(4)}) == Runs{{0, 40, 0}});
  CHECK(runs({metres(10), base::millimetres(500)}) == Runs{{39, 40, 1}});  // a stride from the last board
  // Board 10 lies at the way out: the farther side first, up to it; then from the upper edge to board 10.
  CHECK(runs({metres(10), metres(1)}) == Runs{{39, 29, 1}, {0, 11, 0}});
  CHECK(runs({metres(10), metres(3)}) == Runs{{0, 30, 0}, {39, 10, 1}});
}
