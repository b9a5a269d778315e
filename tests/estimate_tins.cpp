#include "estimate/tins.h"
#include "fixtures.h"

#include <catch2/catch.hpp>
#include <random>

using namespace base;
using namespace fixtures;
using estimate::cheapestTins;

namespace {

struct Best {
  std::int64_t cost, number, volume;
  friend auto operator<=>(const Best&, const Best&) = default;
};

Best bestOf(const model::TinSet& set) { return {set.cost.minor, set.number(), set.volume.millionths}; }

/// Every set of counts that does not go on buying once the need is covered: plain nested trial, no
/// cleverness.
void tryAll(std::int64_t need, const std::vector<model::Tin>& tins, std::size_t i, Best taken,
            std::optional<Best>& best) {
  if (taken.volume >= need) {
    if (!best || taken < *best) best = taken;
    return;
  }
  if (i == tins.size()) return;
  for (; taken.volume < need + tins[i].size.millionths;
       taken = {taken.cost + tins[i].price.minor, taken.number + 1, taken.volume + tins[i].size.millionths})
    tryAll(need, tins, i + 1, taken, best);
}

Best exhaustive(Volume need, const std::vector<model::Tin>& tins) {
  std::optional<Best> best;
  tryAll(need.millionths, tins, 0, {0, 0, 0}, best);
  return *best;
}

std::vector<model::Tin> usual(std::int64_t small, std::int64_t medium, std::int64_t large) {
  return {{millilitres(750), cents(small)}, {millilitres(2500), cents(medium)}, {litres(20), cents(large)}};
}

void checkAgainstExhaustiveSearch(const std::vector<model::Tin>& tins) {
  std::int64_t wrong = 0;
  for (std::int64_t ml = 100; ml <= 100'000; ml += 50) {
    const auto set = cheapestTins(millilitres(ml), tins);
    const bool same = bestOf(set) == exhaustive(millilitres(ml), tins);
    if (!same) UNSCOPED_INFO("wrong for " << ml << " mL");
    wrong += same ? 0 : 1;
  }
  CHECK(wrong == 0);
}

}  // namespace

TEST_CASE("the cheapest tins are bought, not the fewest", "[estimate]") {
  // 38.54 L: 2 x 20 L = 1520.00; 20 L + 7 x 2.5 L + 2 x 0.75 L = 1678.00.
  auto set = cheapestTins(millilitres(38'540), usual(46'00, 118'00, 760'00));
  REQUIRE(set.tins.size() == 1);
  CHECK(set.tins[0].count == 2);
  CHECK(set.cost == cents(1520'00));
  CHECK(set.volume == litres(40));
  // 22.6 L: 20 L + 2.5 L + 0.75 L = 924.00; 2 x 20 L would be 1520.00.
  set = cheapestTins(millilitres(22'600), usual(46'00, 118'00, 760'00));
  REQUIRE(set.tins.size() == 3);
  CHECK(set.tins[0].tin.size == litres(20));  // largest first
  CHECK(set.tins[2].tin.size == millilitres(750));
  CHECK(set.cost == cents(924'00));
}

TEST_CASE("no need buys nothing, a drop buys one tin", "[estimate]") {
  CHECK(cheapestTins({}, usual(46'00, 118'00, 760'00)).tins.empty());
  CHECK(cheapestTins({-5}, usual(46'00, 118'00, 760'00)).number() == 0);
  CHECK(cheapestTins({1}, usual(46'00, 118'00, 760'00)).volume == millilitres(750));
}

TEST_CASE("a need that the tins hold exactly buys no further tin", "[estimate]") {
  const std::vector<model::Tin> tins = {{millilitres(2500), cents(118'00)}};
  CHECK(cheapestTins(millilitres(7500), tins).number() == 3);
  CHECK(cheapestTins({7'500'000'001}, tins).number() == 4);
}

TEST_CASE("of equal prices the fewest tins win, then the least left over", "[estimate]") {
  // 5 L: 2 x 2.5 L or 5 x 1 L for the same money.
  auto set = cheapestTins(litres(5), {{litres(1), cents(10)}, {millilitres(2500), cents(25)}});
  CHECK(set.number() == 2);
  // 3 L: one tin of 4 L or one of 6 L for the same money.
  set = cheapestTins(litres(3), {{litres(4), cents(50)}, {litres(6), cents(50)}, {litres(1), cents(40)}});
  CHECK(set.volume == litres(4));
}

TEST_CASE("tins that cost nothing come to an end", "[estimate]") {
  const auto set = cheapestTins(litres(100), usual(0, 0, 760'00));
  CHECK(set.cost == Money{});
  CHECK(set.number() == 40);  // 40 x 2.5 L
  CHECK(cheapestTins(litres(100), usual(0, 0, 0)).number() == 5);
}

TEST_CASE("litre and gallon tins mix", "[estimate]") {
  const Volume gallon = {3'785'411'784};
  const std::vector<model::Tin> tins = {{{946'352'946}, cents(31'00)},
                                        {gallon, cents(84'00)},
                                        {gallon * 5, cents(365'00)},
                                        {millilitres(2500), cents(70'00)},
                                        {litres(20), cents(420'00)}};
  for (const std::int64_t ml : {900, 3700, 3786, 9000, 17'300, 26'500, 38'540, 61'000})
    CHECK(bestOf(cheapestTins(millilitres(ml), tins)) == exhaustive(millilitres(ml), tins));
}

TEST_CASE("the cheapest tins are those an exhaustive search finds", "[estimate]") {
  SECTION("as sold") { checkAgainstExhaustiveSearch(usual(46'00, 118'00, 760'00)); }
  SECTION("in proportion") { checkAgainstExhaustiveSearch(usual(30'00, 100'00, 800'00)); }
  SECTION("nearly in proportion") { checkAgainstExhaustiveSearch(usual(30'01, 100'00, 799'99)); }
  SECTION("the small tin is cheapest by the litre") {
    checkAgainstExhaustiveSearch(usual(20'00, 118'00, 1000'00));
  }
  SECTION("the medium tin is cheapest by the litre") {
    checkAgainstExhaustiveSearch(usual(46'00, 90'00, 760'00));
  }
  SECTION("every tin costs the same") { checkAgainstExhaustiveSearch(usual(50'00, 50'00, 50'00)); }
  SECTION("the large tin is dearest") { checkAgainstExhaustiveSearch(usual(1, 50'00, 9000'00)); }
  SECTION("random prices") {
    std::mt19937 random(20270316);
    for (int i = 0; i < 20; ++i)
      checkAgainstExhaustiveSearch(
          usual(random() % 10'000 + 1, random() % 30'000 + 1, random() % 120'000 + 1));
  }
}

TEST_CASE("random sizes and prices agree with an exhaustive search", "[estimate]") {
  std::mt19937 random(7);
  int wrong = 0;
  for (int i = 0; i < 3000; ++i) {
    std::vector<model::Tin> tins;
    const std::size_t kinds = random() % 4 + 1;
    for (std::size_t k = 0; k < kinds; ++k)
      tins.push_back({millilitres(random() % 5000 + 300), cents(random() % 20 == 0 ? 0 : random() % 500)});
    const Volume need = millilitres(random() % 20'000 + 1);
    wrong += bestOf(cheapestTins(need, tins)) == exhaustive(need, tins) ? 0 : 1;
  }
  CHECK(wrong == 0);
}

TEST_CASE("thousands of litres in tins of odd sizes come to an end", "[estimate]") {
  // Prices nearly in proportion are the hard ones: no tin is clearly better than another.
  std::mt19937 random(11);
  for (int i = 0; i < 200; ++i) {
    const auto near = [&](std::int64_t price) { return cents(price + random() % 9 - 4); };
    const std::vector<model::Tin> tins = {{millilitres(500), near(20'00)}, {millilitres(750), near(30'00)},
                                          {{946'352'946}, near(37'85)},    {millilitres(2500), near(100'00)},
                                          {{3'785'411'784}, near(151'42)}, {litres(5), near(200'00)},
                                          {litres(20), near(800'00)}};
    const Volume need = millilitres(4'000'000 + random() % 1'000'000);
    CHECK(cheapestTins(need, tins).volume >= need);
  }
}
