// Facts for the day plan: a page for each day with a coat, and one for all the others.
#include "base/joined.h"
#include "model/lookup.h"
#include "sheets/facts/day_answers.h"
#include "sheets/facts/day_people.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>

namespace sheets {
namespace {

/// What the day is about: its coats, or the two tasks that take longest, in their order.
std::string titleOf(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> names;
  if (!day.coats.empty() && coatCounts(x).most == 1) return w("day.coating");
  if (!day.coats.empty()) {
    for (const auto& coat : day.coats) {
      const auto name = w("coats.ordinals." + std::to_string(coat.coat));
      base::addOnce(names, name);
    }
    return w.counted("day.coats", static_cast<std::int64_t>(names.size()), {{"names", w.joined(names)}});
  }
  auto tasks = tasksOf(day, x);
  while (tasks.size() > 2)
    tasks.erase(std::min_element(tasks.begin(), tasks.end(),
                                 [](const auto& a, const auto& b) { return a.second < b.second; }));
  for (const auto& task : tasks) names.push_back(task.first);
  return w.joined(names);
}

/// The air while the crew is on site: the coldest and the warmest hour, and where that is known from.
void addAir(Facts& f, const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto weather = weatherOn(day, x);
  const bool isKnown = weather.source != model::WeatherSource::None;
  const auto& service = x.c.job.forecast.service;  // asks to be named
  f.emplace_back("air",
                 isKnown ? degreesText(weather.coldest->air.celsius, weather.warmest->air.celsius, w) : "");
  f.emplace_back("air_from", !isKnown ? ""
                             : weather.source == model::WeatherSource::Forecast
                                 ? w("day.forecast") + (service.empty() ? "" : ", " + service)
                                 : w("day.usual", {{"month", w.month(day.date)}}));
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

/// A row for each coat to write on.
FactList logFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  for (const auto& text : coatTexts(day, x, w))
    rows.push_back({{"name", text.name},
                    {"planned", span(text.coat->from, text.coat->until, w)},
                    {"litres", litresText(text.coat->litres, w)}});
  return rows;
}

std::string deckNames(const std::vector<std::size_t>& decks, const model::JobResult& x, const Formatter& w) {
  constexpr std::size_t mostNamed = 3;
  if (decks.size() == x.c.job.areas.size() && decks.size() > mostNamed) return w("day.all_decks");
  std::vector<std::string> names;
  for (const auto d : decks) names.push_back(deckName(x, d));
  return w.joined(names);
}

/// What the job tells the crew of these areas, each once on the first of its days.
FactList noteFacts(const std::vector<std::size_t>& decks, const model::JobResult& x) {
  FactList notes;
  for (const auto deck : decks) {
    const auto& note = x.c.job.areas[deck].crewNote;
    if (!note.empty()) notes.push_back({{"deck", deckName(x, deck)}, {"words", note}});
  }
  return notes;
}

std::vector<std::size_t> coatedDecks(const Day& day) {
  std::vector<std::size_t> decks;
  for (const auto& coat : day.coats) base::addOnce(decks, coat.deck);
  return decks;
}

/// What the customer was promised of the areas, for those who keep it.
FactList promiseFacts(const model::JobResult& x) {
  FactList promises;
  for (std::size_t deck = 0; deck < x.c.job.areas.size(); ++deck) {
    const auto& note = x.c.job.areas[deck].note;
    if (!note.empty()) promises.push_back({{"deck", deckName(x, deck)}, {"words", note}});
  }
  for (const auto& line : x.c.job.included) promises.push_back({{"deck", ""}, {"words", line}});
  return promises;
}

FactList workFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  for (const auto& line : workLines(day, x, w))
    rows.push_back({{"time", span(line.from, line.until, w)},
                    {"what", line.what},
                    {"where", line.where},
                    {"who", line.who}});
  return rows;
}

FactList figuresOf(const Day& day, const std::string& number) {
  FactList figures;
  for (std::size_t i = 0; i < pagesOfCoats(day).size(); ++i)
    figures.push_back({{"figure", "strips-" + number + (i == 0 ? "" : "-" + std::to_string(i + 1))}});
  return figures;
}

/// 'day 3 of 6, led by Mara Quill', and who comes where not everyone does.
std::string placeText(const Day& day, std::size_t i, std::size_t days, const model::JobResult& x,
                      const Formatter& w) {
  const auto& crew = x.c.job.crew;
  base::Values values{{"n", std::to_string(i + 1)}, {"m", std::to_string(days)}};
  if (!crew.leader.empty()) values.emplace("leader", crew.leader);
  const std::string place = w(crew.leader.empty() ? "day.lede" : "day.lede_led", values);
  if (day.site->people == crew.people) return place;
  std::vector<std::size_t> who;
  for (int person = 0; person < day.site->people; ++person) who.push_back(static_cast<std::size_t>(person));
  return w("day.lede_few", {{"place", place}, {"who", whoText(who, x, w)}});
}

Facts dayFactsOf(const std::vector<Day>& days, std::size_t i, const model::JobResult& x, const Formatter& w) {
  const Day& day = days[i];
  const bool isCoated = !day.coats.empty();
  const auto number = std::to_string(i + 1);
  std::int64_t litres = 0;
  for (const auto& coat : day.coats) litres += coat.litres;
  const auto pause = breakOf(day, x);
  const auto there = onSite(day);
  Facts f{
      {"title", capitalised(w("day.title", {{"day", w.shortDate(day.date)}, {"work", titleOf(day, x, w)}}))},
      {"place", placeText(day, i, days.size(), x, w)},
      {"on_site", span(there.from, there.until, w)},
      {"has_pause", Fact::yes(pause.has_value())},
      {"pause", pause ? span(pause->from, pause->until, w) : ""},
      {"coated", Fact::yes(isCoated)},
      {"date", w.shortDate(day.date)},
      {"litres", isCoated ? litresText(litres, w) : ""},
      {"hours_figure", isCoated ? "hours-" + number : ""},
      {"strips_figures", figuresOf(day, number)},
      {"first_on", deckNames(day.firstOn, x, w)},
      {"is_first", Fact::yes(i == 0)},
      {"has_tins", Fact::yes(!day.tins.empty())},
      {"open", day.open.isZero() ? "" : w.volume(day.open)}};
  addAir(f, day, x, w);
  addAnswers(f, day, x, w);
  f.emplace_back("work", isCoated ? FactList{} : workFacts(day, x, w));
  f.emplace_back("tins", tinFacts(day, w));
  f.emplace_back("too_long", tooLongFacts(day, x, w));
  f.emplace_back("crew_notes", noteFacts(isCoated ? coatedDecks(day) : day.firstOn, x));
  f.emplace_back("logs", logFacts(day, x, w));
  return f;
}

}  // namespace

void addDayPlans(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto days = daysOf(x, w);
  FactList coats, others;
  for (std::size_t i = 0; i < days.size(); ++i)
    (days[i].coats.empty() ? others : coats).push_back(dayFactsOf(days, i, x, w));
  f.emplace_back("has_other_days", Fact::yes(!others.empty()));
  f.emplace_back("other_days", std::move(others));
  f.emplace_back("coat_days", std::move(coats));
  f.emplace_back("loss", x.c.job.loss.isZero() ? "" : w.share(x.c.job.loss));
  f.emplace_back("before_we_come", sentences(x.c.job.beforeWeCome));
  f.emplace_back("at_water", Fact::yes(x.c.job.site.isNearWater));
  auto promises = promiseFacts(x);
  f.emplace_back("has_promises", Fact::yes(!promises.empty()));
  f.emplace_back("promises", std::move(promises));
}

}  // namespace sheets
