// The hazards that apply, the label of the product and the protective equipment, in words.
#include "base/letters.h"
#include "model/lookup.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/safety/facts_safety.h"

#include <algorithm>

namespace sheets {
namespace {

using model::Condition;

/// The decks of which a hazard's conditions speak; all when they speak of none.
std::string decksOf(const model::JobResult& x, const model::Hazard& hazard, const Formatter& w, Decks how) {
  const auto concerns = [&](const model::Deck& deck, const model::Clause& clause) {
    switch (clause.condition) {
      case Condition::FilmCoating:
        return deck.state == model::State::Film;
      case Condition::OiledBefore:
        return deck.state == model::State::Oiled || deck.state == model::State::Film;
      case Condition::MayBeTreated:
        return timberOf(x, deck).mayBeTreated;
      case Condition::Treated:
        return deck.isTreated;
      case Condition::Hardwood:
        return timberOf(x, deck).isHardwood;
      case Condition::Covered:
        return deck.isCovered;
      case Condition::Enclosed:
        return deck.isEnclosed;
      case Condition::InSun:
        return model::isSunlit(deck, {x.c.job.crew.startMinutes, x.c.job.crew.endMinutes});
      case Condition::EdgeAbove:
        return !deck.hasRail && deck.edgeHeight > clause.height;
      default:
        return false;  // conditions of the job, not of a deck
    }
  };
  std::vector<std::string> named, all;
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    const auto& deck = x.c.job.areas[i];
    all.push_back(how == Decks::ByName ? deckLetter(i) + " " + deck.name : deckLetter(i));
    bool isNamed = false;
    for (const auto* list : {&hazard.when.all, &hazard.when.any}) {
      for (const auto& clause : *list) isNamed = isNamed || concerns(deck, clause);
    }
    if (isNamed) named.push_back(all.back());
  }
  return w.joined(named.empty() ? all : named);
}

bool isUs(const model::JobResult& x) { return x.c.region->units == model::UnitSystem::UsCustomary; }

/// The one word of the content's English that the United States spell otherwise.
std::string spelled(std::string text, const model::JobResult& x) {
  if (!isUs(x) || !x.language.id.starts_with("en")) return text;
  for (auto at = text.find("apour"); at != std::string::npos; at = text.find("apour", at))
    text.erase(at + 3, 1);
  return text;
}

/// A text of the content with the words of this job in its braces.
std::string filled(std::string text, const model::JobResult& x, const model::Hazard& hazard,
                   const Formatter& w, Decks decks) {
  if (text.find('{') == std::string::npos) return spelled(std::move(text), x);  // as most are
  const auto& region = *x.c.region;
  base::Length edge;
  for (const auto& deck : x.c.job.areas) {
    if (!deck.hasRail) edge = std::max(edge, deck.edgeHeight.value_or(base::Length{}));
  }
  const std::pair<const char*, std::string> words[] = {
      {"{cutout}", region.powerCutout},
      {"{mask}", x.exposure.limits.dust.protection},
      {"{vacuum}", vacuum(x, w)},
      {"{emergency}", region.emergencyNumber},
      {"{ask_safety}", authorityOf(w, "safety")},
      {"{ask_waste}", authorityOf(w, "waste")},
      {"{ask_lead}", authorityOf(w, "lead")},
      {"{ask_treated}", authorityOf(w, "treated")},
      {"{edge}", w.length(edge)},
      {"{tin}", tinMass(x, w)},
      {"{sander}", toolMass(x, w)},
      {"{gas_mask}", capitalised(gradeOf(region, "gas_mask"))},
      {"{fall_rule}", region.falls.source},
      {"{pause}", w.clock(model::breakOf(x.c.job.crew).from)},
      {"{generator_distance}", w(isUs(x) ? "leaf.generator_feet" : "leaf.generator_metres")},
      {"{decks}", decksOf(x, hazard, w, decks)},
      {"{leader}", x.c.job.crew.leader.empty() ? w("crew.leader") : x.c.job.crew.leader}};
  text = spelled(std::move(text), x);
  for (const auto& [name, by] : words) {
    const std::string place = name;
    for (auto at = text.find(place); at != std::string::npos; at = text.find(place, at + by.size()))
      text.replace(at, place.size(), by);
  }
  return text;
}

bool asksFor(const model::Hazard& hazard, std::initializer_list<Condition> conditions) {
  std::vector<model::Clause> all = hazard.when.all;
  all.insert(all.end(), hazard.when.any.begin(), hazard.when.any.end());
  all.insert(all.end(), hazard.when.none.begin(), hazard.when.none.end());
  return std::all_of(conditions.begin(), conditions.end(), [&](Condition condition) {
    return std::any_of(all.begin(), all.end(), [&](const auto& c) { return c.condition == condition; });
  });
}

bool applies(const model::JobResult& x, const std::string& id) {
  return std::any_of(x.hazards.begin(), x.hazards.end(),
                     [&](const auto& h) { return h.id == id && h.applies; });
}

}  // namespace

std::string gradeOf(const model::Region& region, const std::string& equipment) {
  const auto found = region.equipment.find(equipment);
  return found == region.equipment.end() ? "" : found->second;
}

const char* nameOf(model::ControlLevel level) {
  switch (level) {
    case model::ControlLevel::Eliminate:
      return "eliminate";
    case model::ControlLevel::Substitute:
      return "substitute";
    case model::ControlLevel::Engineer:
      return "engineer";
    case model::ControlLevel::Organise:
      return "organise";
    case model::ControlLevel::Protect:
      return "protect";
  }
  throw std::logic_error("internal error: unknown level of a control");
}

std::string vacuum(const model::JobResult& x, const Formatter& w) {
  const auto& areas = x.c.job.areas;
  const bool isTreated = std::any_of(areas.begin(), areas.end(),
                                     [&](const auto& deck) { return model::mayBeTreated(deck, x.content); });
  return w(isTreated || isUs(x) ? "vacuum.hepa" : "vacuum.fine");
}

std::optional<LimitRow> rowOf(const model::Hazard& hazard) {
  if (asksFor(hazard, {Condition::NoiseAbove})) return LimitRow::Noise;
  if (asksFor(hazard, {Condition::VibrationAbove})) return LimitRow::Vibration;
  const auto& all = hazard.when.all;
  if (all.size() == 1 && all[0].condition == Condition::HotDay) return LimitRow::Heat;
  if (asksFor(hazard, {Condition::Sanding, Condition::Hardwood})) return LimitRow::Dust;
  return {};
}

const model::Hazard* hazardOfRow(const model::JobResult& x, LimitRow row) {
  for (const auto& hazard : x.content.hazards) {
    if (rowOf(hazard) == row && applies(x, hazard.id)) return &hazard;
  }
  return nullptr;
}

Facts hazardFacts(const model::JobResult& x, const model::Hazard& hazard, const Formatter& w, Decks decks) {
  const auto say = [&](const std::string& text) { return filled(text, x, hazard, w, decks); };
  std::string together;
  FactList controls;
  for (const auto& control : hazard.controls) {
    const std::string text = capitalised(say(control.text));
    together += (together.empty() ? "" : " ") + text;
    controls.push_back({{"text", text}, {"level", w(std::string("risk.levels.") + nameOf(control.level))}});
  }
  return {{"title", say(hazard.title)}, {"who", say(hazard.who)},          {"harm", say(hazard.harm)},
          {"sign", hazard.sign},        {"controls", std::move(controls)}, {"together", together},
          {"left", say(hazard.left)}};
}

std::string firstControls(const Facts& hazard, std::size_t most) {
  const auto& controls = std::get<FactList>(find(hazard, "controls")->value);
  std::string all;
  for (std::size_t i = 0; i < std::min(most, controls.size()); ++i)
    all += (i > 0 ? " " : "") + std::get<std::string>(find(controls[i], "text")->value);
  return all;
}

namespace {

/// The EU's own statements, EUH..., have no number in the United States: there they are told without it.
FactList texts(const std::vector<std::string>& codes, const std::map<std::string, std::string>& standard,
               const model::JobResult& x) {
  FactList list;
  for (const auto& code : codes) {
    const auto found = standard.find(code);
    const std::string text = found == standard.end() ? "" : spelled(found->second, x);
    list.push_back(
        {{"code", isUs(x) && code.starts_with("EUH") && !text.empty() ? "" : code}, {"text", text}});
  }
  return list;
}

}  // namespace

Facts labelFacts(const model::JobResult& x, const model::SafetyData& d, const Formatter& w) {
  std::string signal;
  if (!d.signalWord.empty())
    signal = w(d.signalWord == "Danger" ? "product.signal_danger" : "product.signal_warning");
  FactList pictograms;
  for (const auto& code : d.pictograms) {
    const auto words = x.content.labels.pictograms.find(code);
    pictograms.push_back({{"sign", base::lowered(code)},
                          {"alt", words == x.content.labels.pictograms.end() ? code : words->second}});
  }
  FactList statements = texts(d.statements, x.content.labels.statements, x);
  const Fact first = statements.empty() ? Fact("") : *find(statements.front(), "text");
  return {{"signal", signal},
          {"has_pictograms", Fact::yes(!d.pictograms.empty())},
          {"pictograms", std::move(pictograms)},
          {"first", first},
          {"statements", std::move(statements)},
          {"has_precautions", Fact::yes(!d.precautions.empty())},
          {"precautions", texts(d.precautions, x.content.labels.precautions, x)},
          {"flash_point", d.flashPoint ? w.mostTemperature(*d.flashPoint) : ""},
          {"mix", d.mix},
          {"skin", d.skin},
          {"eyes", d.eyes},
          {"inhaled", d.inhaled},
          {"swallowed", d.swallowed},
          {"spill", d.spill}};
}

void addLabel(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& sds = x.c.product->sds;
  f.emplace_back("has_sds", Fact::yes(sds.has_value()));
  f.emplace_back("sds", labelFacts(x, sds.value_or(model::SafetyData{}), w));
}

void addGrades(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList grades;
  for (const char* id : {"ears", "eyes", "mask", "gas_mask", "gloves", "boots", "sleeves"}) {
    const std::string grade = gradeOf(*x.c.region, id);
    const bool isGas = id == std::string("gas_mask");
    if (!grade.empty() && (!isGas || applies(x, "vapour")))
      grades.push_back({{"name", w(std::string("wear.") + id)}, {"grade", grade}});
  }
  f.emplace_back("grades", std::move(grades));
}

}  // namespace sheets
