// Limits of the region, what this job comes to, and what is done about it. A number whose source is from
// memory is not printed: its row then says whom to ask.
#include "model/lookup.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/safety/day_values.h"
#include "sheets/safety/facts_safety.h"

#include <algorithm>
#include <cmath>

namespace sheets {
namespace {

/// '80', or nothing where the region names none.
std::string level(const std::optional<int>& n) { return n ? std::to_string(*n) : ""; }
std::string level(const Formatter& w, const std::optional<base::Count>& n) {
  if (!n) return "";
  return w.number(*n, n->millionths % 1'000'000 == 0 ? 0 : 1);
}

/// ', Tue 30: 91, Mon 22: 87': the days that come next.
template <class Day, class Value>
std::string nextHardest(std::vector<Day> days, const Formatter& w, Value value, int places) {
  constexpr std::size_t most = 3;
  std::stable_sort(days.begin(), days.end(), [&](const Day& a, const Day& b) { return value(a) > value(b); });
  std::string all;
  for (std::size_t i = 1; i < std::min(days.size(), most + 1); ++i)
    all += ", " + w.shortDay(days[i].date) + ":\u00A0" + rounded(w, value(days[i]), places);
  return all;
}

/// What the hazards say that belong to a row of limits.
void addRowHazard(Facts& f, const model::JobResult& x, LimitRow row, const Formatter& w) {
  const auto* hazard = hazardOfRow(x, row);
  const Facts words = hazard ? hazardFacts(x, *hazard, w) : Facts{};
  f.emplace_back("has_hazard", Fact::yes(hazard != nullptr));
  for (const char* name : {"who", "harm", "together", "left"}) {
    const Fact* found = find(words, name);
    f.emplace_back(name, found ? *found : Fact(""));
  }
}

/// The crew shares its tools evenly already, so work that is too much for a day goes over as many days as
/// people would share it; 0 = not by any number that is worth telling.
void addSharing(Facts& f, int among) {
  f.emplace_back("share", among > 1 ? std::to_string(among) : "");
  f.emplace_back("cannot_share", Fact::yes(among == 0));
}

Facts noiseFacts(const model::JobResult& x, const Formatter& w) {
  const auto& e = x.exposure;
  const auto& l = e.limits.noise;
  const model::NoiseDay none;
  const auto* found = hardest(e.noise, [](const auto& day) { return day.level; });
  const auto& day = found ? *found : none;
  const bool isOsha = l.rule == model::NoiseRule::Osha;
  const bool isOver = day.level >= (l.lower ? *l.lower : l.upper.value_or(model::lowerLevel(l)));
  const bool isPastGuidance =
      isOsha && day.nioshDose >= 100;  // NIOSH 98-126: 85 dB(A), 3 dB for half the time
  Facts f{{"is_any", Fact::yes(found != nullptr)},
          {"is_known", Fact::yes(isTold(l.source))},
          {"is_osha", Fact::yes(isOsha)},
          {"source", l.source},
          {"lower", level(l.lower)},
          {"upper", level(l.upper)},
          {"limit", level(l.limit)},
          {"day", found ? w.shortDay(day.date) : ""},
          {"level", rounded(w, day.level)},
          {"others", nextHardest(
                         e.noise, w, [](const auto& d) { return d.level; }, 0)},
          {"niosh_dose", rounded(w, day.nioshDose)},
          {"osha_dose", rounded(w, day.oshaDose)},
          {"is_over", Fact::yes(isOver)},
          {"is_past_guidance", Fact::yes(isPastGuidance)},
          {"is_guidance_only", Fact::yes(isPastGuidance && !isOver)},
          {"protection", rounded(w, std::ceil(day.protection))},
          {"loudest", std::to_string(day.loudest)},
          {"share_level", std::to_string(model::upperLevel(l))}};
  addSharing(f, found ? day.shareAmong : 1);
  addRowHazard(f, x, LimitRow::Noise, w);
  return f;
}

Facts vibrationFacts(const model::JobResult& x, const Formatter& w) {
  const auto& e = x.exposure;
  const auto& l = e.limits.vibration;
  const model::VibrationDay none;
  const auto* found = hardest(e.vibration, [](const auto& day) { return day.a8; });
  const auto& day = found ? *found : none;
  const double action = l.action ? base::floating(*l.action) : 2.5;
  Facts f{{"is_any", Fact::yes(found != nullptr)},
          {"is_known", Fact::yes(l.action && isTold(l.source))},
          {"is_sourced", Fact::yes(isTold(l.source))},
          {"source", l.source},
          {"action", level(w, l.action)},
          {"limit", level(w, l.limit)},
          {"day", found ? w.shortDay(day.date) : ""},
          {"level", rounded(w, day.a8, 1)},
          {"others", nextHardest(
                         e.vibration, w, [](const auto& d) { return d.a8; }, 1)},
          {"is_over", Fact::yes(day.a8 >= action)},
          {"points", rounded(w, day.points)}};
  addSharing(f, found ? day.shareAmong : 1);
  addRowHazard(f, x, LimitRow::Vibration, w);
  return f;
}

std::string degrees(const Formatter& w, double amount) {
  return rounded(w, amount) + "\u00A0" + degreeSign(w);
}

std::string felt(const Formatter& w, double celsius) { return degrees(w, inDegrees(w, celsius)); }

Facts heatFacts(const model::JobResult& x, const Formatter& w) {
  const auto& e = x.exposure;
  const model::HeatDay none;
  const bool isIndex = e.limits.heat.usesHeatIndex;
  const auto* found = hardest(e.heat, [](const auto& day) { return day.celsius; });
  const auto& day = found ? *found : none;
  const auto is = [&](model::HeatBand band) { return Fact::yes(found && day.band == band); };
  Facts f{{"is_known", Fact::yes(found != nullptr)},
          {"is_sourced", Fact::yes(isTold(e.limits.heat.source))},
          {"source", e.limits.heat.source},
          {"from", felt(w, 80 / 1.8 - 32 / 1.8)},  // the first band of the heat index begins at 80 F
          {"day", found ? w.shortDay(day.date) : ""},
          {"clock", found ? w.clock(day.at.minutes) : ""},
          {"felt", found ? felt(w, day.celsius) : ""},
          {"is_usual", Fact::yes(day.isUsual)},
          {"is_in_sun", Fact::yes(day.isInSun && !isIndex)},
          {"sun_adds", Fact::yes(day.isInSun && isIndex)},
          {"sun_more", w.isMetric() ? "8\u00A0" + w("units.celsius") : "15\u00A0" + w("units.fahrenheit")},
          {"is_cool", is(model::HeatBand::None)},
          {"is_warm", is(model::HeatBand::Caution)},
          {"is_hot", is(model::HeatBand::ExtremeCaution)},
          {"is_too_hot", Fact::yes(found && day.band >= model::HeatBand::Danger)},
          {"is_severe", Fact::yes(found && day.band >= model::HeatBand::ExtremeCaution)},
          {"wbgt", degrees(w, std::floor(inDegrees(w, e.hardWorkLimit)))}};
  addRowHazard(f, x, LimitRow::Heat, w);
  return f;
}

/// Rounded up to two figures: an order of size, no design.
std::string roundedUp(const Formatter& w, double amount) {
  const double step = std::pow(10, std::max(0.0, std::floor(std::log10(std::max(amount, 1.0))) - 1));
  return rounded(w, std::ceil(amount / step - 1e-9) * step);
}

/// Air in cubic metres an hour, or cubic feet a minute.
std::string air(const Formatter& w, double cubicMetresPerHour) {
  constexpr double cubicFeet = 35.3147;  // in a cubic metre, NIST SP 811 (2008), App. B.8
  return w.isMetric()
             ? roundedUp(w, cubicMetresPerHour) + "\u00A0" + w("units.m3_per_hour")
             : roundedUp(w, cubicMetresPerHour * cubicFeet / 60) + "\u00A0" + w("units.ft3_per_minute");
}

/// The limit as the product's file gives it; of several solvents that of all together.
std::string vapourLimit(const std::vector<model::Vapour>& vapours, const model::VapourArea& area,
                        const Formatter& w) {
  if (vapours.size() == 1 && vapours[0].isInPpm)
    return rounded(w, vapours[0].exposureLimit) + "\u00A0" + w("units.ppm");
  return rounded(w, std::floor(area.limit + 1e-6)) + "\u00A0" + w("units.mg_per_m3");
}

FactList vapourFacts(const model::JobResult& x, const Formatter& w) {
  FactList list;
  for (const auto& area : x.exposure.vapour) {
    const auto& vapours = x.c.product->sds->vapours;
    std::vector<std::string> substances;
    for (const auto& vapour : vapours) substances.push_back(vapour.substance);
    list.push_back({{"deck", deckLetter(area.deck) + " " + x.c.job.areas[area.deck].name},
                    {"substance", w.joined(substances)},
                    {"limit", vapourLimit(vapours, area, w)},
                    {"air", air(w, std::max(area.airForLimit, area.airForExplosion))},
                    {"is_metric", Fact::yes(w.isMetric())},
                    {"fire_air", air(w, area.airForExplosion)},
                    {"gallon_air", roundedUp(w, area.airPerGallon) + "\u00A0" + w("units.ft3")}});
  }
  return list;
}

Facts dustFacts(const model::JobResult& x, const Formatter& w) {
  const auto& l = x.exposure.limits.dust;
  bool isHard = false;
  for (const auto& deck : x.c.job.areas) isHard = isHard || timberOf(x, deck).isHardwood;
  const auto& limit = isHard ? l.hardwood : l.softwood;
  const bool isSourced = isTold(l.source), isKnown = limit && isSourced;
  const bool isAny = hazardOfRow(x, LimitRow::Dust) || model::asksFor(x.c.job.work, model::Work::Sand);
  Facts f{{"is_any", Fact::yes(isAny)},
          {"is_known", Fact::yes(isKnown)},
          {"is_sourced", Fact::yes(isSourced)},
          {"is_hardwood", Fact::yes(isHard)},
          {"limit", isKnown ? level(w, limit) + "\u00A0" + w("units.mg_per_m3") : ""},
          {"source", l.source},
          {"mask", l.protection},
          {"vacuum", vacuum(x, w)}};
  addRowHazard(f, x, LimitRow::Dust, w);
  return f;
}

std::string mass(const Formatter& w, double kilograms) {
  constexpr double pound = 0.45359237;  // kg, NIST SP 811 (2008), App. B.8
  return w.isMetric() ? rounded(w, std::ceil(kilograms)) + "\u00A0" + w("units.kg")
                      : rounded(w, std::ceil(kilograms / pound)) + "\u00A0" + w("units.lb");
}

}  // namespace

std::string tinMass(const model::JobResult& x, const Formatter& w) {
  return mass(w, x.exposure.lifting.heaviestTin);
}

std::string toolMass(const model::JobResult& x, const Formatter& w) {
  return x.exposure.lifting.heaviestTool > 0 ? mass(w, x.exposure.lifting.heaviestTool) : "";
}

void addExposure(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& e = x.exposure;
  f.emplace_back("noise", noiseFacts(x, w));
  f.emplace_back("vibration", vibrationFacts(x, w));
  f.emplace_back("heat", heatFacts(x, w));
  f.emplace_back("vapour", vapourFacts(x, w));
  f.emplace_back("dust", dustFacts(x, w));
  f.emplace_back("is_osha", Fact::yes(e.limits.noise.rule == model::NoiseRule::Osha));
  f.emplace_back("has_tin", Fact::yes(e.lifting.heaviestTin > 0));
  f.emplace_back("tin_mass", tinMass(x, w));
  f.emplace_back("example_tools", Fact::yes(e.hasExampleTools));
  f.emplace_back("has_exposure", Fact::yes(!e.noise.empty() || !e.vibration.empty()));
}

}  // namespace sheets
