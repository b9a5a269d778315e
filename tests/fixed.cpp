#include "base/date.h"
#include "base/money.h"

#include <catch2/catch.hpp>

using namespace base;

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
static_assert(Addable<Area, Area> && !Addable<Area, Volume> && !Addable<Money, Area>);

TEST_CASE("a spreading rate in US units divides an area exactly") {
  // 350 ft2 at 350 ft2/gal is one gallon of 3.785 411 784 L: NIST SP 811 (2008), App. B.8.
  const Area area = {350LL * 92'903'040'000};
  CHECK(area / Spread{area, {3'785'411'784}} == Volume{3'785'411'784});
}

TEST_CASE("42 square metres at 5.6 square metres a litre take exactly 7.5 litres") {
  CHECK(squareMetres(42) / Spread{{5'600'000'000'000}, litres(1)} == millilitres(7500));
}

TEST_CASE("each kind of rounding treats halves its own way") {
  CHECK(divide(5, 10, Round::HalfUp) == 1);
  CHECK(divide(5, 10, Round::HalfDown) == 0);
  CHECK(divide(5, 10, Round::HalfEven) == 0);
  CHECK(divide(15, 10, Round::HalfEven) == 2);
  CHECK(divide(-5, 10, Round::HalfUp) == -1);
  CHECK(divide(-15, 10, Round::Up) == -1);
  CHECK(divide(-15, 10, Round::Down) == -2);
}

TEST_CASE("dates that do not exist are refused") {
  CHECK(parseDate("2028-02-29"));
  for (const auto* bad : {"2027-02-29", "2027-13-01", "2027-1-5", "2027-01-05x", "", "2027/01/05"})
    CHECK_FALSE(parseDate(bad));
}

TEST_CASE("a yearly date on the last of February stays in February") {
  CHECK(isoDate(plusMonths(*parseDate("2028-02-29"), 12)) == "2029-02-28");
}

TEST_CASE("minutes carry over midnight in both directions") {
  const LocalTime t{*parseDate("2027-03-16"), 1430};
  CHECK(isoTime(plusMinutes(t, 20)) == "2027-03-17T00:10");
  CHECK(isoTime(plusMinutes(t, -1440)) == "2027-03-15T23:50");
}
