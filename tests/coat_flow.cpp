// A round of coats, strip by strip: who cuts in, lays and wipes, and when.
#include "schedule/crew/coat_flow.h"
#include "fixtures.h"

#include <catch2/catch.hpp>

using namespace model;
using base::metres;
using namespace schedule;

namespace {

/// A deck of 100 mm boards 10 m long; so many hundredths of a person-minute for each of its boards.
struct Scene {
  Job job;
  std::unique_ptr<AccessGraph> graph;
  std::optional<Row> row;
  Unit unit;
  FlowRules rules;
  std::vector<FlowItem> items;

  explicit Scene(int boards, Effort layPerBoard = 200) {
    Deck deck = fixtures::sampleDeck();
    deck.shape = Rectangle{metres(10), base::millimetres(100 * boards)};
    deck.at = Place{};
    deck.wayOut = Place{metres(5), Length()};
    job.areas = {deck};
    unit.coats.resize(1);
    unit.coats[0].layTask = "coat";
    unit.coats[0].lay = layPerBoard * boards;
    rules.people = 2;
    rules.isWet = [](std::size_t, int) { return false; };
    rules.dryBoardsBeside = [](std::size_t, int) { return std::optional<BoardSpan>(); };
  }
  using Length = base::Length;

  std::optional<Flow> flow(int start = 480, Span open = {480, 960}) {
    graph = std::make_unique<AccessGraph>(job);
    row = rowOf(placedAsGiven(job.areas)[0], job.areas[0]);
    findReach(*row, graph->areas()[0]);
    unit.row = &*row;
    unit.runs = runsOf(*row, 0, *graph);
    rules.graph = graph.get();
    FlowItem item{0, &unit, 1, {open}, 0, {}};
    item.surface.fill(20);
    items = {item};
    return flowOf(items, start, rules);
  }
};

}  // namespace

TEST_CASE("strips hold as many whole boards as are laid while the coat is open, in even widths") {
  Scene s(30);  // 60 minutes: three strips of 20 minutes, 10 boards each
  s.rules.people = 1;
  const auto flow = s.flow();
  REQUIRE(flow);
  REQUIRE(flow->strips.size() == 3);
  for (const auto& strip : flow->strips) {
    CHECK(strip.boards == 10);
    CHECK(strip.lay.end - strip.lay.start == 20);
  }
  CHECK(flow->strips[0].fromBoard == 20);  // from the lower edge towards the way out at the upper one
  CHECK_FALSE(flow->strips[0].goesOn);
  CHECK(flow->strips[1].goesOn);
  CHECK(flow->lastStroke == 540);
}

TEST_CASE("warm boards make the strips narrower") {
  Scene s(30);
  s.rules.people = 1;
  s.flow();
  s.items[0].surface.fill(30);  // open half as long
  const auto flow = flowOf(s.items, 480, s.rules);
  REQUIRE(flow);
  CHECK(flow->strips.size() == 6);
  CHECK(flow->strips[0].openMinutes == 10);
}

TEST_CASE("a board that takes longer than the coat stays open is a strip of its own, and told") {
  Scene s(3, 2500);
  s.rules.people = 1;
  const auto flow = s.flow();
  REQUIRE(flow);
  REQUIRE(flow->strips.size() == 3);
  CHECK(flow->strips[1].isTooLong);
}

TEST_CASE("a strip is cut in beside laying it or just ahead, by who does not lay") {
  Scene s(30);
  s.unit.coats[0].cutInTask = "cut-in";
  s.unit.coats[0].cutIn = 3000;  // 10 minutes a strip
  const auto flow = s.flow();
  REQUIRE(flow);
  const auto& first = flow->strips[0];
  CHECK(first.cutIn->who == std::vector<std::size_t>{1});
  CHECK(first.cutIn->start == 480);
  CHECK(first.lay.start == 480);  // who lays follows
  CHECK(first.cutIn->end == 490);
  const auto& second = flow->strips[1];
  CHECK(second.cutIn->start == 490);
  CHECK(second.lay.start == 500);
  CHECK(second.cutIn->who == std::vector<std::size_t>{1});
  CHECK(second.lay.who == std::vector<std::size_t>{0});
}

TEST_CASE("every strip is wiped when its wait is over, from the ground where the pole reaches it") {
  Scene s(20);
  s.unit.coats[0].wipeTask = "wipe";
  s.unit.coats[0].wipe = 2000;
  s.rules.wipeWait = 60;
  const auto flow = s.flow();
  REQUIRE(flow);
  REQUIRE(flow->strips.size() == 2);
  for (const auto& strip : flow->strips) {
    CHECK(strip.wipe->start == strip.lay.end + 60);
    CHECK(strip.wipe->end - strip.wipe->start == 10);
    CHECK(strip.wipe->from.on == Stand::On::Ground);
  }
  CHECK(flow->unreached == 0);
}

TEST_CASE(
    "where water lies all round, laying waits until what lies behind can still be wiped from dry boards") {
  Scene s(60);  // 6 m across the boards, 2 h by one; the pole reaches 3 m
  s.job.areas[0].edges = {
      {Compass::East, EdgeKind::Water}, {Compass::South, EdgeKind::Water}, {Compass::West, EdgeKind::Water}};
  s.unit.coats[0].wipeTask = "wipe";
  s.unit.coats[0].wipe = 3000;
  s.rules.wipeWait = 60;
  const auto flow = s.flow();
  REQUIRE(flow);
  CHECK(flow->unreached == 0);
  for (std::size_t i = 0; i < flow->strips.size(); ++i) {
    const auto& strip = flow->strips[i];
    if (strip.wipe->from.on != Stand::On::Boards) continue;
    // Whoever wipes it stands on boards that are not laid before, within reach of its far side.
    int dry = 60;
    for (const auto& other : flow->strips) {
      if (other.lay.start < strip.wipe->end) dry = std::min(dry, other.fromBoard);
    }
    CHECK(dry > 0);
    CHECK((strip.fromBoard + strip.boards - dry) * 0.1 <= 3.1);
  }
}

TEST_CASE(
    "narrow strips side by side are wiped in one go, none before its wait is over or when it is sticky") {
  Scene s(30);
  s.unit.coats[0].wipeTask = "wipe";
  s.unit.coats[0].wipe = 3000;
  s.rules.wipeWait = 60;
  s.flow();
  s.items[0].surface.fill(40);  // open for 5 minutes: two people lay six strips of as long
  const auto flow = flowOf(s.items, 480, s.rules);
  REQUIRE(flow);
  REQUIRE(flow->strips.size() == 6);
  std::vector<Slot> wipes;
  for (const auto& strip : flow->strips) {
    CHECK(strip.wipe->start >= strip.lay.end + 60);
    CHECK(strip.wipe->start <= strip.lay.end + 120);
    if (wipes.empty() || wipes.back() != *strip.wipe) wipes.push_back(*strip.wipe);
  }
  CHECK(wipes.size() <= 3);
}

TEST_CASE("one alone wipes what would be sticky before the next strip is done") {
  Scene s(24, 500);
  s.rules.people = 1;
  s.unit.coats[0].cutIn = 2400;
  s.unit.coats[0].wipeTask = "wipe";
  s.unit.coats[0].wipe = 2400;
  for (int wait = 15; wait <= 40; wait += 5) {
    INFO(wait);
    s.rules.wipeWait = wait;
    const auto flow = s.flow();
    REQUIRE(flow);
    CHECK(flow->late == 0);
    for (const auto& strip : flow->strips) CHECK(strip.wipe->start <= strip.lay.end + 2 * wait);
  }
}

TEST_CASE("what nobody reaches later from a dry place is wiped as soon as it is laid") {
  Scene s(4, 1000);  // 0.4 m of boards, water all round but where they begin
  s.job.areas[0].edges = {
      {Compass::East, EdgeKind::Water}, {Compass::South, EdgeKind::Water}, {Compass::West, EdgeKind::Water}};
  s.job.areas[0].shape = Rectangle{metres(20), base::millimetres(400)};
  s.job.areas[0].wayOut = Place{Scene::Length(), base::millimetres(200)};
  s.job.areas[0].edges.push_back({Compass::North, EdgeKind::Water});
  s.unit.coats[0].wipeTask = "wipe";
  s.unit.coats[0].wipe = 400;
  s.rules.wipeWait = 60;
  const auto flow = s.flow();
  REQUIRE(flow);
  CHECK(flow->unreached > 0);
  for (const auto& strip : flow->strips) {
    if (strip.wipe->from.on != Stand::On::Strip) continue;
    CHECK(strip.wipe->start == strip.lay.end);
    CHECK(strip.wipe->who == strip.lay.who);
  }
}

TEST_CASE("what pieces are rounded up by comes off a later one, and never a whole one") {
  const auto piece = [](Effort exact, int minutes) {
    Piece p;
    p.exact = exact;
    p.minutes = minutes;
    return p;
  };
  const auto even = evened({piece(200, 5), piece(200, 5), piece(5700, 60), piece(200, 5)});
  REQUIRE(even.size() == 4);
  CHECK(even[2].minutes == 55);  // 3 and 3 and 3 minutes too many by then
  CHECK(even[3].minutes == 5);
  CHECK(minutesOf(even) == 70);  // 63 minutes of work
}

TEST_CASE("small pieces on two decks are done side by side, those on one deck one after another") {
  const auto piece = [](std::size_t deck, const char* task, Effort exact) {
    Piece p;
    p.task = task;
    p.deck = deck;
    p.exact = exact;
    p.minutes = 5;
    return p;
  };
  const auto shared = sharedOut(
      {piece(0, "tape", 100), piece(1, "tape", 100), piece(1, "blow", 100), piece(0, "blow", 400)}, 3);
  REQUIRE(shared.size() == 4);
  CHECK(shared[0].from == shared[1].from);
  CHECK(shared[0].who == std::vector<std::size_t>{0});
  CHECK(shared[1].who == std::vector<std::size_t>{1, 2});
  CHECK(shared[2].from == 5);
  CHECK(shared[3].from == 10);  // 12 person-minutes: all of them
  CHECK(shared[3].until == 15);
}

TEST_CASE("parts of a deck are washed as one, all decks' fixing before any washing") {
  const auto piece = [](std::size_t rank, std::size_t deck, int part) {
    Piece p;
    p.rank = rank;
    p.deck = deck;
    p.part = part;
    p.exact = 700;
    p.minutes = 10;
    return p;
  };
  const auto pieces =
      byTask({piece(0, 0, 1), piece(1, 0, 1), piece(0, 0, 2), piece(1, 0, 2), piece(1, 1, 0)});
  REQUIRE(pieces.size() == 3);
  CHECK(pieces[0].rank == 0);
  CHECK(pieces[0].minutes == 15);  // 14
  CHECK(pieces[1].part == 0);
  CHECK(pieces[2].deck == std::size_t{1});
}

TEST_CASE("a coat that no fit hours hold to its last stroke is not begun") {
  Scene s(30);
  s.rules.people = 1;
  CHECK_FALSE(s.flow(480, {480, 530}));
  CHECK(s.flow(480, {480, 540}));
}

TEST_CASE("nobody does two things at once") {
  for (const int people : {1, 2, 3, 5}) {
    Scene s(40);
    s.rules.people = people;
    s.rules.wipeWait = 30;
    s.unit.coats[0].cutIn = 4000;
    s.unit.coats[0].wipe = 4000;
    const auto flow = s.flow();
    REQUIRE(flow);
    std::vector<Slot> all;
    for (const auto& strip : flow->strips) {
      all.push_back(strip.lay);
      if (strip.cutIn) all.push_back(*strip.cutIn);
      REQUIRE(strip.wipe);
      // Strips that are wiped in one go share it.
      if (std::find(all.begin(), all.end(), *strip.wipe) == all.end()) all.push_back(*strip.wipe);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t k = i + 1; k < all.size(); ++k) {
        for (const auto person : all[i].who) {
          const bool isHis = std::find(all[k].who.begin(), all[k].who.end(), person) != all[k].who.end();
          CHECK_FALSE((isHis && all[i].start < all[k].end && all[k].start < all[i].end));
        }
      }
    }
  }
}
