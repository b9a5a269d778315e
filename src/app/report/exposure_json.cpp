#include "app/report/exposure_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace app {
namespace {

using nlohmann::ordered_json;

double rounded(double value, double steps) { return std::round(value * steps) / steps; }
double tenths(double value) { return rounded(value, 10); }
double hundredths(double value) { return rounded(value, 100); }

constexpr const char* bands[] = {"none", "caution", "extreme caution", "danger", "extreme danger"};

ordered_json noiseJson(const model::NoiseDay& day) {
  return {{"date", base::isoDate(day.date)},       {"niosh_dose_pct", tenths(day.nioshDose)},
          {"osha_dose_pct", tenths(day.oshaDose)}, {"lex8h_db", tenths(day.lex8h)},
          {"level_db", tenths(day.level)},         {"protection_db", tenths(day.protection)},
          {"loudest_tool_db", day.loudest},        {"share_among", day.shareAmong}};
}

ordered_json vibrationJson(const model::VibrationDay& day) {
  auto tools = ordered_json::array();
  for (const auto& tool : day.tools) {
    tools.push_back({{"tool", tool.tool},
                     {"acceleration_ms2", tool.acceleration},
                     {"minutes", std::round(tool.minutes)},
                     {"minutes_to_action", std::floor(tool.minutesToAction)},
                     {"minutes_to_limit", std::floor(tool.minutesToLimit)}});
  }
  return {{"date", base::isoDate(day.date)},
          {"a8_ms2", hundredths(day.a8)},
          {"points", std::round(day.points)},
          {"share_among", day.shareAmong},
          {"tools", tools}};
}

ordered_json heatJson(const model::HeatDay& day) {
  return {{"date", base::isoDate(day.date)},
          {"at", base::isoClock(day.at.minutes)},
          {"felt_c", tenths(day.celsius)},
          {"in_sun", day.isInSun},
          {"band", bands[static_cast<int>(day.band)]},
          {"usual", day.isUsual}};
}

ordered_json vapourJson(const model::JobResult& x, const model::VapourArea& area) {
  return {{"area", x.c.job.areas[area.deck].name},
          {"solvent_g_per_h", std::round(area.solventGramsPerHour)},
          {"limit_mg_per_m3", tenths(area.limit)},
          {"air_m3_per_h", std::ceil(area.airForLimit)},
          {"air_for_explosion_m3_per_h", std::ceil(area.airForExplosion)}};
}

template <class Day, class Make>
ordered_json listOf(const std::vector<Day>& days, Make make) {
  auto list = ordered_json::array();
  for (const auto& day : days) list.push_back(make(day));
  return list;
}

}  // namespace

ordered_json exposureJson(const model::JobResult& x) {
  const auto& e = x.exposure;
  return {{"noise", listOf(e.noise, noiseJson)},
          {"vibration", listOf(e.vibration, vibrationJson)},
          {"heat", listOf(e.heat, heatJson)},
          {"vapour", listOf(e.vapour, [&](const auto& area) { return vapourJson(x, area); })},
          {"rags", {{"count", e.rags.count}, {"per_day", e.rags.perDay}, {"pails_20_l", e.rags.pails}}},
          {"heaviest_tin_kg", tenths(e.lifting.heaviestTin)},
          {"example_tools", e.hasExampleTools}};
}

}  // namespace app
