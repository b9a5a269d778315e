// Forecast files: what is read from them, and all that is said about their mistakes.
#include "near.h"

#include "forecast/read.h"
#include "schedule/weather/hours.h"
#include "schedule/weather/zone.h"

#include <catch2/catch.hpp>

#include <chrono>

namespace {

const std::string header = "time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm\n", zoneOfSite = "Pacific/Auckland";

model::Forecast read(const std::string& text, std::string* said = nullptr,
                     const std::string& zone = zoneOfSite) {
  base::Diagnostics messages;
  const auto forecast = forecast::readForecast(text, "forecast.csv", {zone, {}}, messages);
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

/// What is said about a forecast of such times in a zone.
std::string saidByClock(const std::string& zone, const std::vector<std::string>& times) {
  std::string text = header, said;
  for (const auto& time : times) text += time + ",12,80,50,3,0\n";
  read(text, &said, zone);
  return said;
}

std::string localTime(const model::Forecast& f, std::size_t step) {
  return base::isoTime(schedule::utcToLocal(zoneOfSite, f.at(step)));
}

}  // namespace

TEST_CASE("a forecast is read line by line") {
  const auto f = read(header +
                      "2027-07-12T06:00,9.5,92,25,1.5,0\n"
                      "2027-07-12T09:00:00,14,70,100,3,0.4\n");
  CHECK(f.stepMinutes == 180);
  REQUIRE(f.steps.size() == 2);
  CHECK(localTime(f, 1) == "2027-07-12T09:00");
  CHECK(f.steps[0].celsius == 9.5);
  CHECK(f.steps[0].humidity == 92);
  CHECK(f.steps[0].cloud == 0.25);
  CHECK(f.steps[0].wind == 1.5);
  CHECK(f.steps[1].rain == 0.4);
}

TEST_CASE("columns stand in any order, with other names and units, and times may have a zone") {
  const auto g = read(
      "Wind speed (km/h);Rain before [inch];Station;Temperature (°F);Cloud cover (%);Time;Relative humidity "
      "(%)\n"
      "36;0,1;\"one; two\";50;25;2027-07-12 06:00+12:00;80\n"
      "18;0,2;x;68;75;2027-07-11T19:00Z;70\n"
      "18;0,4;x;68;75;2027-07-11T20:00Z;70\n");
  REQUIRE(g.steps.size() == 2);
  CHECK(localTime(g, 0) == "2027-07-12T06:00");
  CHECK(g.steps[0].wind == near(10));
  CHECK(g.steps[0].celsius == near(10));
  CHECK(g.steps[1].celsius == near(20));
  CHECK(g.steps[0].rain == near(0.2 * 25.4));  // of the hour before 07:00
  CHECK(g.steps[1].rain == near(0.4 * 25.4));
}

TEST_CASE("steps of a table may grow, and are shared out then") {
  const auto f = read(header +
                      "2027-07-12T06:00,9,92,25,1,0\n"
                      "2027-07-12T07:00,10,92,25,1,0.3\n"
                      "2027-07-12T08:00,12,92,25,1,0.6\n"
                      "2027-07-12T11:00,15,92,25,1,0.9\n");
  CHECK(f.stepMinutes == 60);
  REQUIRE(f.steps.size() == 6);  // the last line's three hours have no later moment
  CHECK(f.steps[3].celsius == near(13));
  CHECK(f.steps[3].rain == near(0.2));
  CHECK(f.steps[5].rain == near(0.3));
  REQUIRE(f.sharedFrom);
  CHECK(base::isoTime(schedule::utcToLocal(zoneOfSite, *f.sharedFrom)) == "2027-07-12T08:00");
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
               "12/07/2027 08:00,9,0,25,1,0\n"
               "2027-07-12T09:00,9,92,101,x,-1\n"
               "2027-07-12T10:00,9,92,25,1\n") ==
        "forecast.csv:3:18: error: '61' is out of range for air temperature\n"
        "  hint: allowed: from -40 to 55 C\n"
        "forecast.csv:4:1: error: time: '12/07/2027 08:00' is not a time\n"
        "  hint: write it by the clock on site, like 2027-03-16T06:00, or with its zone, like "
        "2027-03-16T06:00+13:00\n"
        "forecast.csv:4:20: error: '0' is out of range for humidity\n"
        "  hint: allowed: from 1 to 100 %\n"
        "forecast.csv:5:23: error: '101' is out of range for cloud cover\n"
        "  hint: allowed: from 0 to 100 %\n"
        "forecast.csv:5:27: error: 'x' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n"
        "forecast.csv:5:29: error: '-1' is out of range for rain\n"
        "  hint: allowed: from 0 to 300 mm\n"
        "forecast.csv:6:1: error: this line has 5 values, and the first one names 6\n"
        "  hint: write one value for each column\n");
}

TEST_CASE("an empty cell is a value that is not known") {
  std::string said;
  const auto f = read(
      header + "2027-07-12T06:00,9,92,25,1,0\n2027-07-12T07:00,,92,25,1,0\n2027-07-12T08:00,11,92,25,1,0\n",
      &said);
  REQUIRE(f.steps.size() == 3);
  CHECK(f.steps[1].celsius == near(10));
  CHECK(
      said ==
      "forecast.csv:1:1: warning: missing values of air temperature are filled in between those beside them\n"
      "  hint: save a new one where these hours matter\n");
}

TEST_CASE("a forecast with a gap, a doubled or a shorter step is refused") {
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n"
               "2027-07-12T07:00,9,92,25,1,0\n"
               "2027-07-12T10:00,9,92,25,1,0\n"
               "2027-07-12T11:00,9,92,25,1,0\n"
               "2027-07-12T10:30,9,92,25,1,0\n") ==
        "forecast.csv:4:1: error: time: 3 h after the line before, but the next step is 1 h long\n"
        "  hint: no step may be missing; later ones may be longer, not shorter\n"
        "forecast.csv:6:1: error: time: this time is not after that of the line before\n"
        "  hint: sort the lines by time\n");
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n2027-07-12T06:05,9,92,25,1,0\n") ==
        "forecast.csv: error: the steps are 5 min long\n"
        "  hint: allowed: from 15 min to 3 h\n");
  CHECK(saidOf("2027-07-12T06:00,9,92,25,1,0\n").find("error: it has no rain\n") != std::string::npos);
}

TEST_CASE("a table whose columns cannot be told is refused") {
  std::string said;
  read("when,air_c\n2027-07-12T06:00,9\n", &said);
  CHECK(
      said ==
      "forecast.csv:1:1: error: no line names a column 'time' and the weather at these times\n"
      "  hint: its first line is like time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm; the columns stand in any "
      "order\n");
  read("time,temperature,rh_pct,cloud_okta,wind_ms,wind_kmh\n2027-07-12T06:00,9,9,9,9,9\n", &said);
  CHECK(said ==
        "forecast.csv:1:6: error: 'temperature' has no unit\n"
        "  hint: write it behind the name, like 'air (C)', 'humidity (%)', 'cloud (%)', 'wind (m/s)', 'rain "
        "(mm)'\n"
        "forecast.csv:1:25: error: 'okta' is not a unit we know for cloud cover\n"
        "  hint: known: C, F, K; %; m/s, km/h, mph, kn; mm, inch\n"
        "forecast.csv:1:44: error: a second column of wind\n"
        "  hint: leave one out\n");
  read(header + "2027-07-12T06:00,\xFF,92,25,1,0\n", &said);
  CHECK(said.find(":2:18: error: ") != std::string::npos);
  read(header + "2027-07-12T06:00,\"9,92,25,1,0\n", &said);
  CHECK(said == "forecast.csv:2:18: error: this quote does not close\n  hint: close it on the same line\n");
  for (const std::string time : {"2027-06-31T06:00", "2027-07-12T24:00", "2027-07-12T06:00:30",
                                 "12/07/2027 06:00", "2027-07-12T06:00+99:00", "2027-07-12"}) {
    CAPTURE(time);
    CHECK(saidOf("2027-07-12T05:00,9,92,25,1,0\n" + time + ",9,92,25,1,0\n") ==
          "forecast.csv:3:1: error: time: '" + time +
              "' is not a time\n"
              "  hint: write it by the clock on site, like 2027-03-16T06:00, or with its zone, like "
              "2027-03-16T06:00+13:00\n");
  }
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
        "forecast.csv:4:1: error: time: 2 h after the line before, but the next step is 1 h long\n"
        "  hint: no step may be missing; later ones may be longer, not shorter\n");
  CHECK(saidByClock(zone, {"2027-09-26T00:00", "2027-09-26T01:00", "2027-09-26T02:00", "2027-09-26T03:00"}) ==
        "forecast.csv:4:1: error: time: '2027-09-26T02:00' is left out by the clocks in Pacific/Auckland\n"
        "  hint: leave the line out\n");
  // Lord Howe Island turns its clocks by half an hour: on 4 April 2027 02:00 becomes 01:30.
  CHECK(saidByClock("Australia/Lord_Howe",
                    {"2027-04-04T00:30", "2027-04-04T01:30", "2027-04-04T02:00", "2027-04-04T03:00"}) == "");
}

TEST_CASE("a line of a million commas and a file of nothing but lines are refused at once") {
  const auto from = std::chrono::steady_clock::now();
  CHECK(saidOf("x" + std::string(1'000'000, ',')) ==
        "forecast.csv:2:202: error: this line has more than 200 values\n"
        "  hint: leave out what is not needed\n");
  std::string lines;
  for (int i = 0; i < 100'000; ++i) lines += "x\n";
  CHECK(saidOf(lines) ==
        "forecast.csv:10001:1: error: more than 10000 lines\n"
        "  hint: leave out what lies behind the job\n");
  CHECK(std::chrono::steady_clock::now() - from < std::chrono::seconds{10});
}

TEST_CASE("the place of a value is counted in letters, behind whatever stands before it") {
  CHECK(saidOf("2027-07-12T06:00,\u00E9\u00E9,92,25,x,0\n2027-07-12T07:00,9,92,25,1,0\n") ==
        "forecast.csv:2:18: error: '\u00E9\u00E9' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n"
        "forecast.csv:2:27: error: 'x' is not a plain number\n"
        "  hint: write digits with a point, like 12.5\n");
}

TEST_CASE("two times nearly ten thousand years apart are a step that is too long") {
  // 9998 years of 365.2425 days: 3,651,694 days, 87,640,656 h, more minutes than 32 bits hold.
  std::string said;
  read(header + "0001-01-01T00:00,9,92,25,1,0\n9999-01-01T00:00,9,92,25,1,0\n", &said, "Etc/UTC");
  CHECK(said ==
        "forecast.csv: error: the steps are 87640656 h long\n"
        "  hint: allowed: from 15 min to 3 h\n");
}

TEST_CASE("a forecast of other days than those on site is told") {
  const auto said = [](const char* first, const char* last) {
    model::Job job;
    job.site.timezone = zoneOfSite;
    job.forecast = read(header + "2026-03-16T06:00,12,80,50,3,0\n2026-03-16T09:00,12,80,50,3,0\n");
    model::Plan plan;
    plan.days.resize(2);
    plan.days.front().date = *base::parseDate(first);
    plan.days.back().date = *base::parseDate(last);
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
        "forecast.csv: warning: the forecast ends on 2026-03-16, before the first day on site, "
        "2027-03-16\n" +
            hint);
  CHECK(said("2026-03-10", "2026-03-15") ==
        "forecast.csv: warning: the forecast begins on 2026-03-16, after the last day on site, "
        "2026-03-15\n" +
            hint);
}
