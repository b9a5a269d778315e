// Visits grouped into rounds by place and time.
#include "app/after/rounds.h"

#include <catch2/catch.hpp>

namespace {

app::Stop stop(const char* due, double latitude, double longitude) {
  return {*base::parseDate(due), schedule::Place{latitude, longitude}};
}

/// '0 2 | 1': stops of each round; '?' before those without a place.
std::string listed(const std::vector<app::Stop>& stops) {
  std::string s;
  for (const auto& round : app::roundsOf(stops)) {
    if (!s.empty()) s += "| ";
    if (!round.hasPlaces) s += "? ";
    for (const auto i : round.stops) s += std::to_string(i) + " ";
  }
  return s;
}

}  // namespace

// On a sphere of 6,371 km a degree along a meridian is 2 pi 6371 / 360 = 111.195 km: 0.1 degrees are 11.12
// km, 0.15 are 16.68 km.
TEST_CASE("a round is driven from the first that falls due, always to the nearest") {
  const auto rounds = app::roundsOf({stop("2028-03-20", -44.7, 169.1), stop("2028-03-21", -44.8, 169.1),
                                     stop("2028-03-22", -44.75, 169.1)});
  REQUIRE(rounds.size() == 1);
  CHECK(rounds[0].stops == std::vector<std::size_t>{0, 2, 1});
  CHECK(rounds[0].kilometres[0] == 0);
  CHECK_THAT(rounds[0].kilometres[1], Catch::WithinAbs(5.560, 0.001));
  CHECK_THAT(rounds[0].kilometres[2], Catch::WithinAbs(5.560, 0.001));
}

TEST_CASE("a round goes no further than 15 km from its first stop, and no later than two weeks after it") {
  const auto first = stop("2028-03-20", -44.7, 169.1);
  CHECK(listed({first, stop("2028-03-20", -44.83, 169.1)}) == "0 1 ");    // 14.46 km
  CHECK(listed({first, stop("2028-03-20", -44.85, 169.1)}) == "0 | 1 ");  // 16.68 km
  CHECK(listed({first, stop("2028-04-03", -44.7, 169.1)}) == "0 1 ");     // 14 days
  CHECK(listed({first, stop("2028-04-04", -44.7, 169.1)}) == "0 | 1 ");
  // Two towns in turn become two rounds, each by date.
  CHECK(listed({first, stop("2028-03-21", -46.0, 170.0), stop("2028-03-22", -44.71, 169.1),
                stop("2028-03-23", -46.01, 170.0)}) == "0 2 | 1 3 ");
  // Across the date line it is near: 0.1 degrees on the equator.
  CHECK(listed({stop("2028-03-20", 0, 179.95), stop("2028-03-20", 0, -179.95)}) == "0 1 ");
}

TEST_CASE("stops whose place is not known are a group of their own, the last") {
  const app::Stop nowhere{*base::parseDate("2028-03-01"), {}};
  CHECK(listed({nowhere, stop("2028-03-20", -44.7, 169.1), nowhere}) == "1 | ? 0 2 ");
  CHECK(listed({}).empty());
}
