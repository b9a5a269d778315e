// Facts for the crew's safety sheet.
#include "sheets/addresses.h"
#include "sheets/facts_common.h"
#include "sheets/facts_decks.h"

#include <algorithm>
#include <map>

namespace sheets {
namespace {

std::string replaced(std::string text, const std::string& name, const std::string& words) {
  for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + words.size()))
    text.replace(at, name.size(), words);
  return text;
}

/// The tasks of this job that the crew has to be told about, in their order.
std::vector<const model::Task*> tasksOf(const Computed& x) {
  std::vector<const model::Task*> tasks;
  for (const auto& task : x.content.tasks) {
    const bool isDone = std::any_of(x.estimate.labour.begin(), x.estimate.labour.end(),
                                    [&](const auto& line) { return line.task == task.id; });
    if (isDone && !task.hazards.empty()) tasks.push_back(&task);
  }
  return tasks;
}

FactList taskFacts(const Computed& x) {
  FactList list;
  for (const auto* task : tasksOf(x)) {
    list.push_back({{"name", capitalised(task->name)},
                    {"hazards", task->hazards},
                    {"controls", replaced(task->controls, "{cutout}", x.c.region->powerCutout)}});
  }
  return list;
}

/// Tasks that need the same equipment stand together.
FactList wearFacts(const Computed& x, const Words& w) {
  std::vector<std::pair<std::vector<std::string>, std::vector<std::string>>>
      groups;  // what is worn, and for what
  for (const auto* task : tasksOf(x)) {
    auto worn = task->wears;
    std::sort(worn.begin(), worn.end());
    const auto found =
        std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.first == worn; });
    (found == groups.end() ? groups.insert(groups.end(), {worn, {}}) : found)->second.push_back(task->name);
  }
  FactList list;
  for (const auto& [worn, names] : groups) {
    FactList signs;
    for (const auto& id : worn) signs.push_back({{"sign", "must-" + id}, {"alt", w("wear." + id)}});
    list.push_back({{"names", capitalised(w.joined(names))}, {"wears", std::move(signs)}});
  }
  return list;
}

/// 'Ferncombe Hospital, 22 min by road' as a name and a note; dots to write on for what the job does not say.
/// 'Ferncombe Hospital, 22 min by road, 03 555 0100': the name, a number to ring if there is one, the rest.
Facts placeFacts(const std::string& words) {
  std::string name, phone, note;
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t comma = std::min(words.find(", ", at), words.size());
    const std::string part = words.substr(at, comma - at);
    if (at == 0) name = part;
    else if (phone.empty() && isPhone(part)) phone = part;
    else note += (note.empty() ? "" : ", ") + part;
    at = comma + 2;
  }
  return {{"name", name.empty() ? "……………" : name},
          {"note", note},
          {"phone", phone},
          {"phone_link", phone.empty() ? "" : phoneAddress(phone)}};
}

/// Sign-on tables of at most six days each; where one is enough, with a line for whoever else comes.
FactList signOn(const Computed& x, const Words& w) {
  constexpr std::size_t daysOnPage = 6;
  const auto people = static_cast<std::size_t>(x.c.job.crew.people);
  const std::size_t more = x.plan.days.size() > daysOnPage ? 0 : 1;
  std::vector<std::string> names = x.c.job.crew.names;
  names.resize(std::max(names.size(), people) + more);
  FactList sheets;
  for (std::size_t from = 0; from < x.plan.days.size(); from += daysOnPage) {
    FactList days, rows;
    for (std::size_t i = from; i < std::min(from + daysOnPage, x.plan.days.size()); ++i)
      days.push_back({{"day", w.shortDay(x.plan.days[i])}});
    for (const auto& name : names) rows.push_back({{"name", name}});
    sheets.push_back({{"days", std::move(days)}, {"rows", std::move(rows)}});
  }
  return sheets;
}

std::string decksWhere(const Computed& x, const Words& w, bool (*is)(const Computed&, const model::Deck&)) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    if (is(x, x.c.job.areas[i])) names.push_back(deckLetter(i) + " " + x.c.job.areas[i].name);
  }
  return w.joined(names);
}

base::Volume heaviestTin(const Computed& x) {
  base::Volume most;
  for (const auto& t : x.estimate.product.bought.tins) most = std::max(most, t.tin.size);
  for (const auto& t : x.estimate.product.opened) most = std::max(most, t.size);
  return most;
}

void addSafetyData(Facts& f, const Computed& x, const Words& w) {
  const auto& sds = x.c.product->sds;
  f.emplace_back("has_sds", Fact::yes(sds.has_value()));
  const model::SafetyData d = sds.value_or(model::SafetyData{});
  std::string signal;
  if (!d.signalWord.empty())
    signal = w(d.signalWord == "Danger" ? "product.signal_danger" : "product.signal_warning");
  f.emplace_back("sds", Facts{{"signal", signal},
                              {"statements", w.joined(d.statements)},
                              {"has_pictograms", Fact::yes(!d.pictograms.empty())},
                              {"flash_point", d.flashPoint ? w.temperature(*d.flashPoint) : ""},
                              {"skin", d.skin},
                              {"eyes", d.eyes},
                              {"inhaled", d.inhaled},
                              {"swallowed", d.swallowed},
                              {"spill", d.spill}});
}

}  // namespace

Facts crewFacts(const Computed& x) {
  const Words w(*x.c.region, x.language);
  const auto& site = x.c.job.site;
  Facts f = commonFacts(x, w);
  for (const auto& [name, words] : {std::pair{"hospital", site.hospital},
                                    {"meeting_point", site.meetingPoint},
                                    {"first_aider", site.firstAider},
                                    {"extinguisher", site.extinguisher},
                                    {"sds_place", site.sdsPlace}}) {
    f.emplace_back(name, placeFacts(words));
  }
  const auto isFilm = [](const Computed&, const model::Deck& d) { return d.state == model::State::Film; };
  const auto isTreated = [](const Computed& c, const model::Deck& d) { return timberOf(c, d).mayBeTreated; };
  const auto isHardwood = [](const Computed& c, const model::Deck& d) { return timberOf(c, d).isHardwood; };
  const auto film = decksWhere(x, w, isFilm), treated = decksWhere(x, w, isTreated);
  f.emplace_back("hardwood", Fact::yes(!decksWhere(x, w, isHardwood).empty()));
  f.emplace_back("old_film", Fact::yes(!film.empty()));
  f.emplace_back("film_decks", film);
  f.emplace_back("treated", Fact::yes(!treated.empty()));
  f.emplace_back("treated_decks", treated);
  const auto isCovered = [](const Computed&, const model::Deck& d) { return d.isCovered; };
  f.emplace_back("covered_decks", decksWhere(x, w, isCovered));
  f.emplace_back("access", site.access);
  f.emplace_back("water", site.water);
  f.emplace_back("power", site.power);
  f.emplace_back("year_built", site.yearBuilt ? std::to_string(*site.yearBuilt) : "");
  f.emplace_back("has_site_words",
                 Fact::yes(!site.access.empty() || !site.water.empty() || !site.power.empty()));
  // Old oil in the boards is not the job's doing; a drying oil that is brought is.
  f.emplace_back("fire", Fact::yes(x.c.product->isDryingOil && !x.estimate.coats.empty()));
  std::optional<base::Length> edge;
  for (const auto& d : x.c.job.areas) {
    if (d.edgeHeight && (!edge || *d.edgeHeight > *edge)) edge = d.edgeHeight;
  }
  f.emplace_back("edge_height", edge ? w.length(*edge) : "");
  const auto tin = heaviestTin(x);
  f.emplace_back("has_tin", Fact::yes(!tin.isZero()));
  f.emplace_back("tin_size", tin.isZero() ? "" : w.tinSize(tin));
  f.emplace_back("tin_mass", tin.isZero() ? "" : w.mass(tin));
  f.emplace_back("safety_title", titleOf(x));
  f.emplace_back("tasks", taskFacts(x));
  f.emplace_back("wear_groups", wearFacts(x, w));
  f.emplace_back("sign_sheets", signOn(x, w));
  addSafetyData(f, x, w);
  return f;
}

}  // namespace sheets
