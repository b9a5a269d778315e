// Hazards, the words of their conditions, and the standard texts of labels.
#include "input/content/content_parts.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <array>

namespace input {
namespace {

constexpr const char* hazardExample =
    "[{id: oily-rags, title: Oily rags set themselves alight, when: drying_oil, severity: 5, exposure: 5, "
    "who: the crew, "
    "harm: A fire at night can kill., controls: [{organise: Put each rag under water.}], "
    "left: rags can heat up later, source: common practice}]";

using model::Clause;
using model::Condition;

constexpr Word<Condition> conditionWords[] = {{"drying_oil", Condition::DryingOil},
                                              {"water_borne", Condition::WaterBorne},
                                              {"coating", Condition::Coating},
                                              {"flammable", Condition::Flammable},
                                              {"solvent", Condition::Solvent},
                                              {"no_safety_data", Condition::NoSafetyData},
                                              {"hardwood", Condition::Hardwood},
                                              {"film_coating", Condition::FilmCoating},
                                              {"oiled_before", Condition::OiledBefore},
                                              {"built_before", Condition::BuiltBefore},
                                              {"may_be_treated", Condition::MayBeTreated},
                                              {"treated", Condition::Treated},
                                              {"near_water", Condition::NearWater},
                                              {"edge_above", Condition::EdgeAbove},
                                              {"electric_tools", Condition::ElectricTools},
                                              {"washing", Condition::Washing},
                                              {"sanding", Condition::Sanding},
                                              {"task", Condition::Task},
                                              {"tool", Condition::Tool},
                                              {"covered", Condition::Covered},
                                              {"enclosed", Condition::Enclosed},
                                              {"in_sun", Condition::InSun},
                                              {"hot_day", Condition::HotDay},
                                              {"alone", Condition::Alone},
                                              {"public", Condition::Public},
                                              {"children", Condition::Children},
                                              {"noise_above", Condition::NoiseAbove},
                                              {"vibration_above", Condition::VibrationAbove},
                                              {"lifting_above", Condition::LiftingAbove},
                                              {"tool_above", Condition::ToolAbove},
                                              {"boards_above", Condition::BoardsAbove},
                                              {"site", Condition::Site},
                                              {"long_day", Condition::LongDay}};

constexpr Word<model::ControlLevel> levelWords[] = {{"eliminate", model::ControlLevel::Eliminate},
                                                    {"substitute", model::ControlLevel::Substitute},
                                                    {"engineer", model::ControlLevel::Engineer},
                                                    {"organise", model::ControlLevel::Organise},
                                                    {"protect", model::ControlLevel::Protect}};

/// What a text may hold in braces; sheets put the words of the job there.
constexpr std::array names = {"cutout",
                              "mask",
                              "gas_mask",
                              "emergency",
                              "fall_rule",
                              "ask_safety",
                              "ask_waste",
                              "ask_lead",
                              "ask_treated",
                              "edge",
                              "decks",
                              "leader",
                              "tin",
                              "sander",
                              "vacuum",
                              "pause",
                              "generator_distance"};

/// A text in which every name in braces is known.
std::string textWithNames(const Field& f) {
  std::string s = text(f);
  for (std::size_t at = s.find('{'); at != std::string::npos; at = s.find('{', at + 1)) {
    const std::size_t end = s.find('}', at);
    const std::string name = s.substr(at + 1, (end == std::string::npos ? s.size() : end) - at - 1);
    if (end == std::string::npos || std::find(names.begin(), names.end(), name) == names.end())
      reportUnknown(f, name, "word in braces", {names.begin(), names.end()});
  }
  return s;
}

/// What a condition can name.
struct Known {
  std::vector<std::string> tasks, tools;
};

std::string knownId(const Field& f, const char* what, const std::vector<std::string>& known) {
  std::string id = text(f);
  if (!id.empty() && std::find(known.begin(), known.end(), id) == known.end())
    reportUnknown(f, id, what, known);
  return id;
}

/// The value of a condition that takes one.
void readValue(const Field& f, Clause& c, const Known& known) {
  constexpr Word<model::Threshold> noiseWords[] = {{"lower", model::Threshold::Lower},
                                                   {"upper", model::Threshold::Upper}};
  constexpr Word<model::Threshold> vibrationWords[] = {{"action", model::Threshold::Action},
                                                       {"limit", model::Threshold::Limit}};
  if (c.condition == Condition::BuiltBefore) {
    if (f.word() != "lead") c.number = whole(f, {1500, 2199, "'lead', or a year from 1500 to 2199"}, 0);
  } else if (c.condition == Condition::EdgeAbove) {
    c.height = quantity(f, parseLength, anyLength);
  } else if (c.condition == Condition::LiftingAbove || c.condition == Condition::ToolAbove) {
    c.number = wholeWith(f, "kg", {1, 1000, "from 1 kg to 1000 kg"});
  } else if (c.condition == Condition::NoiseAbove) {
    c.threshold = choice(f, noiseWords, "level of noise", model::Threshold::Lower);
  } else if (c.condition == Condition::VibrationAbove) {
    c.threshold = choice(f, vibrationWords, "level of vibration", model::Threshold::Action);
  } else if (c.condition == Condition::BoardsAbove) {
    c.number = wholeWith(f, "C", {30, 100, "from 30 C to 100 C"});
  } else if (c.condition == Condition::Site) {
    c.id = text(f);
  } else if (c.condition == Condition::Task) {
    c.id = knownId(f, "task", known.tasks);
  } else if (c.condition == Condition::Tool) {
    c.id = knownId(f, "tool", known.tools);
  } else {
    f.error("this condition takes no value", "write it like '- oil', without a colon");
  }
}

bool takesValue(Condition c) {
  return c == Condition::BuiltBefore || c == Condition::EdgeAbove || c == Condition::LiftingAbove ||
         c == Condition::NoiseAbove || c == Condition::VibrationAbove || c == Condition::Task ||
         c == Condition::Tool || c == Condition::ToolAbove || c == Condition::BoardsAbove ||
         c == Condition::Site;
}

/// 'drying_oil' or '{edge_above: 1 m}'.
std::optional<Clause> readClause(const Field& f, const Known& known) {
  if (!f.is(Node::Kind::Map)) {
    const auto condition = chosen(f, conditionWords, "condition");
    if (!condition) return {};
    if (takesValue(*condition)) {
      f.error(inQuotes(text(f)) + " needs a value", "write it like {edge_above: 1 m}");
      return {};
    }
    Clause c;
    c.condition = *condition;
    return c;
  }
  Record r(f);
  const std::vector<Keyed> keys = r.all();
  if (keys.size() != 1) {
    f.error("one condition is needed here", "write several as a list");
    return {};
  }
  std::vector<std::string> conditions;
  for (const auto& word : conditionWords) {
    conditions.emplace_back(word.name);
    if (keys[0].key != word.name) continue;
    Clause c;
    c.condition = word.value;
    readValue(keys[0].value, c, known);
    return c;
  }
  reportUnknown(keys[0].at, keys[0].key, "condition", conditions);
  return {};
}

std::vector<Clause> readClauses(const Field& f, const Known& known) {
  std::vector<Clause> clauses;
  if (f.isEmptyList()) f.error("the list is empty", "name a condition or leave the key out");
  for (const Field& item : f.items()) {
    if (const auto c = readClause(item, known)) clauses.push_back(*c);
  }
  return clauses;
}

model::When readWhen(const Field& f, const Known& known) {
  model::When when;
  if (!f.isGiven()) return when;
  const bool isGroup = f.is(Node::Kind::Map) &&
                       std::any_of(f.node()->entries.begin(), f.node()->entries.end(), [](const auto& e) {
                         return e.key == "all" || e.key == "any" || e.key == "none";
                       });
  if (!isGroup) {
    if (const auto c = readClause(f, known)) when.all.push_back(*c);
    return when;
  }
  Record r(f);
  for (const auto& [key, into] : {std::pair{"all", &when.all}, {"any", &when.any}, {"none", &when.none}}) {
    if (const Field list = r.may(key); list.isGiven()) *into = readClauses(list, known);
  }
  r.finish();
  if (!r.has("all") && !r.has("any")) f.error("'none' alone would hold for every job", "add 'all' or 'any'");
  return when;
}

std::vector<model::Control> readControls(const Field& f) {
  std::vector<model::Control> controls;
  if (f.isEmptyList()) f.error("at least one control is needed", "write what the crew does against it");
  std::vector<std::string> known;
  for (const auto& word : levelWords) known.emplace_back(word.name);
  for (const Field& item : f.items()) {
    Record r(item);
    for (const auto& [key, at, value] : r.all()) {
      const auto level = std::find(known.begin(), known.end(), key);
      if (level == known.end()) reportUnknown(at, key, "step of the hierarchy of controls", known);
      else controls.push_back({levelWords[level - known.begin()].value, textWithNames(value)});
    }
    r.finish();
  }
  std::stable_sort(controls.begin(), controls.end(),
                   [](const auto& a, const auto& b) { return a.level < b.level; });
  return controls;
}

model::Hazard readHazard(const Field& f, const Known& known) {
  Record r(f);
  model::Hazard h;
  h.id = text(r.must("id", "wet-steps"));
  h.title = textWithNames(r.must("title", "Oily rags set themselves alight"));
  h.when = readWhen(r.must("when", "drying_oil"), known);
  constexpr Limits<int> toFive = {1, 5, "from 1 to 5"};
  h.severity = whole(r.must("severity", "5"), toFive, 1);
  h.exposure = whole(r.must("exposure", "3"), toFive, 1);
  if (const Field sign = r.may("sign"); sign.isGiven()) h.sign = text(sign);
  h.isPanel = yesNo(r.may("panel"), false);
  for (const Field& task : r.may("tasks").items()) h.tasks.push_back(knownId(task, "task", known.tasks));
  for (const Field& item : r.may("wears").items()) {
    if (const auto wear = chosen(item, wearWords, "piece of protective equipment"))
      h.wears.emplace_back(*wear);
  }
  h.who = textWithNames(r.must("who", "the crew"));
  h.harm = textWithNames(r.must("harm", "A fire at night can kill."));
  h.controls =
      readControls(r.must("controls", "[{organise: Put each rag under water in the metal container.}]"));
  h.left = textWithNames(r.must("left", "rags taken out of the water can heat up"));
  h.source = textWithNames(r.must("source", "common practice"));
  r.finish();
  return h;
}

std::map<std::string, std::string> textsByCode(const Field& f) {
  std::map<std::string, std::string> all;
  if (!f.isGiven()) return all;
  Record r(f);
  for (const auto& [code, at, value] : r.all()) all[code] = text(value);
  r.finish();
  return all;
}

}  // namespace

std::vector<model::Hazard> readHazards(Record& r, const std::vector<model::Task>& tasks,
                                       const std::vector<model::Tool>& tools) {
  Known known;
  for (const model::Task& t : tasks) known.tasks.push_back(t.id);
  for (const model::Tool& t : tools) known.tools.push_back(t.id);
  std::vector<model::Hazard> hazards;
  for (const Field& f : r.must("hazards", hazardExample).items()) {
    model::Hazard h = readHazard(f, known);
    for (const model::Hazard& other : hazards) {
      if (other.id == h.id) f.error("the hazard '" + h.id + "' is given twice", "give each its own id");
    }
    hazards.push_back(std::move(h));
  }
  return hazards;
}

std::map<Condition, model::ConditionWords> readConditionWords(Record& r) {
  std::map<Condition, model::ConditionWords> all;
  const Field f =
      r.must("conditions",
             "{drying_oil: {holds: the product is a drying oil, fails: the product is no drying oil}}");
  if (!f.isGiven()) return all;
  Record conditions(f);
  for (const auto& word : conditionWords) {
    const Field told = conditions.must(word.name, "{holds: there is some, fails: there is none}");
    if (!told.isGiven()) continue;
    Record t(told);
    model::ConditionWords& words = all[word.value];
    words.id = word.name;
    words.holds = text(t.must("holds", "the product is a drying oil"));
    words.fails = text(t.must("fails", "the product is no drying oil"));
    if (const Field unknown = t.may("unknown"); unknown.isGiven()) words.unknown = text(unknown);
    t.finish();
  }
  conditions.finish();
  return all;
}

model::LabelTexts readLabels(Record& r) {
  model::LabelTexts l;
  l.statements = textsByCode(r.must("statements", "{H226: Flammable liquid and vapour}"));
  l.precautions = textsByCode(r.must("precautions", "{P210: Keep away from flames.}"));
  l.pictograms = textsByCode(r.must("pictograms", "{GHS02: flame}"));
  l.source = text(r.must("source", "UN GHS, annex 3"));
  return l;
}

}  // namespace input
