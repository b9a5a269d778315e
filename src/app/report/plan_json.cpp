#include "app/report/figures_json.h"
#include "app/report/plan_text.h"
#include "model/lookup.h"
#include "model/names.h"
#include "schedule/weather/zone.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace app {
namespace {

using nlohmann::ordered_json;

/// Physics is told to a hundredth.
double hundredths(double v) { return std::round(v * 100) / 100; }

std::string sourceId(model::WeatherSource source) {
  switch (source) {
    case model::WeatherSource::None:
      return "none";
    case model::WeatherSource::Forecast:
      return "forecast";
    case model::WeatherSource::Normals:
      return "normals";
  }
  return {};
}

std::string missId(model::WindowViolation::Why why) {
  switch (why) {
    case model::WindowViolation::Why::Weather:
      return "weather";
    case model::WindowViolation::Why::DaysOff:
      return "days_off";
    case model::WindowViolation::Why::CoatingHours:
      return "coating_hours";
    case model::WindowViolation::Why::LargeDeck:
      return "large_area";
  }
  return {};
}

struct Json {
  const PlanReport& r;

  const model::Job& job() const { return r.x.c.job; }
  std::string area(std::size_t deck) const { return job().areas[deck].name; }
  std::string at(base::LocalTime t) const {
    return isoWithOffset(t, schedule::utcOffset(job().site.timezone, t));
  }
  ordered_json maybe(const std::optional<base::LocalTime>& t) const {
    return t ? ordered_json(at(*t)) : ordered_json(nullptr);
  }

  ordered_json hour(const model::Hour& h) const {
    ordered_json j{{"at", at(h.at)}, {"area", area(h.deck)}, {"fit", h.isFit}};
    j["reasons"] = ordered_json::array();
    for (const auto gate : h.reasons) j["reasons"].push_back(model::nameOf(gate));
    j["source"] = sourceId(h.source);
    const bool isKnown = h.source != model::WeatherSource::None;
    const auto put = [&](const char* name, double value) {
      j[name] = isKnown ? ordered_json(hundredths(value)) : ordered_json(nullptr);
    };
    put("air_c", h.air.celsius);
    put("rh_pct", h.air.humidity);
    put("cloud_pct", h.air.cloud * 100);
    put("wind_ms", h.air.wind);
    put("rain_mm", h.air.rain);
    put("dew_point_c", h.dewPoint);
    put("emc_pct", h.woodMoisture);
    put("surface_c", h.surface);
    j["sun_elevation_deg"] = hundredths(h.sunElevation);
    return j;
  }

  ordered_json task(const model::Shift& s) const {
    const bool isCoat = model::taskOf(r.content, s.task).isPerCoat;
    ordered_json j{{"task", s.task},
                   {"area", s.deck ? ordered_json(area(*s.deck)) : ordered_json(nullptr)},
                   {"coat", isCoat ? ordered_json(s.pass) : ordered_json(nullptr)}};
    if (!isCoat && s.pass > 0) j["grit"] = s.pass;
    j["start"] = at(s.start);
    j["end"] = at(s.end);
    j["people"] = s.people;
    return j;
  }

  void addStrips(ordered_json& list) const {
    for (const auto& edge : r.x.plan.edges) {
      for (const auto& s : edge.strips)
        list.push_back({{"area", area(s.deck)},
                        {"coat", edge.coat},
                        {"strip", s.number},
                        {"from_board", s.fromBoard + 1},
                        {"boards", s.boards},
                        {"minutes", s.minutes},
                        {"open_minutes", edge.openMinutes},
                        {"too_long", edge.isTooLong}});
    }
  }
};

}  // namespace

std::string planJson(const PlanReport& report) {
  const Json write{report};
  const auto& job = report.x.c.job;
  const auto& plan = report.x.plan;
  ordered_json j;
  j["ref"] = job.ref;
  j["weather"] = {
      {"forecast", job.forecast.steps.empty() ? ordered_json(nullptr) : ordered_json(job.forecast.file)},
      {"usual", job.normals.months.empty() ? ordered_json(nullptr) : ordered_json(job.normals.source)}};
  j["days"] = ordered_json::array();
  for (const auto& d : report.light)
    j["days"].push_back({{"date", base::isoDate(d.date)},
                         {"sunrise", write.maybe(d.sunrise)},
                         {"sunset", write.maybe(d.sunset)}});
  j["tasks"] = ordered_json::array();
  for (const auto& s : plan.shifts) j["tasks"].push_back(write.task(s));
  j["strips"] = ordered_json::array();
  write.addStrips(j["strips"]);
  j["misses"] = ordered_json::array();
  for (const auto& m : plan.misses)
    j["misses"].push_back(
        {{"area", write.area(m.deck)},
         {"coat", m.coat},
         {"gap_h", static_cast<double>(m.gap.millionths) / 1e6},
         {"late", m.isLate},
         {"past_max", m.isPastMax},
         {"why", missId(m.why)},
         {"gate", m.gate ? ordered_json(model::nameOf(*m.gate)) : ordered_json(nullptr)},
         {"unfit", m.isUnfit},
         {"nearest", m.nearest ? ordered_json(base::isoDate(*m.nearest)) : ordered_json(nullptr)}});
  j["alternatives"] = ordered_json::array();
  for (const auto& a : plan.alternatives)
    j["alternatives"].push_back({{"start", write.at(a.start)},
                                 {"finished", write.at(a.finished)},
                                 {"misses", a.misses},
                                 {"reason", a.reason}});
  j["hours"] = ordered_json::array();
  for (const auto& h : report.hours) j["hours"].push_back(write.hour(h));
  return j.dump(2) + "\n";
}

}  // namespace app
