// Facts for the day plan: a page for each day with a coat, the other days shorter.
#include "model/lookup.h"
#include "sheets/day_parts.h"
#include "sheets/facts_common.h"
#include "sheets/facts_decks.h"

#include <algorithm>

namespace sheets {
namespace {

std::string deckName(const Computed& x, std::size_t deck) {
  return deckLetter(deck) + "\u00A0" + x.c.job.areas[deck].name;
}

std::string coatName(int coat, const Words& w) { return w("coats.names." + std::to_string(coat)); }

std::string span(int from, int until, const Words& w) {
  return w("day.span", {{"from", w.clock(from)}, {"to", w.clock(until)}});
}

std::string litresText(std::int64_t steps, const Words& w) {
  return w.volumeNumber(steps) + "\u00A0" + w.volumeUnit();
}

/// Tasks of a day with their minutes; those counted once for the whole job only where there is nothing else.
std::vector<std::pair<std::string, int>> tasksOf(const Day& day, const Computed& x, bool isWholeJob) {
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
std::string titleOf(const Day& day, const Computed& x, const Words& w) {
  std::vector<std::string> names;
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
void addAir(Facts& f, const Day& day, const Computed& x, const Words& w) {
  const model::Hour* coldest = nullptr;
  const model::Hour* warmest = nullptr;
  for (const auto& hour : x.plan.hours) {
    const bool isOnSite = hour.at.day == day.date && hour.at.minutes + 60 > x.c.job.crew.startMinutes &&
                          hour.at.minutes < x.c.job.crew.endMinutes;
    if (!isOnSite || hour.source == model::WeatherSource::None) continue;
    if (coldest == nullptr || hour.air.celsius < coldest->air.celsius) coldest = &hour;
    if (warmest == nullptr || hour.air.celsius > warmest->air.celsius) warmest = &hour;
  }
  std::string air, from;
  if (coldest != nullptr) {
    const auto whole = [&](double celsius) {
      return w.temperature(
          base::Temperature::whole(static_cast<std::int64_t>(celsius + (celsius < 0 ? -0.5 : 0.5))));
    };
    const auto low = whole(coldest->air.celsius), high = whole(warmest->air.celsius);
    air = low == high ? low
                      : w("day.temperatures", {{"from", low.substr(0, low.find("\u00A0"))}, {"to", high}});
    from = coldest->source == model::WeatherSource::Forecast ? w("day.forecast")
                                                             : w("day.usual", {{"month", w.month(day.date)}});
  }
  f.emplace_back("air", air);
  f.emplace_back("air_from", from);
}

/// '4 strips of 13 boards, the last of 1'
std::string stripsText(const DayCoat& coat, const Computed& x, const Words& w) {
  if (coat.edge == nullptr) return {};
  if (coat.strips.empty()) return w("strips.none");
  const bool isStairs = std::holds_alternative<model::Stairs>(x.c.job.areas[coat.deck].shape);
  const std::string kind = isStairs ? "strips.treads." : "strips.boards.";
  const auto& strips = coat.strips;
  std::vector<std::int64_t> boards;
  for (const auto& s : strips) boards.push_back(s.strip->boards);
  if (isStairs && boards.size() == 1) return w(coat.edge->startsAtEnd ? "strips.top_down" : "strips.foot_up");
  if (boards.size() == 1) return w.counted("strips.boards.single", boards[0]);
  const auto count = std::to_string(boards.size());
  const bool isEven = std::all_of(boards.begin(), boards.end() - 1, [&](auto n) { return n == boards[0]; });
  const auto [least, most] = std::minmax_element(boards.begin(), boards.end());
  if (!isEven)
    return w(kind + "range",
             {{"count", count}, {"range", w.range(std::to_string(*least), std::to_string(*most))}});
  const auto equal = w.counted(kind + "equal", boards[0], {{"count", count}});
  return boards.back() == boards[0]
             ? equal
             : w("strips.last", {{"strips", equal}, {"last", std::to_string(boards.back())}});
}

/// Shifts that make one line of the day: all of a coat on a deck; the passes of one task on a deck; short
/// pieces of one task on several decks.
struct Line {
  std::vector<const model::Shift*> shifts;
  const model::Task* task = nullptr;  // of the first
};

bool belongs(const model::Shift& next, const Line& line, const Computed& x) {
  constexpr int shortPiece = 30;  // minutes
  const auto& last = *line.shifts.back();
  const auto& task = model::taskOf(x.content, next.task);
  if (next.deck && next.deck == last.deck)
    return (task.isPerCoat && line.task->isPerCoat && next.pass == last.pass) ||
           (task.isPerPass && next.task == last.task);
  const auto isShort = [](const model::Shift& s) { return s.end.minutes - s.start.minutes <= shortPiece; };
  return next.deck && last.deck && next.task == last.task && next.pass == last.pass && !task.isPerCoat &&
         isShort(next) && isShort(last);
}

std::vector<Line> linesOf(const Day& day, const Computed& x) {
  std::vector<Line> lines;
  for (const auto* s : day.shifts) {
    if (!lines.empty() && belongs(*s, lines.back(), x)) lines.back().shifts.push_back(s);
    else lines.push_back({{s}, &model::taskOf(x.content, s->task)});
  }
  return lines;
}

/// 'sand, 40 and 60 grit' 'blow clean, cut in 07:55, oil 08:25'
std::string whatText(const Line& line, const Computed& x, const Words& w) {
  if (line.task->isPerCoat) {
    std::string s;
    for (const auto* shift : line.shifts) {
      const auto& name = model::taskOf(x.content, shift->task).name;
      s += s.empty() ? name : ", " + w("day.step", {{"task", name}, {"time", w.clock(shift->start.minutes)}});
    }
    return s;
  }
  if (!line.task->isPerPass) return line.task->name;
  std::vector<std::string> grits;
  for (const auto* shift : line.shifts) {
    const auto grit = std::to_string(shift->pass);
    if (std::find(grits.begin(), grits.end(), grit) == grits.end()) grits.push_back(grit);
  }
  return w("day.grit", {{"task", line.task->name}, {"grit", w.joined(grits)}});
}

std::string whereText(const Line& line, const Computed& x, const Words& w) {
  std::vector<std::string> names;
  for (const auto* s : line.shifts) {
    if (!s->deck) continue;
    const auto name = deckName(x, *s->deck);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return w.joined(names);
}

FactList workFacts(const Day& day, const Computed& x, const Words& w) {
  FactList rows;
  const auto row = [&](const std::string& time, const std::string& what, const std::string& where) {
    rows.push_back({{"time", time},
                    {"what", capitalised(what)},
                    {"where", where},
                    {"strips", ""},
                    {"area", ""},
                    {"rate", ""},
                    {"litres", ""}});
  };
  std::vector<std::string> morning, evening;
  bool isMorning = true;
  for (const auto& task : x.content.tasks) {
    if (task.measure != model::Measure::Day) isMorning = false;
    else (isMorning ? morning : evening).push_back(task.name);
  }
  const auto& crew = x.c.job.crew;
  const bool isCoated = !day.coats.empty();  // such a page has no room for what is done every day
  if (!morning.empty() && !isCoated) row(w.clock(crew.startMinutes), w.joined(morning), "");
  for (const auto& line : linesOf(day, x)) {
    const auto& first = *line.shifts.front();
    row(span(first.start.minutes, line.shifts.back()->end.minutes, w), whatText(line, x, w),
        whereText(line, x, w));
    for (const auto& coat : day.coats) {
      if (!line.task->isPerCoat || coat.deck != first.deck || coat.coat != first.pass) continue;
      rows.back()[3].second = stripsText(coat, x, w);
      rows.back()[4].second = w.area(coat.area);
      rows.back()[5].second = w.spread(coat.need->rate);
      rows.back()[6].second = litresText(coat.litres, w);
    }
  }
  if (!evening.empty() && !isCoated)
    row(w("day.until", {{"time", w.clock(crew.endMinutes)}}), w.joined(evening), "");
  return rows;
}

FactList tinFacts(const Day& day, const Words& w) {
  FactList tins;
  for (const auto& t : day.tins)
    tins.push_back(
        {{"words", w("day.tins", {{"n", std::to_string(t.count)}, {"size", w.tinSize(t.tin.size)}})}});
  return tins;
}

/// Decks on which one board alone outlasts the open time.
FactList tooLongFacts(const Day& day, const Computed& x, const Words& w) {
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
std::string openText(const Day& day, const Words& w) {
  int least = 0;
  for (const auto& coat : day.coats) {
    if (coat.edge != nullptr && (least == 0 || coat.edge->openMinutes < least))
      least = coat.edge->openMinutes;
  }
  return least == 0 ? "" : w.counted("waits.minutes", least);
}

/// Tables of at most four coats, to write on beside each other.
FactList logFacts(const Day& day, const Computed& x, const Words& w) {
  constexpr std::size_t most = 4;
  FactList tables;
  for (std::size_t from = 0; from < day.coats.size(); from += most) {
    FactList coats;
    for (std::size_t i = from; i < std::min(from + most, day.coats.size()); ++i) {
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

std::string deckNames(const std::vector<std::size_t>& decks, const Computed& x, const Words& w) {
  constexpr std::size_t mostNamed = 3;
  if (decks.size() == x.c.job.areas.size() && decks.size() > mostNamed) return w("day.all_decks");
  std::vector<std::string> names;
  for (const auto d : decks) names.push_back(deckName(x, d));
  return w.joined(names);
}

bool hasHours(const Day& day, const Computed& x) {
  return std::any_of(x.plan.hours.begin(), x.plan.hours.end(), [&](const auto& h) {
    return h.at.day == day.date && h.source != model::WeatherSource::None;
  });
}

Facts dayFactsOf(const std::vector<Day>& days, std::size_t i, const Computed& x, const Words& w) {
  const Day& day = days[i];
  const bool isCoated = !day.coats.empty();
  const auto number = std::to_string(i + 1);
  const model::Values place = {
      {"n", number}, {"m", std::to_string(days.size())}, {"leader", x.c.job.crew.leader}};
  std::int64_t litres = 0;
  for (const auto& coat : day.coats) litres += coat.litres;
  const bool isDrawn =
      std::any_of(day.coats.begin(), day.coats.end(), [](const auto& c) { return c.edge && c.edge->wayOut; });
  const auto pause = model::breakOf(x.c.job.crew);
  Facts f{
      {"title", w("day.title", {{"day", w.shortDate(day.date)}, {"work", titleOf(day, x, w)}})},
      {"place", w(x.c.job.crew.leader.empty() ? "day.lede" : "day.lede_led",
                  x.c.job.crew.leader.empty() ? model::Values{{"n", number}, {"m", place.at("m")}} : place)},
      {"breaks", Fact::yes(i > 0 && (isCoated || !days[i - 1].coats.empty()))},
      {"on_site", span(x.c.job.crew.startMinutes, x.c.job.crew.endMinutes, w)},
      {"has_pause", Fact::yes(pause.until > pause.from)},
      {"pause", span(pause.from, pause.until, w)},
      {"coated", Fact::yes(isCoated)},
      {"litres", isCoated ? litresText(litres, w) : ""},
      {"hours_figure", isCoated && hasHours(day, x) ? "hours-" + number : ""},
      {"strips_figure", isDrawn ? "strips-" + number : ""},
      {"first_on", deckNames(day.firstOn, x, w)},
      {"is_first", Fact::yes(i == 0)},
      {"has_tins", Fact::yes(!day.tins.empty())},
      {"open", day.open.isZero() ? "" : w.volume(day.open)}};
  addAir(f, day, x, w);
  f.emplace_back("work", workFacts(day, x, w));
  f.emplace_back("tins", tinFacts(day, w));
  f.emplace_back("too_long", tooLongFacts(day, x, w));
  f.emplace_back("open_time", openText(day, w));
  f.emplace_back("logs", logFacts(day, x, w));
  return f;
}

}  // namespace

Facts dayFacts(const Computed& x) {
  const Words w(*x.c.region, x.language);
  Facts f = commonFacts(x, w);
  const auto days = daysOf(x, w);
  FactList plans;
  for (std::size_t i = 0; i < days.size(); ++i) plans.push_back(dayFactsOf(days, i, x, w));
  f.emplace_back("day_plans", std::move(plans));
  // A difference, so that only the size of the degree counts; 3 K, ISO 8502-4:2017 for steel, our choice for
  // timber.
  f.emplace_back("dew_margin", w.isMetric() ? "3\u00A0°C" : "5.4\u00A0°F");
  f.emplace_back("before_we_come", sentences(x.c.job.beforeWeCome));
  f.emplace_back("water", x.c.job.site.water);
  f.emplace_back("power", x.c.job.site.power);
  return f;
}

}  // namespace sheets
