#include "sheets/facts/facts_records.h"

#include "base/joined.h"
#include "model/lookup.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>
#include <map>

namespace sheets {
namespace {

constexpr auto dash = "–";

std::string coatWords(const Formatter& w, int coat) { return w("coats.ordinals." + std::to_string(coat)); }

std::string clocks(const Formatter& w, base::LocalTime from, base::LocalTime to) {
  return w.clock(from.minutes) + dash + (from.day == to.day ? "" : w.dayMonth(to.day) + ", ") +
         w.clock(to.minutes);
}

/// 'Landing and Steps', letters where they are many, or 'all decks' where none that gets this coat is left
/// out.
std::string deckNames(const model::JobResult& x, const Formatter& w, const std::vector<std::size_t>& decks,
                      int coat) {
  std::size_t all = 0;
  for (const auto& need : x.estimate.coats) all += need.coat == coat ? 1 : 0;
  if (decks.size() == all && all > 1) return w("records.all_decks");
  std::vector<std::string> names;
  for (const auto deck : decks)
    names.push_back(decks.size() > 3 ? deckLetter(deck) : x.c.job.areas[deck].name);
  return w.joined(names);
}

bool isRecorded(const model::JobResult& x, std::size_t deck, int coat) {
  return std::any_of(x.laid.coats.begin(), x.laid.coats.end(),
                     [&](const auto& a) { return a.deck == deck && a.coat == coat; });
}

struct Row {
  base::LocalTime start;
  Facts facts;
};

std::string volumeNumber(base::Volume v, const Formatter& w) {
  return w.volumeNumber(base::divide(v.millionths, w.volumeStep().millionths, base::Round::HalfUp));
}

/// What each record tells of its decks, in the order the records were written.
std::map<std::size_t, std::vector<const model::DoneCoat*>> entriesOf(const model::JobResult& x) {
  std::map<std::size_t, std::vector<const model::DoneCoat*>> entries;
  for (const auto& coat : x.laid.coats) {
    for (const auto record : coat.records) {
      const auto& done = x.c.job.done[record];
      entries[done.entry].push_back(&done);
    }
  }
  return entries;
}

std::string decksOf(const model::JobResult& x, const Formatter& w,
                    const std::vector<const model::DoneCoat*>& entry) {
  std::vector<std::size_t> decks;
  for (const auto* done : entry) decks.push_back(done->deck);
  return deckNames(x, w, decks, entry.front()->coat);
}

Row recordRow(const model::JobResult& x, const Formatter& w,
              const std::vector<const model::DoneCoat*>& entry) {
  const auto& done = *entry.front();
  return {done.start,
          {{"date", w.dayMonthYear(done.start.day)},
           {"coat", coatWords(w, done.coat)},
           {"decks", decksOf(x, w, entry)},
           {"litres", done.used ? volumeNumber(*done.used, w) : dash},
           {"batches", w.joined(done.batches)},
           {"recorded", Fact::yes(true)}}};
}

/// The coats that are planned still, by the events of the plan.
void addPlanned(std::vector<Row>& rows, const model::JobResult& x, const Formatter& w) {
  const auto litres = printedLitres(x, w);
  for (const auto& event : x.plan.events) {
    if (event.what != model::Moment::CoatStart) continue;
    std::vector<std::size_t> decks;
    std::int64_t steps = 0;
    for (const auto deck : event.decks) {
      if (isRecorded(x, deck, event.coat)) continue;
      decks.push_back(deck);
      steps += litres[deck][static_cast<std::size_t>(event.coat) - 1];
    }
    if (decks.empty()) continue;
    rows.push_back({event.at,
                    {{"date", w.dayMonthYear(event.at.day)},
                     {"coat", coatWords(w, event.coat)},
                     {"decks", deckNames(x, w, decks, event.coat)},
                     {"litres", w.volumeNumber(steps)},
                     {"batches", ""},
                     {"recorded", Fact::yes(false)}}});
  }
}

std::string measuredWords(const model::DoneCoat& d, const Formatter& w) {
  std::vector<std::string> words;
  if (d.air) words.push_back(w("records.air", {{"value", w.temperature(*d.air)}}));
  if (d.humidity) words.push_back(w("records.humidity", {{"value", w.share(*d.humidity)}}));
  if (d.surface) words.push_back(w("records.boards", {{"value", w.temperature(*d.surface)}}));
  if (d.moisture) words.push_back(w("records.wood", {{"value", w.share(*d.moisture)}}));
  return base::joined(words);
}

/// One decimal, or whole square feet a gallon: more is not known of a coat.
std::string rateNumber(const base::Spread& s, const Formatter& w) {
  constexpr std::int64_t gallon = 3'785'411'784, squareFoot = 92'903'040'000;  // nL and um2, exactly
  const base::Wide area = s.area.millionths, volume = s.volume.millionths;
  return w.isMetric()
             ? w.number({base::divide(area * 1000, volume, base::Round::HalfUp)}, 1)
             : w.number({base::divide(area * gallon, volume * squareFoot / 1'000'000, base::Round::HalfUp)},
                        0);
}

/// '+7 %': used against planned.
std::string differenceWords(base::Volume used, base::Volume planned, const Formatter& w) {
  const auto percent = base::mulDiv(used.millionths - planned.millionths, 100,
                                    std::max<std::int64_t>(planned.millionths, 1), base::Round::HalfUp);
  return (percent > 0 ? "+" : percent < 0 ? "\u2212" : "±") + w.share(base::Share::whole(std::abs(percent)));
}

/// 'log': what was measured and remarked, record by record.
void addLog(Facts& facts, const model::JobResult& x, const Formatter& w) {
  FactList log;
  for (const auto& [number, entry] : entriesOf(x)) {
    const auto& done = *entry.front();
    log.push_back({{"when", w.shortDate(done.start.day) + ", " + clocks(w, done.start, done.end)},
                   {"coat", coatWords(w, done.coat)},
                   {"decks", decksOf(x, w, entry)},
                   {"batches", w.joined(done.batches)},
                   {"measured", measuredWords(done, w)},
                   {"remark", done.remark}});
  }
  facts.emplace_back("log", std::move(log));
}

/// The first and last day on which the crew works, of the week from Monday on; nothing in a week off.
std::optional<std::pair<base::Date, base::Date>> workWeek(base::Date day, const model::JobResult& x) {
  const auto& crew = x.c.job.crew;
  const auto isOff = [&](base::Date d) {
    const int year = static_cast<int>(std::chrono::year_month_day{d}.year());
    const auto holidays = model::holidaysOff(x.c.job, *x.c.region, year);
    return std::find(crew.off.begin(), crew.off.end(), d) != crew.off.end() ||
           std::any_of(holidays.begin(), holidays.end(), [&](const auto& h) { return h.date == d; });
  };
  std::optional<std::pair<base::Date, base::Date>> week;
  const base::Date monday = day - (std::chrono::weekday{day} - std::chrono::Monday);
  for (int i = 0; i < 7; ++i) {
    const base::Date d = monday + std::chrono::days{i};
    if (!crew.works[i] || isOff(d)) continue;
    week = std::pair(week ? week->first : d, d);
  }
  return week;
}

/// Two weeks to choose from, the one of this day and the next; where the crew is away those after.
FactList weeksFrom(base::Date day, const model::JobResult& x, const Formatter& w) {
  constexpr int mostAhead = 12;
  FactList weeks;
  for (int ahead = 0; weeks.size() < 2 && ahead < mostAhead; ++ahead) {
    if (const auto week = workWeek(day + std::chrono::days{7 * ahead}, x))
      weeks.push_back({{"days", w.range(w.shortDate(week->first), w.shortDate(week->second))}});
  }
  return weeks;
}

/// '$2,120', of an amount that has no coins.
std::string wholeMoney(base::Money money, const Formatter& w) {
  std::int64_t one = 1;
  for (int digit = 0; digit < w.region().currencyDigits; ++digit) one *= 10;
  const auto& numbers = w.region().numbers;
  return numbers.currencyBefore + w.number(base::Count::whole(money.minor / one), 0) + numbers.currencyAfter;
}

}  // namespace

std::vector<std::string> batchesOf(const model::JobResult& x) {
  std::vector<std::string> batches = x.c.job.batches;
  for (const auto& done : x.c.job.done) {
    for (const auto& batch : done.batches) {
      base::addOnce(batches, batch);
    }
  }
  return batches;
}

bool isAllLaid(const model::JobResult& x) { return x.laid.coats.size() == x.estimate.coats.size(); }

void addLaid(Facts& facts, const model::JobResult& x, const Formatter& w) {
  std::vector<Row> rows;
  for (const auto& [number, entry] : entriesOf(x)) rows.push_back(recordRow(x, w, entry));
  if (!rows.empty()) addPlanned(rows, x, w);
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.start < b.start; });
  FactList laid;
  for (auto& row : rows) laid.push_back(std::move(row.facts));
  facts.emplace_back("all_laid", Fact::yes(isAllLaid(x)));
  facts.emplace_back("has_records", Fact::yes(!laid.empty()));
  facts.emplace_back("laid", std::move(laid));
  base::Volume used;
  bool isKnown = !x.laid.coats.empty() && isAllLaid(x);
  for (const auto& coat : x.laid.coats) {
    isKnown = isKnown && coat.litres.has_value();
    used += coat.litres.value_or(base::Volume{});
  }
  facts.emplace_back("used_together", isKnown ? volumeNumber(used, w) : "");
}

void addVisit(Facts& facts, const model::JobResult& x, const Formatter& w) {
  const auto* event = model::eventOf(x.plan, model::Moment::Maintenance);
  std::optional<base::Date> due, from;
  if (event != nullptr) due = from = event->at.day;
  if (x.offer) {
    due = x.offer->due;
    from = x.offer->from;
  }
  facts.emplace_back("visit",
                     Facts{{"done", Fact::yes(model::progressOf(x.c.job) == model::Progress::Done)},
                           {"due", due ? w.shortDateYear(*due) : ""},
                           {"weeks", from ? weeksFrom(*from, x, w) : FactList{}},
                           {"guide_price", x.offer ? wholeMoney(x.offer->guidePrice, w) : std::string()}});
}

void addLastTime(Facts& facts, const model::JobResult& x, const Formatter& w) {
  FactList decks;
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    const auto& deck = x.c.job.areas[i];
    const bool isCoated = std::any_of(x.estimate.coats.begin(), x.estimate.coats.end(),
                                      [&](const auto& need) { return need.deck == i; });
    if (!isCoated) continue;
    std::vector<std::string> batches, notes;
    const model::DoneCoat* last = nullptr;  // records come in order of coat and time
    for (const auto& done : x.c.job.done) {
      if (done.deck != i) continue;
      last = &done;
      for (const auto& batch : done.batches) base::addOnce(batches, batch);
      if (!done.remark.empty()) base::addOnce(notes, done.remark);
    }
    for (const auto* note : {&deck.officeNote, &deck.crewNote}) {
      if (!note->empty()) base::addOnce(notes, *note);
    }
    std::string rate, noted;
    for (const auto& note : notes) noted += (noted.empty() ? "" : "\n") + note;
    for (const auto& coat : x.laid.coats) {
      if (coat.deck == i && coat.rate) rate = w.roundSpread(*coat.rate);
    }
    decks.push_back({{"letter", deckLetter(i)},
                     {"name", deck.name},
                     {"coat", last ? w.dayMonthYear(last->start.day) : ""},
                     {"batches", batches.empty() ? base::joined(x.c.job.batches) : base::joined(batches)},
                     {"measured", last ? measuredWords(*last, w) : ""},
                     {"rate", rate},
                     {"notes", noted}});
  }
  facts.emplace_back("last_time", std::move(decks));
}

void addActual(Facts& facts, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  const auto litres = printedLitres(x, w);  // as quote, day plan and order list have them
  base::Volume used, planned;
  std::int64_t plannedSteps = 0;
  std::size_t lastDeck = x.c.job.areas.size();
  for (const auto& coat : x.laid.coats) {
    const auto steps = litres[coat.deck].at(static_cast<std::size_t>(coat.coat) - 1);
    const std::string deck = deckLetter(coat.deck) + " " + x.c.job.areas[coat.deck].name;
    rows.push_back({{"group", coat.deck == lastDeck ? "" : deck},
                    {"coat", coatWords(w, coat.coat)},
                    {"when", w.shortDate(x.c.job.done[coat.records.front()].start.day)},
                    {"planned", w.volumeNumber(steps)},
                    {"used", coat.litres ? (coat.isShared ? "~" : "") + volumeNumber(*coat.litres, w) : dash},
                    {"difference", coat.litres ? differenceWords(*coat.litres, coat.plannedLitres, w) : ""},
                    {"planned_rate", rateNumber(coat.plannedRate, w)},
                    {"rate", coat.rate ? rateNumber(*coat.rate, w) : dash}});
    lastDeck = coat.deck;
    if (coat.litres) {
      used += *coat.litres;
      planned += coat.plannedLitres;
      plannedSteps += steps;
    }
  }
  facts.emplace_back("has_actual", Fact::yes(!rows.empty()));
  facts.emplace_back("actual", std::move(rows));
  facts.emplace_back("actual_all", Facts{{"planned", w.volumeNumber(plannedSteps)},
                                         {"used", volumeNumber(used, w)},
                                         {"difference", differenceWords(used, planned, w)}});
  facts.emplace_back("rate_unit", w(w.isMetric() ? "units.m2_per_litre" : "units.ft2_per_gallon"));
  facts.emplace_back("any_shared", Fact::yes(std::any_of(x.laid.coats.begin(), x.laid.coats.end(),
                                                         [](const auto& coat) { return coat.isShared; })));
  addLog(facts, x, w);
  const auto& byBooks = x.laid.leftByTheBooks;
  const auto& counted = x.laid.leftAsCounted;
  facts.emplace_back("left", Facts{{"by_the_books", byBooks ? w.volume(*byBooks) : ""},
                                   {"as_counted", counted ? w.volume(*counted) : ""}});
}

}  // namespace sheets
