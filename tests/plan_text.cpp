// What 'planksheaf plan' prints, as text and as JSON.
#include "near.h"

#include "app/report/plan_text.h"
#include "firm_jobs.h"
#include "schedule/weather/air.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace {

base::Date day(const char* iso) { return *base::parseDate(iso); }

struct Landing {
  app::Shipped shipped = app::readShipped();
  base::Diagnostics messages;
  model::JobResult x = firm_jobs::compute(SOURCE_DIR "/out_examples/landing/job.yaml", {}, messages).value();

  app::PlanReport report(const char* from, const char* by) const {
    return app::reportPlan(x, shipped.content, {day(from), day(by)});
  }
};

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the printed plan tells usual weather from a forecast, and fit hours from the others") {
  Landing job;
  const std::string text = app::planText(job.report("2027-03-16", "2027-04-01"));
  CHECK(holds(text, "weather: forecast.csv, 2027-03-16 00:00 to 2027-04-01 00:00, steps of 3 h\n"));
  CHECK(holds(text, "beyond it: usual for the month, not a forecast, and no rain in it (invented"));
  CHECK(holds(text, "\nTue 2027-03-16  sunrise 07:40  sunset 20:04\n"));
  CHECK(holds(text, "  fit for coating, every area: 08:00-19:00; not 19:00-20:00 dew before dry\n"));
  CHECK(holds(text, "rain before dry"));
  job.x.c.job.forecast = {};
  job.x.c.job.normals = {};
  CHECK(holds(app::planText(job.report("2027-03-16", "2027-03-16")),
              "weather: none given, so any hour of light counts as fit\n"));
}

TEST_CASE("the plan as JSON holds every hour of every area with the air it is judged by") {
  const Landing job;
  const auto told = nlohmann::json::parse(app::planJson(job.report("2027-04-03", "2027-04-05")));
  REQUIRE(told["days"].size() == 3);
  CHECK(told["days"][0]["date"] == "2027-04-03");
  // The clocks go back on 4 April.
  CHECK(told["days"][0]["sunrise"].get<std::string>().substr(16) == ":00+13:00");
  CHECK(told["days"][1]["sunrise"].get<std::string>().substr(16) == ":00+12:00");
  CHECK(told["hours"].size() == 3 * 24 * job.x.c.job.areas.size());
  for (const auto& hour : told["hours"]) {
    CHECK(hour["fit"] == hour["reasons"].empty());
    CHECK(hour["source"] == "normals");
    const double air = hour["air_c"], humidity = hour["rh_pct"];
    CHECK(hour["dew_point_c"].get<double>() == near(schedule::dewPoint(air, humidity)).margin(0.02));
    CHECK(hour["emc_pct"].get<double>() == near(schedule::equilibriumMoisture(air, humidity)).margin(0.02));
  }
}

TEST_CASE("the plan as JSON has no values where no weather is known, and no sunrise on a polar day") {
  Landing job;
  auto& c = job.x.c.job;
  c.forecast = {};
  c.normals = {};
  c.site.latitudeMicro = 78'220'000;
  c.site.longitudeMicro = 15'640'000;
  c.site.timezone = "Arctic/Longyearbyen";
  const auto told = nlohmann::json::parse(app::planJson(job.report("2027-06-20", "2027-06-20")));
  CHECK(told["days"][0]["sunrise"].is_null());
  CHECK(told["hours"][0]["fit"] == true);
  CHECK(told["hours"][0]["air_c"].is_null());
  CHECK(told["hours"][0]["source"] == "none");
  CHECK(told["weather"]["forecast"].is_null());
}

TEST_CASE("a plan without bounds runs from its first day to its last coat") {
  const Landing job;
  const auto report = app::reportPlan(job.x, job.shipped.content, {});
  CHECK(report.from == job.x.plan.days.front().date);
  CHECK(report.until > job.x.plan.finished.day);
}
