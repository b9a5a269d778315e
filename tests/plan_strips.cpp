// Boards in strips that keep a wet edge, worked out by hand from boards per strip = open time x crew rate /
// (length of a board x pitch), common practice, and what holds for the strips of any deck.
#include "schedule/strips/strips.h"
#include "schedule/strips/ways_out.h"

#include "estimate/estimate.h"
#include "fixtures.h"
#include "random_cases.h"

#include <catch2/catch.hpp>

using namespace model;

namespace {

std::optional<Place> wayOutOf(const std::vector<Deck>& decks, std::size_t deck,
                              const std::vector<std::size_t>& wet, const std::vector<std::size_t>& next) {
  return schedule::wayOut(decks, schedule::placedAsGiven(decks), deck, wet, next);
}

WetEdge edgeOf(const JobInputs& c, std::size_t deck = 0, const Plan& plan = {}) {
  const auto e = estimate::makeEstimate(c, fixtures::sampleContent());
  for (const auto& edge : schedule::wetEdges(c, fixtures::sampleContent(), e, plan)) {
    if (edge.deck == deck && edge.coat == 1) return edge;
  }
  throw std::logic_error("no such deck");
}

std::vector<int> boardsOf(const WetEdge& edge) {
  std::vector<int> boards;
  for (const auto& s : edge.strips) boards.push_back(s.boards);
  return boards;
}

std::vector<int> minutesOf(const WetEdge& edge) {
  std::vector<int> minutes;
  for (const auto& s : edge.strips) minutes.push_back(s.minutes);
  return minutes;
}

Place at(std::int64_t x, std::int64_t y) { return {base::millimetres(x), base::millimetres(y)}; }

/// Two people who lay 20 m2/h each with an oil that stays open for 20 minutes: 13.33 m2 in a strip. Boards
/// take 100 mm with their gap.
JobInputs caseOf(Deck deck) {
  JobInputs c = fixtures::sampleCase();
  c.job.areas = {std::move(deck)};
  return c;
}

Deck deckOf(Shape shape) {
  Deck d = fixtures::sampleDeck();
  d.shape = std::move(shape);
  return d;
}

}  // namespace

TEST_CASE("a strip holds as many whole boards as the crew lays while the coat is open") {
  const auto edge = edgeOf(caseOf(fixtures::sampleDeck()));
  // 20 min x 40 m2/h = 13.33 m2, and a board of 10 m x 0.1 m is 1 m2: 13 of them, 40 in all.
  CHECK(boardsOf(edge) == std::vector{13, 13, 13, 1});
  CHECK(minutesOf(edge) == std::vector{20, 20, 20, 2});  // 13 / 40 h = 19.5 min; 1 / 40 h = 1.5 min
  CHECK(edge.openMinutes == 20);
  CHECK_FALSE(edge.isTooLong);
  CHECK(edge.peopleNeeded == 0);
  CHECK(edge.strips[1].fromBoard == 13);
  CHECK(edge.strips[3].number == 4);
  CHECK(edge.strips[0].area == base::squareMetres(13));
}

TEST_CASE("a strip that fits to the second is not cut short") {
  JobInputs c = caseOf(fixtures::sampleDeck());
  c.job.taskRates["oil"] = fixtures::pieces(15);
  CHECK(boardsOf(edgeOf(c)) == std::vector{10, 10, 10, 10});  // 20 min x 30 m2/h = 10 m2
}

TEST_CASE("warm boards in the hours of the coat make the strips narrower") {
  Plan plan;
  const base::Date day = *base::parseDate("2027-03-18");
  plan.shifts.push_back({"oil", 0, 1, {day, 8 * 60}, {day, 10 * 60}});
  const auto hour = [&](int clock, double surface) {
    Hour h;
    h.at = {day, clock * 60};
    h.source = WeatherSource::Forecast;
    h.surface = surface;
    plan.hours.push_back(h);
  };
  hour(8, 24);
  hour(9, 30);   // 10 K above 20 C halve the open time
  hour(10, 45);  // the coat is done
  const auto edge = edgeOf(caseOf(fixtures::sampleDeck()), 0, plan);
  CHECK(edge.openMinutes == 10);
  CHECK(boardsOf(edge) == std::vector{6, 6, 6, 6, 6, 6, 4});  // 10 min x 40 m2/h = 6.67 m2
  plan.hours.back().source = WeatherSource::None;
  plan.hours[0].source = plan.hours[1].source = WeatherSource::None;
  CHECK(edgeOf(caseOf(fixtures::sampleDeck()), 0, plan).openMinutes == 20);
}

TEST_CASE("boards of different lengths are counted by their own sizes") {
  // The longest edge is the upper one, so the strips begin below: 40 boards of 4 m, then 20 of 10 m.
  const auto edge = edgeOf(caseOf(deckOf(Polygon{
      {at(0, 0), at(10'000, 0), at(10'000, 2'000), at(4'000, 2'000), at(4'000, 6'000), at(0, 6'000)}})));
  CHECK(edge.startsAtEnd);
  CHECK(*edge.wayOut == at(5'000, 0));
  // 33 x 0.4 = 13.2 m2; 7 x 0.4 + 10 x 1 = 12.8 m2; 10 x 1 m2
  CHECK(boardsOf(edge) == std::vector{33, 17, 10});
  CHECK(edge.strips[1].area == base::Area::whole(12'800'000));
}

TEST_CASE("a hole in the deck makes its boards shorter") {
  Deck deck = fixtures::sampleDeck();
  deck.without.push_back({Rectangle{base::metres(5), base::metres(2)}, at(2'000, 0), "pool"});
  const auto edge = edgeOf(caseOf(deck));
  // 20 boards of 5 m and 20 of 10 m: 20 x 0.5 + 3 x 1 = 13 m2; 13 x 1 m2; 4 x 1 m2
  CHECK(boardsOf(edge) == std::vector{23, 13, 4});
}

TEST_CASE("boards too long for the open time are told with the people that would help") {
  JobInputs c = caseOf(deckOf(Rectangle{base::metres(30), base::metres(4)}));
  c.job.areas[0].boards->width = base::millimetres(245);
  c.job.crew.people = 1;
  const auto edge = edgeOf(c);  // a board is 30 m x 0.25 m = 7.5 m2: 22.5 min for one
  CHECK(edge.isTooLong);
  CHECK(edge.peopleNeeded == 2);
  CHECK(edge.strips.size() == 16);
  CHECK(edge.strips[0].minutes == 23);
  c.job.crew.people = 2;
  CHECK_FALSE(edgeOf(c).isTooLong);
}

TEST_CASE("nobody is asked for whom there is no room along a board") {
  JobInputs c = caseOf(fixtures::sampleDeck());
  c.job.taskRates["oil"] = {600'000};  // 1 m2 takes one person 100 min: five would do it in 20
  CHECK(edgeOf(c).peopleNeeded == 5);
  c.job.taskRates["oil"] = {500'000};  // 120 min: six, but a board of 10 m has room for five
  const auto edge = edgeOf(c);
  CHECK(edge.isTooLong);
  CHECK(edge.peopleNeeded == 0);
}

TEST_CASE("stairs are laid tread by tread from the top step down") {
  JobInputs c = caseOf(fixtures::sampleSteps());
  const auto edge = edgeOf(c);
  CHECK(boardsOf(edge) == std::vector{4});
  CHECK(edge.startsAtEnd);
  CHECK(edge.strips[0].minutes == 4);      // 2.16 m2 at 40 m2/h: 3.24 min
  c.job.areas[0].wayOut = at(1'100, 600);  // at the top
  CHECK_FALSE(edgeOf(c).startsAtEnd);
}

TEST_CASE("what has no boards to count has an open time and no strips") {
  Deck bare = fixtures::sampleDeck();
  bare.boards.reset();
  Deck screen = deckOf(Screen{base::metres(6), base::metres(2), 2, fixtures::percent(60)});
  Deck rail = deckOf(Strip{base::metres(20), base::millimetres(300)});
  Deck given = deckOf(Measured{base::squareMetres(30), {}});
  for (const Deck& deck : {bare, screen, rail, given}) {
    const auto edge = edgeOf(caseOf(deck));
    CHECK(edge.strips.empty());
    CHECK(edge.openMinutes == 20);
    CHECK_FALSE(edge.isTooLong);
  }
}

TEST_CASE("the strips end at the way out") {
  JobInputs c = caseOf(fixtures::sampleDeck());
  CHECK_FALSE(edgeOf(c).startsAtEnd);
  CHECK(*edgeOf(c).wayOut == at(5'000, 4'000));  // of two long edges the lower one
  c.job.areas[0].wayOut = at(10'000, 500);
  CHECK(edgeOf(c).startsAtEnd);
  c.job.areas[0].boards->run = Run::ShortSide;  // now the boards are counted from the left
  CHECK_FALSE(edgeOf(c).startsAtEnd);
}

TEST_CASE("the way out of a deck leads to one that is coated next, and over none that is wet") {
  Deck a = fixtures::sampleDeck(), b = fixtures::sampleDeck(), stairs = fixtures::sampleSteps();
  a.at = at(0, 0);
  b.at = at(2'000, -4'000);        // above a
  stairs.at = at(12'000, -2'000);  // right of b, whose top step leans against it
  const std::vector<Deck> decks = {a, b, stairs};
  CHECK(*wayOutOf(decks, 0, {}, {1, 2}) == at(6'000, 0));  // the middle of what b touches of the edge
  CHECK(*wayOutOf(decks, 1, {0}, {2}) == at(5'000, 0));    // not back over a; its boards end at no stairs
  CHECK(*wayOutOf(decks, 1, {}, {0}) == at(4'000, 4'000));
  CHECK(*wayOutOf(decks, 2, {0, 1}, {}) == at(1'120, 600));  // the foot: stairs rise to the left, 4 x 280 mm
  CHECK_FALSE(wayOutOf({deckOf(Strip{base::metres(20), base::millimetres(300)})}, 0, {}, {}));
}

TEST_CASE("a deck is left by its longest edge that touches no other, off a high one only at need") {
  Deck a = fixtures::sampleDeck(), b = fixtures::sampleDeck();
  a.at = at(0, 4'000);
  b.at = at(0, 0);  // its lower edge touches a
  CHECK(*wayOutOf({a, b}, 1, {}, {}) == at(5'000, 0));
  b.edgeHeight = base::millimetres(800);
  CHECK(*wayOutOf({a, b}, 1, {}, {}) == at(5'000, 4'000));  // over a, which is dry
  CHECK(*wayOutOf({a, b}, 1, {0}, {}) == at(5'000, 0));     // a is wet
}

TEST_CASE("stairs between two wet decks are left over their side") {
  Deck a = fixtures::sampleDeck(), b = fixtures::sampleDeck(), stairs = fixtures::sampleSteps();
  a.at = at(0, 0);
  stairs.at = at(10'000, 1'000);
  b.at = at(11'120, 0);
  const auto out = *wayOutOf({a, b, stairs}, 2, {0, 1}, {});
  CHECK(out.x == base::millimetres(560));
}

TEST_CASE("an L embraces decks that it does not touch") {
  // Two arms of 2 m; the stairs stand in its corner, from its upright arm up to a deck that touches neither.
  Deck walk = deckOf(Polygon{
           {at(0, 0), at(2'000, 0), at(2'000, 8'000), at(20'000, 8'000), at(20'000, 10'000), at(0, 10'000)}}),
       stairs = fixtures::sampleSteps(), deck = fixtures::sampleDeck();
  walk.at = at(0, 0);
  stairs.at = at(2'000, 1'000);
  deck.at = at(3'120, 0);
  // The walk is wet at the foot, so the crew leaves over the deck at the top.
  CHECK(*wayOutOf({walk, stairs, deck}, 1, {0}, {}) == at(1'120, 600));
}

TEST_CASE("a deck is laid before another where the way out that the job gives touches it") {
  Deck a = fixtures::sampleDeck(), b = fixtures::sampleDeck();
  a.at = at(0, 0);
  b.at = at(0, 4'000);
  CHECK_FALSE(schedule::leadsOnto({a, b})[1][0]);
  b.wayOut = at(5'000, 0);
  CHECK(schedule::leadsOnto({a, b})[1][0]);
  CHECK_FALSE(schedule::leadsOnto({a, b})[0][1]);
  b.wayOut = at(5'000, 4'000);
  CHECK_FALSE(schedule::leadsOnto({a, b})[1][0]);
}

TEST_CASE("a deck is laid before another where nothing but a high edge is left once that is wet") {
  Deck a = fixtures::sampleDeck(), b = fixtures::sampleDeck();
  a.at = at(0, 4'000);
  b.at = at(0, 0);  // its lower edge touches a
  CHECK_FALSE(schedule::leadsOnto({a, b})[1][0]);
  b.edgeHeight = base::millimetres(800);
  CHECK(schedule::leadsOnto({a, b})[1][0]);
  CHECK_FALSE(schedule::leadsOnto({a, b})[0][1]);  // a is left over its other edge
}

namespace {

int within(int from, int to) { return *rc::gen::inRange(from, to + 1); }
base::Length anyLength(int from, int to) { return base::millimetres(within(from, to)); }

Deck anyDeck() {
  Deck d;
  switch (within(0, 5)) {
    case 0:
      d = deckOf(Rectangle{anyLength(500, 20'000), anyLength(500, 20'000)});
      break;
    case 1: {  // an L
      const int x = within(1'000, 15'000), y = within(1'000, 15'000), dx = within(100, x - 1),
                dy = within(100, y - 1);
      d = deckOf(Polygon{{at(0, 0), at(x, 0), at(x, dy), at(dx, dy), at(dx, y), at(0, y)}});
      break;
    }
    case 2:
      d = deckOf(Circle{anyLength(500, 12'000)});
      break;
    case 3: {
      const int outer = within(1'000, 12'000);
      d = deckOf(Ring{base::millimetres(outer), base::millimetres(within(200, outer - 100))});
      break;
    }
    case 4: {
      const auto side = anyLength(1'000, 9'000);
      d = deckOf(Triangle{side, side, anyLength(500, static_cast<int>(side.millionths / 1'000'000))});
      break;
    }
    default:
      d = deckOf(Stairs{within(1, 30), anyLength(600, 6'000), anyLength(200, 400), anyLength(100, 200)});
  }
  d.boards->width = anyLength(40, 300);
  d.boards->gap = anyLength(0, 12);
  d.boards->run = within(0, 1) == 0 ? Run::LongSide : Run::ShortSide;
  if (within(0, 1) == 0) d.wayOut = at(within(0, 12'000), within(0, 12'000));
  if (within(0, 2) == 0 && std::holds_alternative<Rectangle>(d.shape))
    d.without.push_back({Circle{base::millimetres(200)}, at(250, 250), "post"});
  return d;
}

}  // namespace

TEST_CASE("strips hold every board of any deck once, and none outlasts the open time but a single board") {
  holdsAlways(500,
              [] {
                JobInputs c = caseOf(anyDeck());
                c.job.crew.people = within(1, 5);
                c.job.taskRates["oil"] = fixtures::pieces(within(1, 60));
                Product product = *c.product;
                product.openTime = fixtures::minutes(within(1, 60));
                c.product = &product;
                const auto e = estimate::makeEstimate(c, fixtures::sampleContent());
                const auto edges = schedule::wetEdges(c, fixtures::sampleContent(), e, {});
                RC_ASSERT(edges.size() == e.coats.size());
                RC_CLASSIFY(edges.front().strips.size() > 1, "several strips");
                RC_CLASSIFY(edges.front().isTooLong, "a board beyond the open time");
                for (const auto& edge : edges) {
                  const auto* stairs = std::get_if<Stairs>(&c.job.areas[0].shape);
                  int board = 0, number = 0;
                  base::Area area;
                  bool isAnyTooLong = false;
                  for (const auto& s : edge.strips) {
                    RC_ASSERT(s.fromBoard == board);
                    RC_ASSERT(s.number == ++number);
                    RC_ASSERT(s.boards >= 1);
                    board += s.boards;
                    area += s.area;
                    if (s.minutes <= edge.openMinutes) continue;
                    RC_ASSERT(s.boards == 1);
                    isAnyTooLong = true;
                  }
                  RC_ASSERT(board == (stairs ? stairs->steps : e.decks[0].boards));
                  RC_ASSERT(area == e.decks[0].area);
                  RC_ASSERT(edge.isTooLong == isAnyTooLong);
                  RC_ASSERT(edge.peopleNeeded == 0 || edge.peopleNeeded > c.job.crew.people);
                }
              },
              {"several strips", "a board beyond the open time"});
}
