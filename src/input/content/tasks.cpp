// Timbers, consumables, tasks and tools.
#include "input/content/content_parts.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace input {
namespace {

constexpr const char* uptakeExample =
    "{new: tight, weathered: open, sanded: medium, oiled: tight, film: tight}";
constexpr const char* timberExample =
    "{kwila: {name: kwila, hardwood: true, density: 830 kg/m3, "
    "uptake: {new: tight, weathered: open, sanded: medium, oiled: tight, film: tight}}}";
constexpr const char* taskExample = "[{id: wash, name: wash, per: surface, rate: 30 m2/h, wears: [gloves]}]";

/// A share for each state of the boards.
std::map<model::State, base::Share> readByState(const Field& f, const Limits<base::Share>& limits) {
  std::map<model::State, base::Share> shares;
  if (!f.isGiven()) return shares;
  Record r(f);
  for (const auto& word : stateWords) {
    if (const Field share = r.may(word.name); share.isGiven())
      shares[word.value] = quantity(share, parseShare, limits, base::Share::whole(100));
  }
  r.finish();
  return shares;
}

std::vector<model::ConsumableUse> readUses(const Field& f,
                                           const std::map<std::string, model::Consumable>& consumables) {
  std::vector<model::ConsumableUse> uses;
  if (!f.isGiven()) return uses;
  Record r(f);
  for (const auto& [id, at, amount] : r.all()) {
    if (!consumables.contains(id)) {
      reportUnknown(at, id, "consumable", keysOf(consumables));
      continue;
    }
    uses.push_back(
        {id, quantity(amount, parseNumber, {base::Count{1}, base::Count::whole(1000), "above 0, to 1000"})});
  }
  r.finish();
  return uses;
}

const char* rateOf(model::Measure measure) {
  switch (measure) {
    case model::Measure::Job:
    case model::Measure::Day:
      break;
    case model::Measure::Surface:
    case model::Measure::Wetted:
      return "30 m2/h";
    case model::Measure::CutIn:
    case model::Measure::BoardLength:
      return "30 m/h";
    case model::Measure::Fixings:
      return "140 pieces/h";
  }
  throw std::logic_error("internal error: a task per job or per day has no rate");
}

void readRates(Record& r, model::Task& t) {
  const bool isFixed = t.measure == model::Measure::Job || t.measure == model::Measure::Day;
  const Field hours = r.may("hours"), rate = r.may("rate"), rates = r.may("rates");
  if (isFixed) {
    if (!hours.isGiven())
      r.field().error("'hours' is missing",
                      "a task per job or per day takes a fixed time; write it like hours: 0.5 h");
    t.hoursEach = quantity(hours, parseTime, {{0}, base::Hours::whole(1000), "from 0 h to 1000 h"});
    if (rate.isGiven()) rate.error("a task per job or per day has no rate", "give its 'hours'");
  } else {
    if (!rate.isGiven())
      r.field().error("'rate' is missing", std::string("write it like rate: ") + rateOf(t.measure));
    t.ratePerHour = taskRate(rate, t.measure);
    if (hours.isGiven()) hours.error("only a task per job or per day has 'hours'", "give its 'rate'");
  }
  if (!rates.isGiven()) return;
  if (!t.isPerPass) rates.error("only a task repeated for each pass has rates by grit", "add 'each: pass'");
  Record byGrit(rates);
  for (const auto& [grit, at, value] : byGrit.all()) {
    const Parsed<std::int64_t> n = parseWhole(grit);
    if (n.problem || n.value < 12 || n.value > 600) {
      at.error(inQuotes(grit) + " is not a grit", "write a number from 12 to 600");
    } else {
      t.rateByGrit[static_cast<int>(n.value)] = taskRate(value, t.measure);
    }
  }
  byGrit.finish();
}

model::Task readTask(const Field& f, const std::map<std::string, model::Consumable>& consumables) {
  enum class Each { Pass, Coat, WipedCoat, LateCoat };
  constexpr Word<Each> eachWords[] = {{"pass", Each::Pass},
                                      {"coat", Each::Coat},
                                      {"wiped coat", Each::WipedCoat},
                                      {"late coat", Each::LateCoat}};
  Record r(f);
  model::Task t;
  t.id = text(r.must("id", "rinse"));
  t.name = text(r.must("name", "wash"));
  if (const Field offer = r.may("offer"); offer.isGiven()) t.offer = text(offer);
  t.work = chosen(r.may("work"), workWords, "kind of work");
  t.measure = choice(r.must("per", "surface"), measureWords, "measure", t.measure);
  const auto each = chosen(r.may("each"), eachWords, "repetition");
  t.isPerPass = each == Each::Pass;
  t.isPerCoat = each == Each::Coat || each == Each::WipedCoat;
  t.isWiping = each == Each::WipedCoat;
  t.isForLateCoat = each == Each::LateCoat;
  readRates(r, t);
  t.timeByState =
      readByState(r.may("time"), {base::Share::whole(10), base::Share::whole(1000), "from 10 % to 1000 %"});
  const Field raised = r.may("raised");
  t.raisedByState = readByState(raised, {base::Share{}, base::Share::whole(100), "from 0 % to 100 %"});
  if (raised.isGiven() && t.measure != model::Measure::Fixings)
    raised.error("only a task per fixings has a share of raised ones", "leave it out, or write per: fixings");
  if (const Field check = r.may("check"); check.isGiven()) {
    if (t.measure == model::Measure::Fixings) t.checkedPerHour = taskRate(check, t.measure);
    else check.error("only a task per fixings looks them over", "leave it out, or write per: fixings");
  }
  t.soilsWetCoats = yesNo(r.may("soils_wet_coats"), false);
  t.dryAfter = quantity(r.may("dry"), parseTime, anyTime);
  t.uses = readUses(r.may("uses"), consumables);
  for (const Field& item : r.must("wears", "[gloves]").items()) {
    if (const auto wear = chosen(item, wearWords, "piece of protective equipment"))
      t.wears.emplace_back(*wear);
  }
  r.finish();
  return t;
}

}  // namespace

std::map<std::string, model::Timber> readTimbers(Record& r) {
  std::map<std::string, model::Timber> timbers;
  Record ids(r.must("timbers", timberExample));
  for (const auto& [id, at, f] : ids.all()) {
    Record t(f);
    model::Timber& timber = timbers[id];
    timber.id = id;
    timber.name = text(t.must("name", "kwila"));
    timber.isHardwood = yesNo(t.must("hardwood", "true"), true);
    timber.mayBeTreated = yesNo(t.may("treated"), false);
    timber.densityKgPerM3 =
        wholeWith(t.must("density", "830 kg/m3"), "kg/m3", {50, 1500, "from 50 kg/m3 to 1500 kg/m3"});
    if (const Field uptake = t.must("uptake", uptakeExample); uptake.isGiven()) {
      Record u(uptake);
      for (const auto& word : stateWords)
        timber.uptake[word.value] =
            choice(u.must(word.name, "medium"), uptakeWords, "thirst of boards", model::Uptake::Medium);
      u.finish();
    }
    t.finish();
  }
  ids.finish();
  return timbers;
}

std::map<std::string, model::Consumable> readConsumables(Record& r,
                                                         const std::map<std::string, model::Region>& regions,
                                                         const model::LabelTexts& labels) {
  std::map<std::string, model::Consumable> all;
  Record ids(r.must("consumables", "{cleaner: {name: deck cleaner, unit: L, price: {nz: 14.50}}}"));
  for (const auto& [id, at, f] : ids.all()) {
    Record c(f);
    model::Consumable& consumable = all[id];
    consumable.id = id;
    consumable.name = text(c.must("name", "deck cleaner"));
    consumable.unit = text(c.must("unit", "L"));
    consumable.isLiquid = consumable.unit == "L";
    consumable.boughtWhole = yesNo(c.may("whole"), true);
    if (const Field fixing = c.may("fixings"); fixing.isGiven()) consumable.fixing = text(fixing);
    consumable.soaksOil = yesNo(c.may("oily"), false);
    if (const Field sds = c.may("sds"); sds.isGiven()) consumable.sds = readSafetyData(sds, labels);
    if (const Field price = c.must("price", "{nz: 14.50}"); price.isGiven()) {
      Record prices(price);
      for (const auto& [region, at, amount] : prices.all()) {
        if (const auto known = regions.find(region); known != regions.end()) {
          consumable.price[region] = money(amount, known->second.currencyDigits);
        } else {
          reportUnknown(at, region, "region", keysOf(regions));
        }
      }
      prices.finish();
    }
    c.finish();
  }
  ids.finish();
  return all;
}

std::vector<model::Task> readTasks(Record& r, const std::map<std::string, model::Consumable>& consumables) {
  std::vector<model::Task> tasks;
  for (const Field& f : r.must("tasks", taskExample).items()) {
    model::Task t = readTask(f, consumables);
    for (const model::Task& other : tasks) {
      if (other.id == t.id) f.error("the task '" + t.id + "' is given twice", "give each its own id");
    }
    tasks.push_back(std::move(t));
  }
  return tasks;
}

namespace {

/// The total of the three axes, or the axes one by one: then the root of the sum of their squares, as ISO
/// 5349-1 and Directive 2002/44/EC, annex A.1, add them.
base::Count vibration(const Field& f) {
  const auto one = [](const Field& value) {
    return quantityWith(value, "m/s2", {{0}, base::Count::whole(50), "from 0 m/s2 to 50 m/s2"});
  };
  if (!f.is(Node::Kind::List)) return one(f);
  const auto axes = f.items();
  if (axes.size() != 3)
    f.error("three axes are needed, or their total",
            "write it like [2.1 m/s2, 1.6 m/s2, 1.2 m/s2], or 3.1 m/s2");
  double squares = 0;
  for (const Field& axis : axes) squares += std::pow(static_cast<double>(one(axis).millionths), 2);
  return {std::llround(std::sqrt(squares))};
}

}  // namespace

std::vector<model::Tool> readTools(Record& r, const std::vector<model::Task>& tasks) {
  std::vector<model::Tool> tools;
  std::vector<std::string> known;
  for (const model::Task& t : tasks) known.push_back(t.id);
  Record ids(r.must("tools",
                    "{orbital-sander: {name: orbital sander, tasks: [sand], sound: 84 dB, example: true}}"));
  for (const auto& [id, at, f] : ids.all()) {
    Record t(f);
    model::Tool tool;
    tool.id = id;
    tool.name = text(t.must("name", "orbital sander"));
    for (const Field& item : t.must("tasks", "[sand]").items()) {
      std::string task = text(item);
      if (!task.empty() && std::find(known.begin(), known.end(), task) == known.end())
        reportUnknown(item, task, "task", known);
      tool.tasks.push_back(std::move(task));
    }
    if (const Field sound = t.may("sound"); sound.isGiven())
      tool.soundDb = wholeWith(sound, "dB", {30, 140, "from 30 dB to 140 dB"});
    if (const Field shake = t.may("vibration"); shake.isGiven()) tool.vibration = vibration(shake);
    if (const Field use = t.may("use"); use.isGiven())
      tool.use = quantity(use, parseShare, {base::Share{1}, base::Share::whole(100), "above 0 % to 100 %"});
    tool.isElectric = yesNo(t.may("electric"), false);
    tool.isExample = yesNo(t.must("example", "true"), true);
    tool.isForTreated = yesNo(t.may("on_treated"), true);
    if (const Field weight = t.may("weight"); weight.isGiven())
      tool.kilograms = wholeWith(weight, "kg", {1, 500, "from 1 kg to 500 kg"});
    t.finish();
    tools.push_back(std::move(tool));
  }
  ids.finish();
  return tools;
}

}  // namespace input
