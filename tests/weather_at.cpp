#include "weather_sample.h"

#include "schedule/weather/air.h"
#include "schedule/weather/zone.h"

using namespace weather;
using model::WeatherSource;

namespace {

base::LocalTime at(const char* day, const char* clock) {
  return {*base::parseDate(day), *base::parseClock(clock)};
}

model::JobInputs usual() {
  model::JobInputs c = fixtures::sampleCase();
  c.job.normals = {"invented", std::vector<model::MonthWeather>(12, {8, 20, 85, 0.6, 4, 9})};
  return c;
}

}  // namespace

TEST_CASE("between two steps of the forecast the air goes straight and keeps its vapour") {
  model::JobInputs c = summerCase([](int hour) {
    return model::Air{10.0 + hour, 60, hour % 2 ? 1.0 : 0.5, 4, 0};
  });
  const auto half = schedule::airAt(c, at("2027-01-12", "06:30"));
  CHECK(half.source == WeatherSource::Forecast);
  CHECK(half.air.celsius == Approx(16.5));
  CHECK(half.air.cloud == Approx(0.75));
  const double vapour = (schedule::saturationPressure(16) + schedule::saturationPressure(17)) / 2 * 0.6;
  CHECK(half.air.humidity == Approx(100 * vapour / schedule::saturationPressure(16.5)));
  CHECK(schedule::airAt(c, at("2027-01-12", "06:00")).air.celsius == 16);
  // The last step, 23:00 of the third day, holds for its own length.
  CHECK(schedule::airAt(c, at("2027-01-14", "23:59")).air.celsius == Approx(81));
  CHECK(schedule::airAt(c, at("2027-01-15", "00:00")).source == WeatherSource::None);
  CHECK(schedule::airAt(c, at("2027-01-11", "23:59")).source == WeatherSource::None);
}

TEST_CASE("a usual day is coldest at sunrise and warmest at three") {
  const model::JobInputs c = usual();
  const auto light =
      schedule::daylightOf(c.job.site, *base::parseDate("2027-03-16"), *base::parseDate("2027-03-17"));
  const auto coldest = schedule::airAt(c, *light[0].sunrise);
  CHECK(coldest.source == WeatherSource::Normals);
  CHECK(coldest.air.celsius == Approx(8).margin(0.001));
  CHECK(coldest.air.humidity == Approx(85).margin(0.1));
  const auto warmest = schedule::airAt(c, at("2027-03-16", "15:00"));
  CHECK(warmest.air.celsius == 20);
  // The vapour stays: 85 % of 10.73 hPa is 39 % of 23.39 hPa.
  CHECK(warmest.air.humidity == Approx(85 * 10.73 / 23.39).epsilon(0.002));
  CHECK(warmest.air.rain == 0);
  for (int hour = 0; hour < 24; ++hour) {
    const auto air = schedule::airAt(c, {*base::parseDate("2027-03-16"), hour * 60}).air;
    CHECK(air.celsius >= 8);
    CHECK(air.celsius <= 20);
    CHECK(air.humidity <= 85.001);
  }
}

TEST_CASE("the night between two months cools from the one to the other") {
  model::JobInputs c = usual();
  c.job.normals.months[3] = {2, 12, 90, 0.8, 5, 12};  // April
  CHECK(schedule::airAt(c, at("2027-03-31", "15:00")).air.celsius == 20);
  CHECK(schedule::airAt(c, at("2027-03-31", "23:00")).air.celsius < 15);
  const auto midnight = schedule::airAt(c, at("2027-04-01", "00:00")).air.celsius;
  CHECK(schedule::airAt(c, at("2027-03-31", "23:59")).air.celsius == Approx(midnight).margin(0.1));
  CHECK(schedule::airAt(c, at("2027-04-01", "15:00")).air.celsius == 12);
}

TEST_CASE("a forecast by the clock counts its true hours when the clocks change") {
  // New Zealand, 4 April 2027: 03:00 becomes 02:00, and 02:00 stands twice.
  model::JobInputs c = fixtures::sampleCase();
  c.job.forecast.file = "forecast.csv";
  const char* clocks[] = {"01:00", "02:00", "02:00", "03:00"};
  double celsius = 10;
  for (const char* clock : clocks)
    c.job.forecast.steps.push_back({at("2027-04-04", clock), still(celsius++, 60, 1)});
  CHECK(schedule::airAt(c, at("2027-04-04", "02:00")).air.celsius == 11);
  CHECK(schedule::airAt(c, at("2027-04-04", "02:30")).air.celsius == Approx(11.5));
  CHECK(schedule::airAt(c, at("2027-04-04", "03:00")).air.celsius == 13);
}

TEST_CASE("sunrise and sunset stand on the site's clock to the minute") {
  // From PyEphem 4.1.4 (horizon -0:34, pressure 0, upper limb), cross-checked with Astronomy Engine: Denver,
  // 20 March 2024: 13:02:23 and 01:12:38 UTC; Mountain Daylight Time is six hours behind.
  model::Site denver;
  denver.latitudeMicro = 39'739'200;
  denver.longitudeMicro = -104'990'300;
  denver.timezone = "America/Denver";
  const auto day = *base::parseDate("2024-03-20");
  const auto light = schedule::daylightOf(denver, day, day + std::chrono::days{1});
  REQUIRE(light.size() == 1);
  CHECK(base::isoTime(*light[0].sunrise) == "2024-03-20T07:02");
  CHECK(base::isoTime(*light[0].sunset) == "2024-03-20T19:13");
}
