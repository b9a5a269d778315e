#include "safety/conditions.h"

#include "base/quantity_words.h"
#include "base/units.h"
#include "model/lookup.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace safety {
namespace {

using model::Condition;

/// The names, each once, as 'A, B'.
std::string listed(const std::vector<std::string>& names) {
  std::string all;
  for (auto name = names.begin(); name != names.end(); ++name) {
    if (std::find(names.begin(), name, *name) == name) all += (all.empty() ? "" : ", ") + *name;
  }
  return all;
}

Answer yes(bool holds, std::string value = {}, std::string limit = {}) {
  return {holds, true, std::move(value), std::move(limit)};
}

Answer decks(const Situation& s, const std::function<bool(const model::Deck&)>& is) {
  std::vector<std::string> names;
  for (const auto& deck : s.c.job.areas) {
    if (is(deck)) names.push_back(deck.name);
  }
  return yes(!names.empty(), listed(names));
}

Answer timbers(const Situation& s, bool model::Timber::*is) {
  std::vector<std::string> names;
  for (const auto& deck : s.c.job.areas) {
    const auto& timber = s.content.timbers.at(deck.timber);
    if (timber.*is) names.push_back(timber.name);
  }
  return yes(!names.empty(), listed(names));
}

bool does(const Situation& s, const std::string& task) {
  return std::any_of(s.resources.labour.begin(), s.resources.labour.end(),
                     [&](const auto& line) { return line.task == task; });
}

bool doesWork(const Situation& s, model::Work work) {
  return std::any_of(s.content.tasks.begin(), s.content.tasks.end(),
                     [&](const auto& task) { return task.work == work && does(s, task.id); });
}

/// With the sanding before a coat that comes late.
bool sands(const Situation& s) {
  return doesWork(s, model::Work::Sand) ||
         std::any_of(s.content.tasks.begin(), s.content.tasks.end(),
                     [&](const auto& task) { return task.isForLateCoat && does(s, task.id); });
}

bool uses(const Situation& s, const model::Tool& tool) {
  return std::any_of(s.resources.labour.begin(), s.resources.labour.end(), [&](const auto& line) {
    return model::isUsedFor(tool, line.task, line.deck, s.c.job, s.content);
  });
}

Answer toolOf(const Situation& s, const std::string& id) {
  const auto tool = std::find_if(s.content.tools.begin(), s.content.tools.end(),
                                 [&](const auto& one) { return one.id == id; });
  return tool == s.content.tools.end() ? yes(false) : yes(uses(s, *tool), tool->name);
}

Answer electricTools(const Situation& s) {
  std::vector<std::string> names;
  for (const auto& tool : s.content.tools) {
    if (tool.isElectric && uses(s, tool)) names.push_back(tool.name);
  }
  return yes(!names.empty(), listed(names));
}

/// Category 3 of the UN GHS ends at a flash point of 60 C; H224 to H226 are categories 1 to 3 (from memory).
Answer flammable(const Situation& s) {
  const auto& sds = s.c.product->sds;
  if (s.estimate.coats.empty() || !sds) return yes(false);
  for (const auto& code : sds->statements) {
    if (code == "H224" || code == "H225" || code == "H226") return yes(true, code);
  }
  if (sds->flashPoint && *sds->flashPoint <= base::Temperature::whole(60))
    return yes(true, base::decimal(sds->flashPoint->millionths, 0, ".", "") + " °C");
  return yes(false);
}

Answer builtBefore(const Situation& s, int year) {
  const auto limit = year > 0 ? std::optional(year) : s.c.region->leadUntil;
  const auto built = s.c.job.site.yearBuilt;
  if (!limit || !built) return {true, false, "", ""};
  return yes(*built < *limit, std::to_string(*built), std::to_string(*limit));
}

std::string height(const Situation& s, base::Length l) {
  if (s.c.region->units == model::UnitSystem::UsCustomary) return base::feetAndInches(l);
  return base::decimal(base::inMetres(l), 1, s.c.region->numbers.decimal, "") + " m";
}

Answer edgeAbove(const Situation& s, base::Length limit) {
  base::Length most;
  for (const auto& deck : s.c.job.areas) {
    if (!deck.hasRail) most = std::max(most, deck.edgeHeight.value_or(base::Length{}));
  }
  return yes(most > limit, height(s, most), height(s, limit));
}

std::string rounded(const Situation& s, double value, int places, const char* unit) {
  return base::decimal(std::llround(value * 1e6), places, s.c.region->numbers.decimal, "") + unit;
}

Answer hotDay(const Situation& s) {
  const auto& heat = s.exposure.heat;
  if (heat.empty()) return {true, false, "", ""};
  const auto hottest = std::max_element(heat.begin(), heat.end(),
                                        [](const auto& a, const auto& b) { return a.celsius < b.celsius; });
  const bool isUs = s.c.region->units == model::UnitSystem::UsCustomary;
  const std::string felt =
      isUs ? rounded(s, hottest->celsius * 1.8 + 32, 0, " °F") : rounded(s, hottest->celsius, 0, " °C");
  const bool isIndex = s.exposure.limits.heat.usesHeatIndex;
  std::string where = hottest->isInSun && !isIndex ? " in the sun" : " in the shade";
  if (hottest->isInSun && isIndex)
    where += isUs ? ", full sun up to 15 °F more" : ", full sun up to 8 °C more";
  return yes(std::any_of(heat.begin(), heat.end(),
                         [](const auto& day) { return day.band != model::HeatBand::None; }),
             felt + where);
}

Answer noiseAbove(const Situation& s, model::Threshold threshold) {
  const auto& limits = s.exposure.limits.noise;
  const int limit =
      threshold == model::Threshold::Lower ? model::lowerLevel(limits) : model::upperLevel(limits);
  double most = 0;
  for (const auto& day : s.exposure.noise) most = std::max(most, day.level);
  return yes(most >= limit, rounded(s, most, 0, " dB(A)"), std::to_string(limit) + " dB(A)");
}

/// Where the region gives no value: those of Directive 2002/44/EC, art. 3.
Answer vibrationAbove(const Situation& s, model::Threshold threshold) {
  const auto& limits = s.exposure.limits.vibration;
  const auto given = threshold == model::Threshold::Action ? limits.action : limits.limit;
  const double limit = given ? base::floating(*given) : threshold == model::Threshold::Action ? 2.5 : 5.0;
  double most = 0;
  for (const auto& day : s.exposure.vibration) most = std::max(most, day.a8);
  return yes(most >= limit, rounded(s, most, 1, " m/s²"), rounded(s, limit, 1, " m/s²"));
}

Answer massAbove(const Situation& s, double mass, int kilograms) {
  const bool isUs = s.c.region->units == model::UnitSystem::UsCustomary;
  constexpr double pound = 0.45359237;  // kg, NIST SP 811 (2008), App. B.8
  const auto words = [&](double kg) {
    return isUs ? rounded(s, kg / pound, 0, " lb") : rounded(s, kg, 0, " kg");
  };
  return yes(mass > kilograms, words(mass), words(kilograms));
}

/// Where nothing is known of the weather it does not hold: a hand on the boards tells.
Answer boardsAbove(const Situation& s, int celsius) {
  const bool isUs = s.c.region->units == model::UnitSystem::UsCustomary;
  const auto words = [&](double c) {
    return isUs ? rounded(s, c * 1.8 + 32, 0, " °F") : rounded(s, c, 0, " °C");
  };
  return yes(s.exposure.warmestBoards > celsius, words(s.exposure.warmestBoards), words(celsius));
}

/// From ten hours on, breaks taken off: our own choice.
Answer longDay(const Situation& s) {
  constexpr double limit = 9.5;
  const auto& crew = s.c.job.crew;
  const double hours = (crew.endMinutes - crew.startMinutes - crew.breakMinutes) / 60.0;
  return yes(hours > limit, rounded(s, hours, 1, " h"), rounded(s, limit, 1, " h"));
}

}  // namespace

Answer answerTo(const model::Clause& clause, const Situation& s) {
  const auto& product = *s.c.product;
  const auto& site = s.c.job.site;
  const bool lays = !s.estimate.coats.empty();
  switch (clause.condition) {
    case Condition::DryingOil:
      return yes(lays && product.isDryingOil);
    case Condition::WaterBorne:
      return yes(lays && product.isWaterborne);
    case Condition::Coating:
      return yes(lays);
    case Condition::Flammable:
      return flammable(s);
    case Condition::Solvent: {
      std::vector<std::string> substances;
      if (product.sds) {
        for (const auto& vapour : product.sds->vapours) substances.push_back(vapour.substance);
      }
      return yes(lays && !substances.empty(), listed(substances));
    }
    case Condition::NoSafetyData:
      return yes(lays && !product.sds);
    case Condition::Hardwood:
      return timbers(s, &model::Timber::isHardwood);
    case Condition::FilmCoating:
      return decks(s, [](const auto& d) { return d.state == model::State::Film; });
    case Condition::OiledBefore:
      return decks(
          s, [](const auto& d) { return d.state == model::State::Oiled || d.state == model::State::Film; });
    case Condition::BuiltBefore:
      return builtBefore(s, clause.number);
    case Condition::MayBeTreated:
      return timbers(s, &model::Timber::mayBeTreated);
    case Condition::Treated:
      return decks(s, [](const auto& d) { return d.isTreated; });
    case Condition::NearWater:
      return yes(site.isNearWater);
    case Condition::EdgeAbove:
      return edgeAbove(s, clause.height);
    case Condition::ElectricTools:
      return electricTools(s);
    case Condition::Washing:
      return yes(doesWork(s, model::Work::Wash));
    case Condition::Sanding:
      return yes(sands(s));
    case Condition::Task:
      return yes(does(s, clause.id), model::taskOf(s.content, clause.id).name);
    case Condition::Tool:
      return toolOf(s, clause.id);
    case Condition::Covered:
      return decks(s, [](const auto& d) { return d.isCovered; });
    case Condition::Enclosed:
      return decks(s, [](const auto& d) { return d.isEnclosed; });
    case Condition::InSun:
      return decks(s, [&](const auto& d) {
        return model::isSunlit(d, {s.c.job.crew.startMinutes, s.c.job.crew.endMinutes});
      });
    case Condition::HotDay:
      return hotDay(s);
    case Condition::Alone:
      return yes(s.c.job.crew.people == 1);
    case Condition::Public:
      return yes(site.isPublic.value_or(false));
    case Condition::Children:
      return yes(site.hasChildren);
    case Condition::NoiseAbove:
      return noiseAbove(s, clause.threshold);
    case Condition::VibrationAbove:
      return vibrationAbove(s, clause.threshold);
    case Condition::LiftingAbove:
      return massAbove(s, s.exposure.lifting.heaviestTin, clause.number);
    case Condition::ToolAbove:
      return massAbove(s, s.exposure.lifting.heaviestTool, clause.number);
    case Condition::BoardsAbove:
      return boardsAbove(s, clause.number);
    case Condition::Site:
      return yes(std::find(site.hazards.begin(), site.hazards.end(), clause.id) != site.hazards.end(),
                 clause.id);
    case Condition::LongDay:
      return longDay(s);
  }
  throw std::logic_error("internal error: a condition is not told apart");
}

}  // namespace safety
