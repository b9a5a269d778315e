// Forecast files: what is read from them, and all that is said about their mistakes.
#include "input/read.h"
#include "schedule/weather/hours.h"

#include <catch2/catch.hpp>

#include <chrono>

namespace {

const std::string header = "time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\n";

model::Forecast read(const std::string& text, std::string* said = nullptr) {
  base::Diagnostics messages;
  const auto forecast = input::readForecast(text, "forecast.csv", messages);
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d);
  if (said != nullptr) *said = all;
  else CHECK(all == "");
  return forecast;
}

std::string saidOf(const std::string& lines) {
  std::string said;
  read(header + lines, &said);
  return said;
}

/// What the tz database says about a forecast of such times.
std::string saidByClock(const std::string& zone, const std::vector<std::string>& times) {
  std::string text = header;
  for (const auto& time : times) text += time + ",12,80,50,3,0\n";
  model::Job job;
  job.site.timezone = zone;
  job.forecast = read(text);
  base::Diagnostics messages;
  schedule::checkForecast(job, "forecast.csv", messages);
  std::string said;
  for (const auto& d : messages.all()) said += base::format(d);
  return said;
}

}  // namespace

TEST_CASE("a forecast is read line by line") {
  const auto f = read(header +
                      "2027-07-12T06:00,9.5,92,25,1.5,0\n"
                      "2027-07-12T09:00:00,14,70,100,3,0.4\n");
  CHECK(f.stepMinutes == 180);
  REQUIRE(f.steps.size() == 2);
  CHECK(base::isoTime(f.steps[1].at) == "2027-07-12T09:00");
  CHECK(f.steps[0].air.celsius == 9.5);
  CHECK(f.steps[0].air.humidity == 92);
  CHECK(f.steps[0].air.cloud == 0.25);
  CHECK(f.steps[0].air.wind == 1.5);
  CHECK(f.steps[1].air.rain == 0.4);
}

TEST_CASE("a forecast may come from any machine: byte order mark, line ends, quarters of an hour") {
  const auto f = read(
      "\xEF\xBB\xBFtime,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\r\n"
      "2027-07-12T23:45,-3,92,25,1.5,0\r\n"
      "2027-07-13T00:00,-3.5,92,25,1.5,0\r\n\r\n");
  CHECK(f.stepMinutes == 15);
  CHECK(f.steps.size() == 2);
}

TEST_CASE("every mistake of a forecast is told in one run, with its place") {
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n"
               "2027-07-12T07:00,61,92,25,1,0\n"
               "2027-07-12 08:00,9,0,25,1,0\n"
               "2027-07-12T09:00,9,92,101,x,-1\n"
               "2027-07-12T10:00,9,92,25,1\n"
               "2027-07-12T11:00,,92,25,1,0\n") ==
        "forecast.csv:3:18: error: air_c: '61' is out of range\n"
        "  hint: allowed: from -40 to 55\n"
        "forecast.csv:4:1: error: time: '2027-07-12 08:00' is not a time\n"
        "  hint: write the site's own clock like 2027-03-16T06:00, without a zone\n"
        "forecast.csv:4:20: error: rh_pct: '0' is out of range\n"
        "  hint: allowed: from 1 to 100\n"
        "forecast.csv:5:23: error: cloud_pct: '101' is out of range\n"
        "  hint: allowed: from 0 to 100\n"
        "forecast.csv:5:27: error: wind_ms: 'x' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n"
        "forecast.csv:5:29: error: rain_mm: '-1' is out of range\n"
        "  hint: allowed: from 0 to 300\n"
        "forecast.csv:6:1: error: this line has 5 values, not 6\n"
        "  hint: write time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\n"
        "forecast.csv:7:18: error: air_c: '' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n");
}

TEST_CASE("a forecast with a gap, a doubled or a shorter step is refused") {
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n"
               "2027-07-12T07:00,9,92,25,1,0\n"
               "2027-07-12T10:00,9,92,25,1,0\n"
               "2027-07-12T11:00,9,92,25,1,0\n"
               "2027-07-12T10:30,9,92,25,1,0\n"
               "2027-07-12T11:30,9,92,25,1,0\n"
               "2027-07-12T11:45,9,92,25,1,0\n") ==
        "forecast.csv:4:1: error: time: 3 h after the line before, and the other steps are 1 h long\n"
        "  hint: no step may be missing or shorter\n"
        "forecast.csv:6:1: error: time: this time is not after that of the line before\n"
        "  hint: sort the lines by time\n"
        "forecast.csv:8:1: error: time: 15 min after the line before, and the other steps are 1 h long\n"
        "  hint: no step may be missing or shorter\n");
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n2027-07-12T06:05,9,92,25,1,0\n") ==
        "forecast.csv:3:1: error: time: the steps are 5 min long\n"
        "  hint: allowed: from 15 min to 3 h\n");
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n") ==
        "forecast.csv:1:1: error: a forecast has two lines at least\n  hint: one for each step\n");
}

TEST_CASE("a forecast with another header, a zone or other days than exist is refused") {
  std::string said;
  read("when,air_c\n2027-07-12T06:00,9\n", &said);
  CHECK(said ==
        "forecast.csv:1:1: error: the first line does not name the columns\n"
        "  hint: write time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\n");
  for (const std::string time : {"2027-07-12T06:00Z", "2027-07-12T06:00+12:00", "2027-06-31T06:00",
                                 "2027-07-12T24:00", "2027-07-12T06:00:30", "12/07/2027 06:00"}) {
    CAPTURE(time);
    CHECK(saidOf(time + ",9,92,25,1,0\n2027-07-12T07:00,9,92,25,1,0\n2027-07-12T08:00,9,92,25,1,0\n") ==
          "forecast.csv:2:1: error: time: '" + time +
              "' is not a time\n"
              "  hint: write the site's own clock like 2027-03-16T06:00, without a zone\n");
  }
  read("", &said);
  CHECK(said.find("the first line does not name the columns") != std::string::npos);
  read(header + "2027-07-12T06:00,\xFF,92,25,1,0\n", &said);
  CHECK(said == "forecast.csv:2:18: error: this is not UTF-8 text\n  hint: save the file as UTF-8\n");
}

TEST_CASE("the clocks' own jumps are no gaps, but any other jump of an hour is") {
  const std::string zone = "Pacific/Auckland";
  // 26 September 2027, 02:00 becomes 03:00.
  CHECK(saidByClock(zone, {"2027-09-26T00:00", "2027-09-26T01:00", "2027-09-26T03:00", "2027-09-26T04:00"}) ==
        "");
  // 4 April 2027, 03:00 becomes 02:00.
  CHECK(saidByClock(zone, {"2027-04-04T01:00", "2027-04-04T02:00", "2027-04-04T02:00", "2027-04-04T03:00",
                           "2027-04-04T04:00"}) == "");
  // Three-hourly lines keep to the clock, or to true hours.
  CHECK(saidByClock(zone, {"2027-04-04T00:00", "2027-04-04T03:00", "2027-04-04T06:00"}) == "");
  CHECK(saidByClock(zone, {"2027-04-04T00:00", "2027-04-04T02:00", "2027-04-04T05:00", "2027-04-04T08:00"}) ==
        "");
  CHECK(saidByClock(zone, {"2027-09-25T00:00", "2027-09-25T01:00", "2027-09-25T03:00", "2027-09-25T04:00"}) ==
        "forecast.csv:4:1: error: time: the step before is not 60 min long, as the others are\n"
        "  hint: no step may be missing or shorter\n");
  CHECK(saidByClock(zone, {"2027-09-26T00:00", "2027-09-26T01:00", "2027-09-26T02:00", "2027-09-26T03:00"}) ==
        "forecast.csv:4:1: error: time: '2027-09-26T02:00' is left out by the clocks in Pacific/Auckland\n"
        "  hint: leave the line out\n");
  // Lord Howe Island turns its clocks by half an hour: on 4 April 2027 02:00 becomes 01:30.
  CHECK(saidByClock("Australia/Lord_Howe",
                    {"2027-04-04T00:30", "2027-04-04T01:30", "2027-04-04T02:00", "2027-04-04T03:00"}) == "");
}

TEST_CASE("a line of a million commas and a file of nothing but line ends are refused at once") {
  const auto from = std::chrono::steady_clock::now();
  CHECK(saidOf(std::string(1'000'000, ',')) ==
        "forecast.csv:2:1: error: this line has 1000001 values, not 6\n"
        "  hint: write time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\n");
  CHECK_THAT(saidOf(std::string(1'000'000, '\n') + "x"),
             Catch::EndsWith("forecast.csv:10001:1: error: more than 10000 lines\n"
                             "  hint: leave out what lies behind the job\n"));
  CHECK(std::chrono::steady_clock::now() - from < std::chrono::seconds{10});
}

TEST_CASE("the place of a value is counted in letters, behind whatever stands before it") {
  CHECK(saidOf("2027-07-12T06:00,\u00E9\u00E9,92,25,x,0\n2027-07-12T07:00,9,92,25,1,0\n") ==
        "forecast.csv:2:18: error: air_c: '\u00E9\u00E9' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n"
        "forecast.csv:2:27: error: wind_ms: 'x' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n");
}

TEST_CASE("two times nearly ten thousand years apart are a step that is too long") {
  // 9998 years of 365.2425 days: 3,651,694 days, 87,640,656 h, more minutes than 32 bits hold.
  CHECK(saidOf("0001-01-01T00:00,9,92,25,1,0\n9999-01-01T00:00,9,92,25,1,0\n") ==
        "forecast.csv:3:1: error: time: the steps are 87640656 h long\n"
        "  hint: allowed: from 15 min to 3 h\n");
}

TEST_CASE("a forecast of other days than those on site is told") {
  const auto said = [](const char* first, const char* last) {
    model::Job job;
    job.forecast = read(header + "2026-03-16T06:00,12,80,50,3,0\n2026-03-16T09:00,12,80,50,3,0\n");
    model::Plan plan;
    plan.days = {*base::parseDate(first), *base::parseDate(last)};
    base::Diagnostics messages;
    schedule::checkForecastDays(job, plan, "forecast.csv", messages);
    std::string all;
    for (const auto& d : messages.all()) all += base::format(d);
    return all;
  };
  const std::string hint = "  hint: save a new one; till then the usual weather of the month counts\n";
  CHECK(said("2026-03-15", "2026-03-16") == "");
  CHECK(said("2026-03-16", "2026-03-20") == "");
  CHECK(said("2027-03-16", "2027-03-20") ==
        "forecast.csv:3:1: warning: time: the forecast ends on 2026-03-16, before the first day on site, "
        "2027-03-16\n" +
            hint);
  CHECK(said("2026-03-10", "2026-03-15") ==
        "forecast.csv:2:1: warning: time: the forecast begins on 2026-03-16, after the last day on site, "
        "2026-03-15\n" +
            hint);
}
