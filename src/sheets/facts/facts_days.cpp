// Facts for the day plan: a page for each day with a coat, the other days shorter.
#include "model/lookup.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>

namespace sheets {
namespace {

std::string coatName(int coat, const Formatter& w) { return w("coats.names." + std::to_string(coat)); }

/// Tasks of a day with their minutes; those counted once for the whole job only where there is nothing else.
std::vector<std::pair<std::string, int>> tasksOf(const Day& day, const model::JobResult& x, bool isWholeJob) {
  std::vector<std::pair<std::string, int>> tasks;
  for (const auto* s : day.shifts) {
    const auto& task = model::taskOf(x.content, s->task);
    if ((task.measure == model::Measure::Job) != isWholeJob) continue;
    auto found =
        std::find_if(tasks.begin(), tasks.end(), [&](const auto& t) { return t.first == task.name; });
    if (found == tasks.end()) found = tasks.insert(tasks.end(), {task.name, 0});
    found->second += s->end.minutes - s->start.minutes;
  }
  return tasks.empty() && !isWholeJob ? tasksOf(day, x, true) : tasks;
}

/// What the day is about: its coats, or the two tasks that take longest, in their order.
std::string titleOf(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> names;
  if (!day.coats.empty() && coatCounts(x).most == 1) return w("day.coating");
  if (!day.coats.empty()) {
    for (const auto& coat : day.coats) {
      const auto name = w("coats.ordinals." + std::to_string(coat.coat));
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return w.counted("day.coats", static_cast<std::int64_t>(names.size()), {{"names", w.joined(names)}});
  }
  auto tasks = tasksOf(day, x, false);
  while (tasks.size() > 2)
    tasks.erase(std::min_element(tasks.begin(), tasks.end(),
                                 [](const auto& a, const auto& b) { return a.second < b.second; }));
  for (const auto& task : tasks) names.push_back(task.first);
  return w.joined(names);
}

/// The air while the crew is on site: the coldest and the warmest hour, and where that is known from.
void addAir(Facts& f, const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto there = onSite(day, x);
  const model::Hour* coldest = nullptr;
  const model::Hour* warmest = nullptr;
  for (const auto& hour : x.plan.hours) {
    const bool isOnSite =
        hour.at.day == day.date && hour.at.minutes + 60 > there.from && hour.at.minutes < there.until;
    if (!isOnSite || hour.source == model::WeatherSource::None) continue;
    if (coldest == nullptr || hour.air.celsius < coldest->air.celsius) coldest = &hour;
    if (warmest == nullptr || hour.air.celsius > warmest->air.celsius) warmest = &hour;
  }
  std::string air, from;
  if (coldest != nullptr) {
    air = degreesText(coldest->air.celsius, warmest->air.celsius, w);
    const auto& service = x.c.job.forecast.service;  // asks to be named
    from = coldest->source == model::WeatherSource::Forecast
               ? w("day.forecast") + (service.empty() ? "" : ", " + service)
               : w("day.usual", {{"month", w.month(day.date)}});
  }
  f.emplace_back("air", air);
  f.emplace_back("air_from", from);
}

FactList tinFacts(const Day& day, const Formatter& w) {
  FactList tins;
  for (const auto& t : day.tins)
    tins.push_back(
        {{"words", w("day.tins", {{"n", std::to_string(t.count)}, {"size", w.tinSize(t.tin.size)}})}});
  return tins;
}

/// Decks on which one board alone outlasts the open time.
FactList tooLongFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  FactList list;
  for (const auto& coat : day.coats) {
    if (coat.edge == nullptr || !coat.edge->isTooLong) continue;
    int longest = 0;
    for (const auto& s : coat.strips) longest = std::max(longest, s.strip->minutes);
    const int people = coat.edge->peopleNeeded;
    list.push_back({{"deck", deckName(x, coat.deck)},
                    {"minutes", w.counted("waits.minutes", longest)},
                    {"open", w.counted("waits.minutes", coat.edge->openMinutes)},
                    {"people", people == 0 ? "" : w.counted("crew.people", people)}});
  }
  return list;
}

/// How long the coats stay open, at their warmest.
std::string openText(const Day& day, const Formatter& w) {
  int least = 0;
  for (const auto& coat : day.coats) {
    if (coat.edge != nullptr && (least == 0 || coat.edge->openMinutes < least))
      least = coat.edge->openMinutes;
  }
  return least == 0 ? "" : w.counted("waits.minutes", least);
}

/// Tables of a few coats each, to write on beside each other.
FactList logFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  if (day.coats.empty()) return {};
  constexpr std::size_t most = 5;
  const std::size_t count = (day.coats.size() + most - 1) / most,
                    each = (day.coats.size() + count - 1) / count;
  FactList tables;
  for (std::size_t from = 0; from < day.coats.size(); from += each) {
    FactList coats;
    for (std::size_t i = from; i < std::min(from + each, day.coats.size()); ++i) {
      const auto& coat = day.coats[i];
      const bool isAlone = std::count_if(day.coats.begin(), day.coats.end(),
                                         [&](const auto& c) { return c.deck == coat.deck; }) == 1;
      coats.push_back({{"name", isAlone ? deckName(x, coat.deck)
                                        : w("day.deck_coat", {{"deck", deckName(x, coat.deck)},
                                                              {"coat", coatName(coat.coat, w)}})},
                       {"planned", span(coat.from, coat.until, w)},
                       {"litres", litresText(coat.litres, w)}});
    }
    tables.push_back({{"coats", std::move(coats)}});
  }
  return tables;
}

std::string deckNames(const std::vector<std::size_t>& decks, const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t mostNamed = 3;
  if (decks.size() == x.c.job.areas.size() && decks.size() > mostNamed) return w("day.all_decks");
  std::vector<std::string> names;
  for (const auto d : decks) names.push_back(deckName(x, d));
  return w.joined(names);
}

bool hasHours(const Day& day, const model::JobResult& x) {
  return std::any_of(x.plan.hours.begin(), x.plan.hours.end(), [&](const auto& h) {
    return h.at.day == day.date && h.source != model::WeatherSource::None;
  });
}

Facts dayFactsOf(const std::vector<Day>& days, std::size_t i, const model::JobResult& x, const Formatter& w) {
  const Day& day = days[i];
  const bool isCoated = !day.coats.empty();
  const auto number = std::to_string(i + 1);
  const base::Values place = {
      {"n", number}, {"m", std::to_string(days.size())}, {"leader", x.c.job.crew.leader}};
  std::int64_t litres = 0;
  for (const auto& coat : day.coats) litres += coat.litres;
  const bool isDrawn =
      std::any_of(day.coats.begin(), day.coats.end(), [](const auto& c) { return c.edge && c.edge->wayOut; });
  const auto pause = breakOf(day, x);
  const auto there = onSite(day, x);
  Facts f{
      {"title", capitalised(w("day.title", {{"day", w.shortDate(day.date)}, {"work", titleOf(day, x, w)}}))},
      {"place", w(x.c.job.crew.leader.empty() ? "day.lede" : "day.lede_led",
                  x.c.job.crew.leader.empty() ? base::Values{{"n", number}, {"m", place.at("m")}} : place)},
      {"on_site", span(there.from, there.until, w)},
      {"has_pause", Fact::yes(pause.has_value())},
      {"pause", pause ? span(pause->from, pause->until, w) : ""},
      {"coated", Fact::yes(isCoated)},
      {"date", w.shortDate(day.date)},
      {"litres", isCoated ? litresText(litres, w) : ""},
      {"hours_figure", isCoated && hasHours(day, x) ? "hours-" + number : ""},
      {"strips_figure", isDrawn ? "strips-" + number : ""},
      {"first_on", deckNames(day.firstOn, x, w)},
      {"is_first", Fact::yes(i == 0)},
      {"has_tins", Fact::yes(!day.tins.empty())},
      {"open", day.open.isZero() ? "" : w.volume(day.open)}};
  addAir(f, day, x, w);
  f.emplace_back("work", workFacts(day, x, w));
  auto strips = stripRowFacts(day, x, w);
  f.emplace_back("has_strips", Fact::yes(!strips.empty()));
  f.emplace_back("strip_columns", stripColumns(w));
  f.emplace_back("strip_rows", std::move(strips));
  f.emplace_back("tins", tinFacts(day, w));
  f.emplace_back("too_long", tooLongFacts(day, x, w));
  f.emplace_back("open_time", openText(day, w));
  auto logs = logFacts(day, x, w);
  f.emplace_back("has_remarks", Fact::yes(logs.size() == 1));  // beside more there is no room
  f.emplace_back("logs", std::move(logs));
  return f;
}

}  // namespace

void addDayPlans(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto days = daysOf(x, w);
  FactList plans;
  for (std::size_t i = 0; i < days.size(); ++i) plans.push_back(dayFactsOf(days, i, x, w));
  f.emplace_back("day_plans", std::move(plans));
  // A difference, so that only the size of the degree counts; 3 K, ISO 8502-4:2017 for steel, our choice for
  // timber.
  f.emplace_back("dew_margin", w.isMetric() ? "3\u00A0°C" : "5.4\u00A0°F");
  f.emplace_back("loss", x.c.job.loss.isZero() ? "" : w.share(x.c.job.loss));
  f.emplace_back("before_we_come", sentences(x.c.job.beforeWeCome));
}

}  // namespace sheets
