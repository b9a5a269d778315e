// The crew's safety leaf: the panel, where one is, what kills here, what is worn and done at each task, the
// chemicals.
#include "base/quantity_words.h"
#include "model/lookup.h"
#include "sheets/safety/facts_safety.h"
#include "sheets/safety/leaf.h"

#include <algorithm>
#include <cmath>

namespace sheets {
namespace {

std::vector<base::Date> daysOf(const Computed& x, const LeafRow& row) {
  std::vector<base::Date> days;
  for (const auto& shift : x.plan.shifts) {
    const bool isIn = std::any_of(row.tasks.begin(), row.tasks.end(),
                                  [&](const auto* task) { return task->id == shift.task; });
    if (isIn && (days.empty() || days.back() != shift.start.day)) days.push_back(shift.start.day);
  }
  std::sort(days.begin(), days.end());
  days.erase(std::unique(days.begin(), days.end()), days.end());
  return days;
}

/// 'Tue 16', 'Tue 30 and Wed 31', 'Mon 22 to Thu 25'; nothing where no day is planned.
std::string daysWords(const std::vector<base::Date>& days, const Formatter& w) {
  if (days.empty()) return "";
  if (days.size() == 1) return w.shortDay(days.front());
  if (days.size() == 2) return w.joined({w.shortDay(days.front()), w.shortDay(days.back())});
  return w.range(w.shortDay(days.front()), w.shortDay(days.back()));
}

std::vector<base::Date> coatingDays(const Computed& x) {
  std::vector<base::Date> days;
  for (const auto& shift : x.plan.shifts) {
    if (model::laysProduct(model::taskOf(x.content, shift.task)) &&
        std::find(days.begin(), days.end(), shift.start.day) == days.end())
      days.push_back(shift.start.day);
  }
  std::sort(days.begin(), days.end());
  return days;
}

Facts ragFacts(const Computed& x, const Leaf& leaf, const Formatter& w) {
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
  f.emplace_back("smoke", order(2));
  f.emplace_back("pails", capitalised(w.counted(
                              "leaf.pails", rags.pails,
                              {{"size", w(w.isMetric() ? "leaf.pail_litres" : "leaf.pail_gallons")}})));
  f.emplace_back("place", x.c.job.site.pails.empty() ? w("leaf.pails_place") : x.c.job.site.pails);
  f.emplace_back("days", daysWords(coatingDays(x), w));
  f.emplace_back("start", w.clock(crew.startMinutes));
  f.emplace_back("pause", w.clock(model::breakOf(crew).from));
  f.emplace_back("packing", w.clock(crew.endMinutes - packing));
  f.emplace_back("per_day", std::to_string(rags.perDay));
  return f;
}

/// '44.7000 S' and '169.1300 E', as a dispatcher takes them down.
std::string degrees(std::int64_t micro, const std::string& positive, const std::string& negative) {
  const base::Count n{micro < 0 ? -micro : micro};
  return base::decimal(n.millionths, 4, ".", "") + "\u00A0" + (micro < 0 ? negative : positive);
}

/// The site's lines; where it is one line of the customer's address, with the lines that follow it there.
Facts addressFacts(const Computed& x, const Formatter& w) {
  const auto& site = x.c.job.site;
  const auto& home = x.c.job.customer.address;
  std::vector<std::string> address = site.address.empty() ? home : site.address, house;
  if (site.address.size() == 1) {
    const auto found = std::find(home.begin(), home.end(), site.address.front());
    address.insert(address.end(), found == home.end() ? found : found + 1, home.end());
    if (found != home.end()) house.assign(home.begin(), found);
  }
  std::string line, more;
  for (const auto& part : address) line += (line.empty() ? "" : ", ") + part;
  for (const auto& part : house) more += part + "; ";
  const bool isKnown = site.latitudeMicro != 0 || site.longitudeMicro != 0;
  return {{"line", line},
          {"more", more + site.access},
          {"has_place", Fact::yes(isKnown)},
          {"position", isKnown ? degrees(site.latitudeMicro, w("leaf.north"), w("leaf.south")) + "\n" +
                                     degrees(site.longitudeMicro, w("leaf.east"), w("leaf.west"))
                               : ""}};
}

FactList killerFacts(const Computed& x, const Leaf& leaf, const Formatter& w) {
  constexpr std::size_t mostOrders = 3;
  FactList list;
  for (const auto* hazard : leaf.killers) {
    Facts f = hazardFacts(x, *hazard, w);
    const auto& controls = std::get<FactList>(find(f, "controls")->value);
    std::string orders;
    for (std::size_t i = 0; i < std::min(mostOrders, controls.size()); ++i)
      orders += (i > 0 ? " " : "") + std::get<std::string>(find(controls[i], "text")->value);
    f.emplace_back("orders", orders);
    list.push_back(std::move(f));
  }
  return list;
}

void addRows(Facts& f, const Computed& x, const Leaf& leaf, const Formatter& w) {
  std::vector<std::string> columns;
  for (const char* id : {"boots", "gloves", "eyes", "ears", "mask", "sleeves"}) {
    for (const auto& row : leaf.rows) {
      if (std::find(row.wears.begin(), row.wears.end(), id) == row.wears.end()) continue;
      columns.emplace_back(id);
      break;
    }
  }
  FactList heads, rows;
  for (const auto& id : columns) {
    const auto& grade = x.exposure.limits.dust.protection;
    heads.push_back({{"name", id == "mask" ? w("leaf.mask", {{"grade", grade}}) : w("leaf.wear." + id)}});
  }
  for (const auto& row : leaf.rows) {
    std::vector<std::string> names;
    for (const auto* task : row.tasks) names.push_back(task->name);
    FactList worn, steps;
    for (const auto& id : columns) {
      const bool is = std::find(row.wears.begin(), row.wears.end(), id) != row.wears.end();
      worn.push_back({{"sign", is ? "must-" + id : ""}, {"alt", w("wear." + id)}});
    }
    for (const auto& step : row.steps) {
      const Facts words = hazardFacts(x, *step.hazard, w);
      steps.push_back(std::get<FactList>(find(words, "controls")->value)[step.control]);
    }
    constexpr std::size_t inShort = 2;
    const std::vector<std::string> first(
        names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(names.size(), inShort)));
    rows.push_back({{"name", capitalised(w.joined(names))},
                    {"short", capitalised(w.joined(first))},
                    {"days", row.isEveryDay ? w("leaf.all_days") : daysWords(daysOf(x, row), w)},
                    {"is_every_day", Fact::yes(row.isEveryDay)},
                    {"worn", std::move(worn)},
                    {"has_steps", Fact::yes(!steps.empty())},
                    {"steps", std::move(steps)}});
  }
  f.emplace_back("wear_heads", std::move(heads));
  f.emplace_back("rows", std::move(rows));
}

/// The product, and the cleaners that the job takes: two at most, as there is room for.
FactList chemicalFacts(const Computed& x, const Formatter& w) {
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
  for (const auto& line : x.estimate.consumables) {
    const auto& item = x.content.consumables.at(line.consumable);
    if (item.sds && list.size() < most) add(item.name, item.sds);
  }
  return list;
}

}  // namespace

void addLeaf(Facts& f, const Computed& x, const Formatter& w) {
  const Leaf leaf = leafOf(x);
  const auto& region = *x.c.region;
  const bool hasPoison = !region.poisonLine.empty() && !model::isFromMemory(region.poisonSource);
  bool sands = false;
  for (const auto& line : x.estimate.labour)
    sands = sands || !model::taskOf(x.content, line.task).rateByGrit.empty();
  f.emplace_back("has_rags", Fact::yes(leaf.rags != nullptr));
  f.emplace_back("has_dust", Fact::yes(sands));
  f.emplace_back("rags", ragFacts(x, leaf, w));
  f.emplace_back("place", addressFacts(x, w));
  f.emplace_back("killers", killerFacts(x, leaf, w));
  f.emplace_back("killers_title",
                 capitalised(w.counted("leaf.killers", static_cast<std::int64_t>(leaf.killers.size()))));
  f.emplace_back("has_killers", Fact::yes(!leaf.killers.empty()));
  addRows(f, x, leaf, w);
  f.emplace_back("chemicals", chemicalFacts(x, w));
  f.emplace_back("poison_line", hasPoison ? region.poisonLine : "");
  f.emplace_back("eye_wash", x.c.job.site.eyeWash);
  f.emplace_back("everyone", x.c.job.crew.people > 1
                                 ? w("leaf.all_agree", {{"n", w.spelled(x.c.job.crew.people)}})
                                 : w("leaf.you_agree"));
}

}  // namespace sheets
