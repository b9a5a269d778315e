// Facts for the crew's safety sheet.
#include "sheets/facts/facts_common.h"
#include "sheets/safety/facts_safety.h"
#include "sheets/words/addresses.h"

#include <algorithm>

namespace sheets {
namespace {

/// 'Ferncombe Hospital, 22 min by road, 03 555 0100': the name, a number to ring if there is one, the rest.
Facts placeFacts(const std::string& words, const model::Dialling& dialling) {
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
          {"phone_link", phone.empty() ? "" : phoneAddress(phone, dialling)}};
}

/// 'Mon' above '7': narrow columns.
std::string onTwoLines(std::string day) {
  const std::string noBreak = "\u00A0";
  if (const std::size_t at = day.find(noBreak); at != std::string::npos)
    day.replace(at, noBreak.size(), 1, '\n');
  return day;
}

base::Date mondayOf(base::Date day) { return day - (std::chrono::weekday(day) - std::chrono::Monday); }

/// The crew, the leader first where 'leadsFirst', and a line for whoever else comes.
std::vector<std::string> signers(const model::Crew& crew, bool leadsFirst) {
  std::vector<std::string> names = crew.names;
  names.resize(std::max(names.size(), static_cast<std::size_t>(crew.people)) + 1);
  if (leadsFirst)
    std::stable_partition(names.begin(), names.end(),
                          [&](const auto& name) { return !name.empty() && name == crew.leader; });
  return names;
}

Facts signRow(const std::string& name, const model::Crew& crew, FactList cells) {
  return {{"name", name},
          {"leads", Fact::yes(!name.empty() && name == crew.leader)},
          {"cells", std::move(cells)}};
}

/// Two people a row, who sign once: for a crew too large for a column each day.
FactList signOnce(const model::JobResult& x, const Formatter& w) {
  const auto& crew = x.c.job.crew;
  const auto names = signers(crew, true);
  const std::size_t half = (names.size() + 1) / 2;
  const Fact heading = w("leaf.sign_once");
  FactList days = {{{"day", heading}}, {{"day", ""}}, {{"day", heading}}}, rows;
  for (std::size_t i = 0; i < half; ++i) {
    const std::string other = half + i < names.size() ? names[half + i] : "";
    rows.push_back(signRow(names[i], crew, {{{"cell", ""}}, {{"cell", other}}, {{"cell", ""}}}));
  }
  return {{{"days", std::move(days)},
           {"rows", std::move(rows)},
           {"is_daily", Fact::yes(false)},
           {"is_weekly", Fact::yes(false)},
           {"is_once", Fact::yes(true)}}};
}

/// One table to sign on: a column for each day, or for each week where the days are more than a hand can
/// write in side by side.
FactList signOn(const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t most = 14;
  const bool isWeekly = x.plan.days.size() > most;
  FactList days, rows;
  std::optional<base::Date> week;  // its Monday
  for (const auto& site : x.plan.days) {
    const auto monday = mondayOf(site.date);
    if (isWeekly && week == monday) continue;
    week = monday;
    if (days.size() < most)
      days.push_back(
          {{"day", isWeekly ? onTwoLines(w.dayMonth(site.date)) : onTwoLines(w.shortDay(site.date))}});
  }
  const FactList cells(days.size(), {{"cell", ""}});
  for (const auto& name : signers(x.c.job.crew, false)) rows.push_back(signRow(name, x.c.job.crew, cells));
  return {{{"days", std::move(days)},
           {"rows", std::move(rows)},
           {"is_daily", Fact::yes(!isWeekly)},
           {"is_weekly", Fact::yes(isWeekly)},
           {"is_once", Fact::yes(false)}}};
}

/// When the sheet is gone through again: on the first working day of each week.
Facts reviewFacts(const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t most = 4;
  std::vector<std::string> dates;
  std::optional<base::Date> week;  // its Monday
  bool isWeekly = false;
  for (const auto& site : x.plan.days) {
    const auto monday = mondayOf(site.date);
    if (week == monday) continue;
    week = monday;
    if (dates.size() < most) dates.push_back(w.shortDate(site.date));
    else isWeekly = true;
  }
  return {{"dates", w.joined(dates)}, {"weekly", Fact::yes(isWeekly)}};
}

}  // namespace

Facts leafFacts(const model::JobResult& x, const Formatter& w, LeafRoom room) {
  Facts f;
  addLeaf(f, x, w, room);
  addOrders(f, x, w, room.front);
  const auto areas = static_cast<std::int64_t>(x.c.job.areas.size());
  f.emplace_back("areas_title", room.front < Room::Least || areas == 1
                                    ? namesOfDecks(x)
                                    : capitalised(w.counted("title.decks", areas)));
  f.emplace_back("sign_sheets", room.back < Room::Fewest ? signOn(x, w) : signOnce(x, w));
  return f;
}

Facts crewFacts(const model::JobResult& x, const Formatter& w) {
  const auto& site = x.c.job.site;
  Facts f = commonFacts(x, w);
  for (const auto& [name, words] : {std::pair{"hospital", site.hospital},
                                    {"meeting_point", site.meetingPoint},
                                    {"first_aider", site.firstAider},
                                    {"extinguisher", site.extinguisher},
                                    {"sds_place", site.sdsPlace}}) {
    f.emplace_back(name, placeFacts(words, x.c.region->dialling));
  }
  f.emplace_back("access", site.access);
  f.emplace_back("water", site.water);
  f.emplace_back("power", site.power);
  f.emplace_back("has_site_words",
                 Fact::yes(!site.access.empty() || !site.water.empty() || !site.power.empty()));
  base::Volume tin;
  for (const auto& t : x.resources.product.bought.tins) tin = std::max(tin, t.tin.size);
  for (const auto& t : x.resources.product.opened) tin = std::max(tin, t.size);
  f.emplace_back("tin_size", tin.isZero() ? "" : w.tinSize(tin));
  f.emplace_back("review", reviewFacts(x, w));
  addExposure(f, x, w);
  addLabel(f, x, w);
  addGrades(f, x, w);
  for (auto& fact : leafFacts(x, w, {})) f.push_back(std::move(fact));
  addRisks(f, x, w);
  addDayPlans(f, x, w);
  return f;
}

}  // namespace sheets
