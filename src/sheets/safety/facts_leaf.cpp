// The crew's safety leaf: the panel, where one is, what kills here, what is worn and done at each task, the
// chemicals.
#include "base/joined.h"
#include "base/quantity_words.h"
#include "model/lookup.h"
#include "sheets/safety/day_values.h"
#include "sheets/safety/facts_safety.h"
#include "sheets/safety/leaf.h"

#include <algorithm>
#include <set>

namespace sheets {
namespace {

/// The days with a task for which 'isOne' holds.
template <class IsOne>
std::set<base::Date> daysWith(const model::JobResult& x, IsOne isOne) {
  std::set<base::Date> days;
  for (const auto& shift : x.plan.shifts) {
    if (isOne(model::taskOf(x.content, shift.task))) days.insert(shift.start.day);
  }
  return days;
}

/// 'Tue 16', 'Tue 30 and Wed 31', 'Mon 22 to Thu 25'; nothing where no day is planned.
std::string daysWords(const std::set<base::Date>& days, const Formatter& w) {
  if (days.empty()) return "";
  const std::string first = w.shortDay(*days.begin()), last = w.shortDay(*days.rbegin());
  if (days.size() == 1) return first;
  return days.size() == 2 ? w.joined({first, last}) : w.range(first, last);
}

Facts ragFacts(const model::JobResult& x, const Leaf& leaf, const Formatter& w) {
  const auto& crew = x.c.job.crew;
  const auto& rags = x.exposure.rags;
  Facts words = leaf.rags ? hazardFacts(x, *leaf.rags, w) : Facts{};
  const auto* controls = find(words, "controls");
  const FactList none, &list = controls ? std::get<FactList>(controls->value) : none;
  const auto order = [&](std::size_t i) {
    return i < list.size() ? std::get<std::string>(find(list[i], "text")->value) : "";
  };
  constexpr int packing = 30;  // minutes before the end of the day
  Facts f;
  for (const char* name : {"title", "harm"}) f.emplace_back(name, controls ? *find(words, name) : Fact(""));
  f.emplace_back("signal", leaf.rags && leaf.rags->severity >= 5 ? "danger" : "warning");
  f.emplace_back("rags", order(0));
  f.emplace_back("smoke", list.empty() ? "" : order(list.size() - 1));
  f.emplace_back("pails", capitalised(w.counted(
                              "leaf.pails", rags.pails,
                              {{"size", w(w.isMetric() ? "leaf.pail_litres" : "leaf.pail_gallons")}})));
  f.emplace_back("place", x.c.job.site.pails.empty() ? w("leaf.pails_place") : x.c.job.site.pails);
  f.emplace_back("days", daysWords(daysWith(x, model::laysProduct), w));
  f.emplace_back("start", w.clock(crew.startMinutes));
  f.emplace_back("pause", w.clock(model::breakOf(crew).from));
  f.emplace_back("packing", w.clock(crew.endMinutes - packing));
  f.emplace_back("per_day", std::to_string(rags.perDay));
  return f;
}

/// '44.7000 S' and '169.1300 E', as a dispatcher takes them down.
std::string degrees(std::int64_t micro, const std::string& positive, const std::string& negative) {
  return base::decimal(micro < 0 ? -micro : micro, 4, ".", "") + "\u00A0" + (micro < 0 ? negative : positive);
}

/// An address breaks between its parts, not inside of one.
std::string brokenAtCommas(const std::string& line) {
  std::string out;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool isInside = line[i] == ' ' && i > 0 && line[i - 1] != ',';
    out += isInside ? "\u00A0" : std::string(1, line[i]);
  }
  return out;
}

/// The site's lines; where it is one line of the customer's address, with the lines that follow it there.
/// Where there is no room for the way in, the day plan tells it.
Facts addressFacts(const model::JobResult& x, const Formatter& w, Room room) {
  const auto& site = x.c.job.site;
  const auto& home = x.c.job.customer.address;
  std::vector<std::string> address = site.address.empty() ? home : site.address, house;
  if (site.address.size() == 1) {
    const auto found = std::find(home.begin(), home.end(), site.address.front());
    address.insert(address.end(), found == home.end() ? found : found + 1, home.end());
    if (found != home.end()) house.assign(home.begin(), found);
  }
  std::string more;
  if (room < Room::Fewest) {
    for (const auto& part : house) more += part + "; ";
    more += site.access;
  }
  const bool isKnown = site.latitudeMicro != 0 || site.longitudeMicro != 0;
  return {{"line", brokenAtCommas(base::joined(address))},
          {"more", more},
          {"has_place", Fact::yes(isKnown)},
          {"position", isKnown ? degrees(site.latitudeMicro, w("leaf.north"), w("leaf.south")) + "\n" +
                                     degrees(site.longitudeMicro, w("leaf.east"), w("leaf.west"))
                               : ""}};
}

/// Three orders each; where there is less room, as many as make no card taller than the tallest is with its
/// first ones.
FactList killerFacts(const model::JobResult& x, const Leaf& leaf, const Formatter& w, Room room) {
  constexpr std::size_t most = 3, line = 32;  // letters on a line of a card
  const std::size_t sure = room < Room::Few ? most : room == Room::Few ? 2 : 1;
  FactList list;
  std::size_t tallest = 0;
  for (const auto* hazard : leaf.killers) {
    list.push_back(hazardFacts(x, *hazard, w, room < Room::Fewest ? Decks::ByName : Decks::ByLetter));
    tallest = std::max(tallest, firstControls(list.back(), sure).size());
  }
  const std::size_t letters = room < Room::Least ? (tallest + line - 1) / line * line : tallest;
  for (Facts& f : list) {
    std::size_t orders = sure;
    while (orders < most && firstControls(f, orders + 1).size() <= letters) ++orders;
    f.emplace_back("orders", firstControls(f, orders));
  }
  return list;
}

/// 'P2 mask' and, from 'half mask A2P2', 'A2P2 mask'.
std::string wearHead(const model::JobResult& x, const std::string& id, const Formatter& w) {
  if (id == "mask") return w("leaf.mask", {{"grade", x.exposure.limits.dust.protection}});
  if (id != "gas_mask") return w("leaf.wear." + id);
  const std::string grade = gradeOf(*x.c.region, id);
  return w("leaf.mask", {{"grade", grade.substr(grade.rfind(' ') + 1)}});
}

void addRows(Facts& f, const model::JobResult& x, const Leaf& leaf, const Formatter& w) {
  std::vector<std::string> columns;
  for (const char* id : {"boots", "gloves", "eyes", "ears", "mask", "gas_mask", "sleeves"}) {
    for (const auto& row : leaf.rows) {
      if (std::find(row.wears.begin(), row.wears.end(), id) == row.wears.end()) continue;
      columns.emplace_back(id);
      break;
    }
  }
  FactList heads, rows;
  for (const auto& id : columns) {
    heads.push_back({{"name", wearHead(x, id, w)}});
  }
  for (const auto& row : leaf.rows) {
    // Sanding between coats is sanding.
    const bool sands = std::any_of(row.tasks.begin(), row.tasks.end(),
                                   [](const auto* task) { return !task->rateByGrit.empty(); });
    std::vector<std::string> names;
    for (const auto* task : row.tasks) {
      if (!sands || !task->isForLateCoat) names.push_back(task->name);
    }
    FactList worn, steps;
    for (const auto& id : columns) {
      const bool is = std::find(row.wears.begin(), row.wears.end(), id) != row.wears.end();
      worn.push_back(
          {{"sign", is ? "must-" + (id == "gas_mask" ? "mask" : id) : ""}, {"alt", w("wear." + id)}});
    }
    for (const auto& step : row.steps) {
      const Facts words = hazardFacts(x, *step.hazard, w);
      steps.push_back(std::get<FactList>(find(words, "controls")->value)[step.control]);
    }
    constexpr std::size_t inShort = 2;
    const std::vector<std::string> first(
        names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(names.size(), inShort)));
    const auto isIn = [&](const model::Task& task) {
      return std::find(row.tasks.begin(), row.tasks.end(), &task) != row.tasks.end();
    };
    rows.push_back({{"name", capitalised(w.joined(names))},
                    {"short", capitalised(w.joined(first))},
                    {"days", row.isEveryDay ? w("leaf.all_days") : daysWords(daysWith(x, isIn), w)},
                    {"is_every_day", Fact::yes(row.isEveryDay)},
                    {"worn", std::move(worn)},
                    {"has_steps", Fact::yes(!steps.empty())},
                    {"steps", std::move(steps)}});
  }
  f.emplace_back("wear_heads", std::move(heads));
  f.emplace_back("rows", std::move(rows));
}

/// The product, and the cleaners that the job takes: two at most, as there is room for.
FactList chemicalFacts(const model::JobResult& x, const Formatter& w) {
  FactList list;
  const auto add = [&](const std::string& name, const std::optional<model::SafetyData>& sds) {
    Facts f = labelFacts(x, sds.value_or(model::SafetyData{}), w);
    f.emplace_back("name", capitalised(name));
    f.emplace_back("has_sds", Fact::yes(sds.has_value()));
    list.push_back(std::move(f));
  };
  if (!x.estimate.coats.empty()) {
    const std::string kind =
        w(x.c.product->kind == model::ProductKind::FilmStain ? "product.stain" : "product.oil");
    add(x.c.job.colour.empty() ? w("leaf.product", {{"product", kind}})
                               : w("leaf.product_colour", {{"product", kind}, {"colour", x.c.job.colour}}),
        x.c.product->sds);
  }
  constexpr std::size_t most = 2;
  for (const auto& line : x.resources.consumables) {
    const auto& item = x.content.consumables.at(line.consumable);
    if (item.sds && list.size() < most) add(item.name, item.sds);
  }
  return list;
}

}  // namespace

void addLeaf(Facts& f, const model::JobResult& x, const Formatter& w, LeafRoom room) {
  const Leaf leaf = leafOf(x, room.back);
  const auto& region = *x.c.region;
  const bool hasPoison = !region.poisonLine.empty() && isTold(region.poisonSource);
  bool sands = false;
  for (const auto& line : x.resources.labour) {
    const auto& task = model::taskOf(x.content, line.task);
    sands = sands || task.isForLateCoat || !task.rateByGrit.empty();
  }
  f.emplace_back("has_rags", Fact::yes(leaf.rags != nullptr));
  f.emplace_back("has_dust", Fact::yes(sands));
  f.emplace_back("rags", ragFacts(x, leaf, w));
  f.emplace_back("place", addressFacts(x, w, room.front));
  f.emplace_back("killers", killerFacts(x, leaf, w, room.front));
  f.emplace_back("killers_title",
                 capitalised(w.counted("leaf.killers", static_cast<std::int64_t>(leaf.killers.size()))));
  f.emplace_back("has_killers", Fact::yes(!leaf.killers.empty()));
  addRows(f, x, leaf, w);
  f.emplace_back("chemicals", chemicalFacts(x, w));
  f.emplace_back("poison_line", hasPoison ? region.poisonLine : "");
  f.emplace_back("eye_wash", x.c.job.site.eyeWash);
  f.emplace_back("everyone", x.c.job.crew.people == 1 ? w("leaf.you_agree")
                             : x.c.job.crew.people == 2
                                 ? w("leaf.both_agree")
                                 : w("leaf.all_agree", {{"n", w.spelled(x.c.job.crew.people)}}));
}

}  // namespace sheets
