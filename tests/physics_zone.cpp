// Wall clock and world time, both ways.
#include "schedule/weather/zone.h"

#include "physics_time.h"

#include <catch2/catch.hpp>

using base::LocalTime;

namespace {

LocalTime at(const char* iso, const char* clock) {
  return {base::parseDate(iso).value(), base::parseClock(clock).value()};
}

}  // namespace

TEST_CASE("a wall-clock time becomes a moment and back", "[zone]") {
  // Daylight saving dates of the IANA time zone database: Melbourne leaves UTC+11 on 4 April 2027.
  CHECK(schedule::localToUtc("Australia/Melbourne", at("2027-03-16", "07:30")) ==
        momentOf("2027-03-15T20:30:00"));
  CHECK(schedule::localToUtc("Australia/Melbourne", at("2027-05-16", "07:30")) ==
        momentOf("2027-05-15T21:30:00"));
  CHECK(schedule::utcToLocal("Australia/Melbourne", momentOf("2027-03-15T20:30:59")) ==
        at("2027-03-16", "07:30"));
  CHECK(schedule::utcToLocal("America/Denver", momentOf("2027-01-01T00:00:00")) == at("2026-12-31", "17:00"));
}

TEST_CASE("an hour that happens twice means its first time, a skipped one the moment of the change",
          "[zone]") {
  // Berlin, 2027: clocks go from 03:00 to 02:00 on 31 October, from 02:00 to 03:00 on 28 March.
  CHECK(schedule::localToUtc("Europe/Berlin", at("2027-10-31", "02:30")) == momentOf("2027-10-31T00:30:00"));
  CHECK(schedule::utcToLocal("Europe/Berlin", momentOf("2027-10-31T01:30:00")) == at("2027-10-31", "02:30"));
  CHECK(schedule::localToUtc("Europe/Berlin", at("2027-03-28", "02:30")) == momentOf("2027-03-28T01:00:00"));
  CHECK(schedule::utcToLocal("Europe/Berlin", momentOf("2027-03-28T01:00:00")) == at("2027-03-28", "03:00"));
}

TEST_CASE("a clock for many moments shows what each of them shows, over changes of the clocks too") {
  for (const char* zone : {"Pacific/Auckland", "Europe/Dublin", "America/New_York", "Australia/Lord_Howe"}) {
    schedule::ZoneClock clock(zone);
    const auto begin = std::chrono::sys_days{std::chrono::year{2027} / 1 / 1};
    for (int step = 0; step < 366 * 12; ++step) {
      const auto t = begin + step * std::chrono::minutes{121};
      REQUIRE(clock.at(t) == schedule::utcToLocal(zone, t));
    }
    REQUIRE(clock.at(begin) == schedule::utcToLocal(zone, begin));  // back again
  }
}
