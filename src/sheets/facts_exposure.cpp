// Limits of the region and what this job comes to. A number whose source is from memory is not printed: its
// row then says whom to ask.
#include "sheets/facts_decks.h"
#include "sheets/facts_safety.h"

#include <algorithm>
#include <cmath>

namespace sheets {
namespace {

/// A measured number in words; these physics never meet money.
std::string rounded(const Words& w, double value, int places = 0) {
  return w.number({std::llround(value * 1e6)}, places);
}

bool isFromMemory(const std::string& source) {
  return source.empty() || source.find("from memory") != std::string::npos;
}

/// '80', or nothing where the region names none.
std::string level(const std::optional<int>& n) { return n ? std::to_string(*n) : ""; }
std::string level(const Words& w, const std::optional<base::Count>& n) {
  if (!n) return "";
  return w.number(*n, n->millionths % 1'000'000 == 0 ? 0 : 1);
}

template <class Day, class Value>
const Day* hardest(const std::vector<Day>& days, Value value) {
  const auto most = std::max_element(days.begin(), days.end(),
                                     [&](const Day& a, const Day& b) { return value(a) < value(b); });
  return most == days.end() ? nullptr : &*most;
}

template <class Day>
const Day* on(const std::vector<Day>& days, base::Date date) {
  for (const auto& day : days) {
    if (day.date == date) return &day;
  }
  return nullptr;
}

/// Above a level of the region, or what stands in for one it does not name (Directive 2003/10/EC, art. 3).
bool isLoud(const model::NoiseDay& day, const model::WorkLimits& limits, std::optional<int> at,
            int otherwise) {
  const bool isOsha = limits.noise == model::NoiseRule::Osha;
  if (isOsha) return day.nioshDose >= 100;  // NIOSH 98-126: 85 dB(A), halved every 3 dB
  return day.lex8h >= at.value_or(otherwise);
}

Facts noiseFacts(const Computed& x, const Words& w) {
  const auto& e = x.exposure;
  const auto& l = x.c.region->limits;
  const model::NoiseDay none;
  const auto* found = hardest(e.noise, [](const auto& day) { return day.lex8h; });
  const auto& day = found ? *found : none;
  return {{"is_any", Fact::yes(found != nullptr)},
          {"is_known", Fact::yes(!isFromMemory(l.noiseSource))},
          {"is_osha", Fact::yes(l.noise == model::NoiseRule::Osha)},
          {"source", l.noiseSource},
          {"lower", level(l.noiseLower)},
          {"upper", level(l.noiseUpper)},
          {"limit", level(l.noiseLimit)},
          {"day", found ? w.shortDay(day.date) : ""},
          {"level", rounded(w, day.lex8h)},
          {"niosh_dose", rounded(w, day.nioshDose)},
          {"osha_dose", rounded(w, day.oshaDose)},
          {"is_over", Fact::yes(isLoud(day, l, l.noiseLower ? l.noiseLower : l.noiseUpper, 80))},
          {"cannot_share", Fact::yes(found && day.shareAmong == 0)},
          {"protection", rounded(w, std::ceil(day.protection))},
          {"share", day.shareAmong > 1 ? std::to_string(day.shareAmong) : ""}};
}

std::string hoursAndMinutes(const Words& w, double minutes) {
  const auto whole = static_cast<int>(std::floor(minutes));
  const std::string rest = std::to_string(whole % 60);
  return std::to_string(whole / 60) + "\u00A0" + w("units.hour") + "\u00A0" + (rest.size() < 2 ? "0" : "") +
         rest;
}

std::string toolName(const Computed& x, const std::string& id) {
  for (const auto& tool : x.content.tools) {
    if (tool.id == id) return tool.name;
  }
  return id;
}

Facts vibrationFacts(const Computed& x, const Words& w) {
  const auto& e = x.exposure;
  const auto& l = x.c.region->limits;
  const model::VibrationDay none;
  const auto* found = hardest(e.vibration, [](const auto& day) { return day.a8; });
  const auto& day = found ? *found : none;
  const double action = l.vibrationAction ? static_cast<double>(l.vibrationAction->millionths) / 1e6 : 2.5;
  // The tool that shakes most is told with the time in which it alone reaches the action value.
  const model::VibrationTool* worst = nullptr;
  for (const auto& d : e.vibration) {
    for (const auto& tool : d.tools) {
      if (!worst || tool.acceleration > worst->acceleration) worst = &tool;
    }
  }
  return {{"is_any", Fact::yes(found != nullptr)},
          {"is_known", Fact::yes(!isFromMemory(l.vibrationSource))},
          {"source", l.vibrationSource},
          {"action", level(w, l.vibrationAction)},
          {"limit", level(w, l.vibrationLimit)},
          {"day", found ? w.shortDay(day.date) : ""},
          {"level", rounded(w, day.a8, 1)},
          {"points", rounded(w, day.points)},
          {"is_over", Fact::yes(day.a8 >= action)},
          {"share", day.shareAmong > 1 ? std::to_string(day.shareAmong) : ""},
          {"tool", worst ? toolName(x, worst->tool) : ""},
          {"time", worst ? hoursAndMinutes(w, worst->minutesToAction) : ""}};
}

std::string felt(const Words& w, double celsius) {
  return w.isMetric() ? rounded(w, celsius) + "\u00A0" + w("units.celsius")
                      : rounded(w, celsius * 1.8 + 32) + "\u00A0" + w("units.fahrenheit");
}

Facts heatFacts(const Computed& x, const Words& w) {
  const auto& e = x.exposure;
  const model::HeatDay none;
  const auto* found = hardest(e.heat, [](const auto& day) { return day.celsius; });
  const auto& day = found ? *found : none;
  const auto is = [&](model::HeatBand band) { return Fact::yes(found && day.band == band); };
  return {{"is_known", Fact::yes(found != nullptr)},
          {"source", x.c.region->limits.heatSource},
          {"from", felt(w, 80 / 1.8 - 32 / 1.8)},  // the first band of the heat index begins at 80 F
          {"day", found ? w.shortDay(day.date) : ""},
          {"clock", found ? w.clock(day.at.minutes) : ""},
          {"felt", found ? felt(w, day.celsius) : ""},
          {"is_usual", Fact::yes(day.isUsual)},
          {"is_cool", is(model::HeatBand::None)},
          {"is_warm", is(model::HeatBand::Caution)},
          {"is_hot", is(model::HeatBand::ExtremeCaution)},
          {"is_too_hot", Fact::yes(found && day.band >= model::HeatBand::Danger)}};
}

/// Air in cubic metres an hour, or cubic feet a minute, rounded up to a hundred: an order of size, no design.
std::string air(const Words& w, double cubicMetresPerHour) {
  constexpr double cubicFeet = 35.3147;  // in a cubic metre, NIST SP 811 (2008), App. B.8
  const double amount = w.isMetric() ? cubicMetresPerHour : cubicMetresPerHour * cubicFeet / 60;
  return rounded(w, std::ceil(amount / 100) * 100) + "\u00A0" +
         w(w.isMetric() ? "units.m3_per_hour" : "units.ft3_per_minute");
}

FactList vapourFacts(const Computed& x, const Words& w) {
  const auto& e = x.exposure;
  const auto& vapour = x.c.product->sds ? x.c.product->sds->vapour : std::nullopt;
  FactList list;
  for (const auto& area : e.vapour) {
    if (!vapour) continue;
    list.push_back({{"deck", deckLetter(area.deck) + " " + x.c.job.areas[area.deck].name},
                    {"substance", vapour->substance},
                    {"limit", rounded(w, vapour->exposureLimit) + "\u00A0" + w("units.mg_per_m3")},
                    {"air", air(w, std::max(area.airForLimit, area.airForExplosion))}});
  }
  return list;
}

Facts dustFacts(const Computed& x, const Words& w) {
  const auto& l = x.c.region->limits;
  bool isHard = false;
  for (const auto& deck : x.c.job.areas) isHard = isHard || timberOf(x, deck).isHardwood;
  const auto& limit = isHard ? l.hardwoodDust : l.softwoodDust;
  const bool isKnown = limit && !isFromMemory(l.dustSource);
  return {{"is_known", Fact::yes(isKnown)},
          {"is_hardwood", Fact::yes(isHard)},
          {"limit", isKnown ? level(w, limit) + "\u00A0" + w("units.mg_per_m3") : ""},
          {"source", l.dustSource},
          {"mask", l.dustProtection}};
}

/// A row of the days, and how hard it is.
struct DayRow {
  base::Date first{}, last{};
  std::vector<std::string> words;  // noise, vibration, felt, protection, share
  double load = 0;                 // noise in dB, as much as doubles the points of vibration
};

DayRow dayRow(const Computed& x, base::Date date, const Words& w) {
  const auto& l = x.c.region->limits;
  const auto* noise = on(x.exposure.noise, date);
  const auto* vibration = on(x.exposure.vibration, date);
  const auto* heat = on(x.exposure.heat, date);
  const bool isOsha = l.noise == model::NoiseRule::Osha;
  const bool isLoudDay = noise && isLoud(*noise, l, l.noiseLower ? l.noiseLower : l.noiseUpper, 80);
  DayRow row{date, date, {}, 0};
  row.words = {!noise ? "" : rounded(w, isOsha ? noise->oshaDose : noise->lex8h),
               vibration ? rounded(w, vibration->a8, 1) : "", heat ? felt(w, heat->celsius) : "",
               isLoudDay ? rounded(w, std::ceil(noise->protection)) : "",
               vibration && vibration->shareAmong > 1 ? std::to_string(vibration->shareAmong) : ""};
  if (noise) row.load = noise->lex8h;
  if (vibration) row.load = std::max(row.load, 80 + 3 * (vibration->a8 - 2.5));
  return row;
}

/// The hardest days in their order; those alike and one after the other stand together.
FactList dayFacts(const Computed& x, const Words& w, bool& areLeftOut) {
  constexpr std::size_t most = 5;
  std::vector<DayRow> rows;
  for (const auto date : x.plan.days) {
    DayRow row = dayRow(x, date, w);
    if (!rows.empty() && rows.back().words == row.words) rows.back().last = date;
    else rows.push_back(std::move(row));
  }
  areLeftOut = rows.size() > most;
  while (rows.size() > most)
    rows.erase(std::min_element(rows.begin(), rows.end(),
                                [](const auto& a, const auto& b) { return a.load < b.load; }));
  FactList list;
  for (const auto& row : rows) {
    list.push_back({{"day", row.first == row.last ? w.shortDay(row.first)
                                                  : w.shortDay(row.first) + " – " + w.shortDay(row.last)},
                    {"noise", row.words[0]},
                    {"vibration", row.words[1]},
                    {"is_felt", Fact::yes(!x.exposure.heat.empty())},
                    {"felt", row.words[2]},
                    {"protection", row.words[3]},
                    {"share", row.words[4]}});
  }
  return list;
}

}  // namespace

void addExposure(Facts& f, const Computed& x, const Words& w) {
  const auto& e = x.exposure;
  f.emplace_back("noise", noiseFacts(x, w));
  f.emplace_back("vibration", vibrationFacts(x, w));
  f.emplace_back("heat", heatFacts(x, w));
  f.emplace_back("vapour", vapourFacts(x, w));
  f.emplace_back("dust", dustFacts(x, w));
  f.emplace_back("is_osha", Fact::yes(x.c.region->limits.noise == model::NoiseRule::Osha));
  const double tin = e.lifting.heaviestTin;
  constexpr double pound = 0.45359237;  // kg, NIST SP 811 (2008), App. B.8
  f.emplace_back("has_tin", Fact::yes(tin > 0));
  f.emplace_back("tin_mass", w.isMetric() ? rounded(w, std::ceil(tin)) + "\u00A0" + w("units.kg")
                                          : rounded(w, std::ceil(tin / pound)) + "\u00A0" + w("units.lb"));
  f.emplace_back("example_tools", Fact::yes(e.hasExampleTools));
  bool areLeftOut = false;
  f.emplace_back("has_exposure_days", Fact::yes(!e.noise.empty() || !e.vibration.empty()));
  f.emplace_back("exposure_days", dayFacts(x, w, areLeftOut));
  f.emplace_back("days_left_out", Fact::yes(areLeftOut));
}

}  // namespace sheets
