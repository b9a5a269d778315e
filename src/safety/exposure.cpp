#include "safety/exposure.h"

#include "base/units.h"
#include "model/lookup.h"
#include "safety/heat.h"
#include "safety/noise.h"
#include "safety/protector.h"
#include "safety/vapour.h"
#include "safety/vibration.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace safety {
namespace {

/// One person's hours with each tool on each day.
using ToolHours = std::map<base::Date, std::map<const model::Tool*, double>>;

double hoursWorked(const model::Shift& shift) { return (shift.end.minutes - shift.start.minutes) / 60.0; }

ToolHours toolHours(const model::JobInputs& c, const model::Content& content, const model::Plan& plan) {
  ToolHours hours;
  for (const auto& shift : plan.shifts) {
    const double length = hoursWorked(shift);
    for (const auto& tool : content.tools) {
      if (model::isUsedFor(tool, shift.task, shift.deck, c.job, content))
        hours[shift.start.day][&tool] += length * base::floating(tool.use) / 100;
    }
  }
  return hours;
}

/// Sharing among more people than this is no measure.
constexpr int mostToShare = 8;

int within(int people) { return people > mostToShare ? 0 : people; }

/// A protector has to bring the day under the lower level, shared work under that from which protectors are
/// worn.
model::NoiseDay noiseOf(base::Date date, const std::vector<NoisePeriod>& day,
                        const model::NoiseLimits& limits) {
  const bool isOsha = limits.rule == model::NoiseRule::Osha;
  model::NoiseDay noise;
  noise.date = date;
  noise.nioshDose = nioshDose(day);
  noise.oshaDose = oshaDose(day);
  noise.lex8h = average8h(day);
  noise.level = isOsha ? std::max(0.0, oshaAverage(noise.oshaDose)) : noise.lex8h;
  noise.protection = std::max(0.0, noise.level - model::lowerLevel(limits));
  const int upper = model::upperLevel(limits);
  noise.shareAmong = within(isOsha ? shareAmongOsha(noise.level, upper) : shareAmong(noise.level, upper));
  return noise;
}

model::VibrationDay vibrationOf(base::Date date, const std::map<const model::Tool*, double>& tools,
                                const model::VibrationLimits& limits) {
  // Values of Directive 2002/44/EC, art. 3, where the region names none.
  const double action = limits.action ? base::floating(*limits.action) : 2.5;
  const double limit = limits.limit ? base::floating(*limits.limit) : 5.0;
  model::VibrationDay day;
  day.date = date;
  std::vector<VibrationPeriod> periods;
  for (const auto& [tool, hours] : tools) {
    if (!tool->vibration || tool->vibration->isZero()) continue;
    const double a = base::floating(*tool->vibration);
    periods.push_back({a, hours});
    day.tools.push_back({tool->id, a, hours * 60, minutesUntil(a, action), minutesUntil(a, limit)});
  }
  std::sort(day.tools.begin(), day.tools.end(), [](const auto& a, const auto& b) {
    return a.acceleration != b.acceleration ? a.acceleration > b.acceleration : a.tool < b.tool;
  });
  day.a8 = dailyVibration(periods);
  day.points = vibrationPoints(periods);
  day.shareAmong = within(shareVibration(day.a8, action));
  if (!day.tools.empty()) {
    const auto& worst = day.tools.front();
    const double own = vibrationPoints({{worst.acceleration, worst.minutes / 60}});
    day.minutesLeft = minutesLeft(day.points - own, worst.acceleration, 16 * action * action);
  }
  return day;
}

enum class Work { None, Shade, Sun };

/// Where the crew works in an hour; for the whole job it may be on any deck.
Work workIn(base::LocalTime hour, const model::JobInputs& c, const model::Plan& plan) {
  const auto end = base::plusMinutes(hour, 60);
  const model::ClockSpan span{hour.minutes, hour.minutes + 60};
  Work work = Work::None;
  for (const auto& s : plan.shifts) {
    if (s.start >= end || hour >= s.end) continue;
    work = Work::Shade;
    for (std::size_t deck = 0; deck < c.job.areas.size(); ++deck) {
      if (s.deck.value_or(deck) == deck && model::isSunlit(c.job.areas[deck], span)) return Work::Sun;
    }
  }
  return work;
}

/// The heat index is one of the shade, whatever the sun adds.
double feltIn(const model::Hour& hour, double gain, bool usesHeatIndex) {
  const auto& air = hour.air;
  if (usesHeatIndex) return heatIndex(air.celsius, air.humidity);
  return gain > 0 ? apparentTemperatureInSun(air.celsius, air.humidity, air.wind, gain)
                  : apparentTemperature(air.celsius, air.humidity, air.wind);
}

/// What the sun adds to a heat index, as it adds to the apparent temperature, in K. National Weather Service:
/// full sunshine adds up to 15 F.
double sunAddsToIndex(const model::Hour& hour, double gain) {
  constexpr double most = 15 / 1.8;
  return gain > 0 ? std::clamp(feltIn(hour, gain, false) - feltIn(hour, 0, false), 0.0, most) : 0;
}

/// The hottest hour of each day's work, and the band of the hardest.
std::vector<model::HeatDay> heatOf(const model::JobInputs& c, const model::Plan& plan, bool usesHeatIndex) {
  std::vector<model::HeatDay> days;
  for (const auto& hour : plan.hours) {
    const Work work = hour.source == model::WeatherSource::None ? Work::None : workIn(hour.at, c, plan);
    if (work == Work::None) continue;
    const double gain = work == Work::Sun ? bodyGain(hour.sunlight, hour.skylight, hour.sunElevation) : 0;
    const double felt = feltIn(hour, gain, usesHeatIndex);
    if (days.empty() || days.back().date != hour.at.day) days.push_back({hour.at.day, hour.at, -100});
    auto& day = days.back();
    const auto band = std::max(day.band, heatBand(felt + (usesHeatIndex ? sunAddsToIndex(hour, gain) : 0)));
    if (felt > day.celsius)
      day = {hour.at.day, hour.at, felt, gain > 0, band, hour.source == model::WeatherSource::Normals};
    day.band = band;
  }
  return days;
}

/// Hours from the first stroke of a coat on a deck to the last, day by day.
double coatingHours(const model::Plan& plan, std::size_t deck, int coat) {
  double minutes = 0;
  for (const auto& laid : plan.coats) {
    if (laid.deck == deck && laid.coat == coat) minutes += laid.end.minutes - laid.start.minutes;
  }
  return minutes / 60;
}

constexpr double cubicFoot = 1 / 35.3147;  // m3, NIST SP 811 (2008), App. B.8

/// Air for one solvent's limit, in the form that its unit and the place call for.
double airForLimit(const model::Vapour& v, double grams, bool isUs) {
  constexpr double poorMixing = 5;     // K, as in worked examples: air moves, but not everywhere
  constexpr double pint = 473.176473;  // g of water, for which the specific gravity is 1
  if (!v.isInPpm) return airUnderMassLimit(grams, v.exposureLimit, poorMixing);
  if (!isUs) return airUnderLimit(vapourVolume(grams, v.molarMass), v.exposureLimit, poorMixing);
  return 60 * cubicFoot * airUnderLimitUs(grams / pint / 60, 1, v.molarMass, v.exposureLimit, poorMixing);
}

/// What a deck's air has to carry off: solvents act together, so the air that each needs adds up, and so do
/// their shares of limits. The lower explosive limit of a mixture is Le Chatelier's.
model::VapourArea vapourArea(const model::Product& product, std::size_t deck, double grams, bool isUs) {
  constexpr double quarterLimit = 4;  // safety factor that keeps to 25 % of the lower explosive limit
  constexpr double gallon = 3.785411784;
  model::VapourArea area;
  area.deck = deck;
  area.solventGramsPerHour = grams;
  std::vector<std::pair<double, double>> masses, volumes;
  double mass = 0, volume = 0;
  for (const auto& v : product.sds->vapours) {
    const double part = grams * base::floating(v.share) / 100;
    const double gas = vapourVolume(part, v.molarMass);
    area.airForLimit += airForLimit(v, part, isUs);
    masses.emplace_back(part,
                        v.isInPpm ? milligramsPerCubicMetre(v.exposureLimit, v.molarMass) : v.exposureLimit);
    volumes.emplace_back(gas, base::floating(v.lowerExplosiveLimit));
    mass += part;
    volume += gas;
  }
  area.limit = mass / mixtureIndex(masses);
  const double lowerLimit = volume / mixtureIndex(volumes);
  area.airForExplosion = airUnderExplosion(volume, lowerLimit, quarterLimit);
  const double gasOfGallon = volume / grams * product.vocGramsPerLitre * gallon / cubicFoot;
  area.airPerGallon = airPerGallon(gasOfGallon, lowerLimit);
  return area;
}

/// All solvent of a coat counts as gone within the time of laying it.
std::vector<model::VapourArea> vapourOf(const model::JobInputs& c, const model::Estimate& estimate,
                                        const model::Plan& plan) {
  std::vector<model::VapourArea> areas;
  if (!c.product->sds || c.product->sds->vapours.empty()) return areas;
  for (std::size_t deck = 0; deck < c.job.areas.size(); ++deck) {
    if (!c.job.areas[deck].isCovered && !c.job.areas[deck].isEnclosed) continue;
    double grams = 0;
    for (const auto& coat : estimate.coats) {
      const double hours = coat.deck == deck ? coatingHours(plan, deck, coat.coat) : 0;
      if (hours > 0)
        grams = std::max(grams, base::floating(coat.litres) / 1000 / hours * c.product->vocGramsPerLitre);
    }
    if (grams > 0)
      areas.push_back(vapourArea(*c.product, deck, grams, c.region->units == model::UnitSystem::UsCustomary));
  }
  return areas;
}

/// The part of the laying hours that falls on the day with most of them.
double largestDay(const model::Content& content, const model::Plan& plan) {
  std::map<base::Date, int> minutes;
  int all = 0;
  for (const auto& s : plan.shifts) {
    if (!model::laysProduct(taskOf(content, s.task))) continue;
    minutes[s.start.day] += s.end.minutes - s.start.minutes;
    all += s.end.minutes - s.start.minutes;
  }
  int most = 0;
  for (const auto& [day, n] : minutes) most = std::max(most, n);
  return all > 0 ? static_cast<double>(most) / all : 1;
}

/// A pail of 20 L, half full of water, holds half a litre for each piece; never less than two pails. Our own
/// rule.
model::RagCount ragsOf(const model::Content& content, const model::Estimate& estimate,
                       const model::Resources& resources, const model::Plan& plan) {
  model::RagCount rags;
  if (estimate.coats.empty()) return rags;
  for (const auto& line : resources.consumables) {
    if (content.consumables.at(line.consumable).soaksOil) rags.count += static_cast<int>(line.bought);
  }
  constexpr int inPail = 20;
  rags.perDay = static_cast<int>(std::ceil(rags.count * largestDay(content, plan) - 1e-9));
  rags.pails = std::max(2, (rags.perDay + inPail - 1) / inPail);
  return rags;
}

model::Lifting liftingOf(const model::JobInputs& c, const model::Content& content,
                         const model::Resources& resources) {
  std::int64_t largest = 0;  // nanolitres
  for (const auto& tin : resources.product.bought.tins) largest = std::max(largest, tin.tin.size.millionths);
  for (const auto& tin : resources.product.opened) largest = std::max(largest, tin.size.millionths);
  constexpr double water = 1000;  // g/L where the product does not tell: cautious for oils
  const double density = c.product->gramsPerLitre > 0 ? c.product->gramsPerLitre : water;
  constexpr double withTin = 1.08;  // the tin itself, common practice
  model::Lifting lifting{static_cast<double>(largest) / 1e9 * density / 1000 * withTin, 0};
  for (const auto& tool : content.tools) {
    const bool isUsed = std::any_of(resources.labour.begin(), resources.labour.end(), [&](const auto& line) {
      return model::isUsedFor(tool, line.task, line.deck, c.job, content);
    });
    if (isUsed) lifting.heaviestTool = std::max(lifting.heaviestTool, tool.kilograms);
  }
  return lifting;
}

/// While the crew works; an upper estimate, as the boards' warmth is everywhere.
double warmestBoards(const model::JobInputs& c, const model::Plan& plan) {
  double most = -100;
  for (const auto& hour : plan.hours) {
    if (hour.source != model::WeatherSource::None && workIn(hour.at, c, plan) != Work::None)
      most = std::max(most, hour.surface);
  }
  return most;
}

}  // namespace

model::CrewExposure exposureOf(const model::JobInputs& c, const model::Content& content,
                               const model::Estimate& estimate, const model::Resources& resources,
                               const model::Plan& plan) {
  model::CrewExposure exposure;
  exposure.limits = model::limitsOn(*c.region, plan.days.empty() ? base::Date{} : plan.days.back().date);
  const auto& limits = exposure.limits;
  model::NoiseDay hardest;
  for (const auto& [date, tools] : toolHours(c, content, plan)) {
    std::vector<NoisePeriod> periods;
    int loudest = 0;
    for (const auto& [tool, hours] : tools) {
      if (tool->soundDb) periods.push_back({static_cast<double>(*tool->soundDb), hours});
      loudest = std::max(loudest, tool->soundDb.value_or(0));
      exposure.hasExampleTools = exposure.hasExampleTools || tool->isExample;
    }
    if (!periods.empty()) {
      exposure.noise.push_back(noiseOf(date, periods, limits.noise));
      exposure.noise.back().loudest = loudest;
    }
    const auto vibration = vibrationOf(date, tools, limits.vibration);
    if (!vibration.tools.empty()) exposure.vibration.push_back(vibration);
  }
  for (const auto& day : exposure.noise) {
    hardest.level = std::max(hardest.level, day.level);
    hardest.loudest = std::max(hardest.loudest, day.loudest);
  }
  exposure.protector = protectorFor(hardest, limits.noise);
  const auto& crew = c.job.crew;
  exposure.newToHeatHours =
      hoursInHeat(1, (crew.endMinutes - crew.startMinutes - crew.breakMinutes) / 60.0, true);
  exposure.heat = heatOf(c, plan, limits.heat.usesHeatIndex);
  exposure.hardWorkLimit = wetBulbGlobeLimit(hardWork);
  exposure.vapour = vapourOf(c, estimate, plan);
  exposure.rags = ragsOf(content, estimate, resources, plan);
  exposure.lifting = liftingOf(c, content, resources);
  exposure.warmestBoards = warmestBoards(c, plan);
  return exposure;
}

}  // namespace safety
