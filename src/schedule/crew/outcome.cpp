#include "schedule/crew/outcome.h"

#include "base/joined.h"
#include "model/crew_time.h"
#include "model/lookup.h"
#include "schedule/crew/dates.h"
#include "schedule/weather/hours.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <map>
#include <set>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;
using What = model::Duty::What;

/// Decks that get the same coat on one day are told together.
void addCoatEvents(model::Plan& plan, const Work& work, const Schedule& schedule) {
  struct Told {
    LocalTime start, end;
    std::vector<std::size_t> decks;
  };
  std::map<std::pair<base::Date, int>, Told> coats;
  for (const auto& coat : schedule.coats) {
    auto& told = coats.try_emplace({coat.start.day, coat.coat}, Told{coat.start, coat.end, {}}).first->second;
    told.start = std::min(told.start, coat.start);
    told.end = std::max(told.end, coat.end);
    const auto deck = work.units[coat.unit].deck;
    base::addOnce(told.decks, deck);
  }
  for (auto& [key, told] : coats) {
    std::sort(told.decks.begin(), told.decks.end());
    plan.events.push_back({model::Moment::CoatStart, key.second, told.start, 0, told.decks});
    plan.events.push_back({model::Moment::CoatEnd, key.second, told.end, 0, told.decks});
  }
}

model::WeatherSource sourceOf(const std::vector<model::Hour>& hours) {
  auto source = model::WeatherSource::None;
  for (const auto& hour : hours) {
    if (hour.source == model::WeatherSource::Forecast) return hour.source;
    if (hour.source != model::WeatherSource::None) source = hour.source;
  }
  return source;
}

/// As the messages say it.
const char* words(model::WeatherLimit gate) {
  switch (gate) {
    case model::WeatherLimit::AirCold:
      return "the air is too cold";
    case model::WeatherLimit::AirHot:
      return "the air is too hot";
    case model::WeatherLimit::BoardsHot:
      return "the boards are too hot";
    case model::WeatherLimit::Dew:
      return "the boards are less than 3 K above the dew point";
    case model::WeatherLimit::DewBefore:
      return "dew falls before it is touch dry";
    case model::WeatherLimit::Damp:
      return "the air is too damp";
    case model::WeatherLimit::Rain:
      return "it rains";
    case model::WeatherLimit::Wet:
      return "the boards are wet from rain";
    case model::WeatherLimit::RainBefore:
      return "rain falls before it is rain safe";
    case model::WeatherLimit::Wind:
      return "there is too much wind";
    case model::WeatherLimit::Dark:
      return "it is dark";
    case model::WeatherLimit::Moisture:
      return "the air keeps the wood too moist";
    case model::WeatherLimit::Unknown:
      return "the weather is not known";
  }
  return "";
}

/// Setting up and packing down: tasks of every day, before all others and after them.
void addDayEnds(model::Plan& plan, const DayPlan& day, const model::Content& content) {
  const auto all = everyone(day.people);
  const auto evening = std::find_if(content.tasks.begin(), content.tasks.end(),
                                    [](const auto& t) { return t.measure != model::Measure::Day; });
  int now = day.arrive;
  for (auto task = content.tasks.begin(); task != content.tasks.end(); ++task) {
    if (task->measure != model::Measure::Day) continue;
    const auto minutes = static_cast<int>(model::crewMinutes(task->hoursEach, day.people));
    if (minutes == 0) continue;
    if (task > evening && !day.packing.empty()) {
      for (const auto& slot : day.packing) {
        plan.duties.push_back(
            {What::Task, {task->id, {}, 0, {day.date, slot.start}, {day.date, slot.end}, 1, slot.who, 0}, 0});
      }
      return;
    }
    if (task > evening && now < day.home) now = std::max(now, day.home - minutes);
    plan.duties.push_back(
        {What::Task, {task->id, {}, 0, {day.date, now}, {day.date, now + minutes}, day.people, all, 0}, 0});
    now += minutes;
  }
}

/// A task of a coat goes on from strip to strip: it is told as one from the first to the last.
void addShift(std::vector<model::Shift>& shifts, std::size_t firstOfDay, const model::Shift& shift,
              bool isOfCoat) {
  for (std::size_t i = firstOfDay; isOfCoat && i < shifts.size(); ++i) {
    auto& s = shifts[i];
    if (s.task != shift.task || s.deck != shift.deck || s.pass != shift.pass || s.part != shift.part)
      continue;
    s.start = std::min(s.start, shift.start);
    s.end = std::max(s.end, shift.end);
    for (const auto person : shift.who) {
      base::addOnce(s.who, person);
    }
    s.people = std::max(s.people, shift.people);
    return;
  }
  shifts.push_back(shift);
}

void addDays(model::Plan& plan, const Found& found, const Desk& desk, const model::Content& content,
             base::Date start) {
  const Schedule& schedule = found.best.front().schedule;
  for (std::size_t i = 0; i < schedule.days.size(); ++i) {
    const DayPlan& day = schedule.days[i];
    model::SiteDay there{day.date, day.people, {day.date, day.arrive}, {day.date, day.home}, {}, {},
                         {},       day.tighter};
    there.heldBy = holdOf(schedule, i, found.work, desk, start);
    if (day.lastStart) there.lastStart = LocalTime{day.date, *day.lastStart};
    if (day.lastStroke) there.lastStroke = LocalTime{day.date, *day.lastStroke};
    plan.days.push_back(there);
    addDayEnds(plan, day, content);
    plan.duties.insert(plan.duties.end(), day.duties.begin(), day.duties.end());
    const std::size_t first = plan.shifts.size();
    for (const auto& duty : day.duties) {
      if (duty.what == What::Task)
        addShift(plan.shifts, first, duty.shift, model::taskOf(content, duty.shift.task).isPerCoat);
    }
  }
  std::stable_sort(plan.duties.begin(), plan.duties.end(),
                   [](const auto& a, const auto& b) { return a.shift.start < b.shift.start; });
  std::stable_sort(plan.shifts.begin(), plan.shifts.end(),
                   [](const auto& a, const auto& b) { return a.start < b.start; });
}

void addCost(model::Plan& plan, const Priced& best, const model::JobInputs& c) {
  auto& cost = plan.cost;
  cost.siteDays = static_cast<int>(best.schedule.days.size());
  cost.personMinutes = best.personMinutes;
  cost.visits = c.rates.travelPerDay * cost.siteDays;
  cost.paidHours = {
      base::mulDiv(c.rates.labourCostPerHour.minor, cost.personMinutes, 60, base::Round::HalfUp)};
}

void addExtraPass(model::Plan& plan, const Unit& unit, int coat) {
  constexpr base::Wide all = base::Share::whole(100).millionths;
  const base::Share part{base::divide(all * unit.portion.part, unit.portion.whole, base::Round::HalfUp)};
  for (auto& pass : plan.extraPasses) {
    if (pass.deck != unit.deck || pass.coat != coat) continue;
    pass.part.millionths = std::min<std::int64_t>(all, pass.part.millionths + part.millionths);
    return;
  }
  plan.extraPasses.push_back({unit.deck, coat, part});
}

std::vector<model::Alternative> alternativesTo(const Found& found, const model::JobInputs& c) {
  constexpr std::size_t most = 3;
  std::vector<model::Alternative> others;
  const auto firstStroke = [](const Priced& p) {
    LocalTime first = p.schedule.coats.front().start;
    for (const auto& coat : p.schedule.coats) first = std::min(first, coat.start);
    return first;
  };
  const Priced& best = found.best.front();
  if (best.schedule.coats.empty()) return {};
  std::set<base::Date> starts{firstStroke(best).day};
  model::Plan told;
  addCost(told, best, c);
  for (const auto& other : found.best) {
    if (other.schedule.coats.empty()) continue;
    model::Plan priced;
    addCost(priced, other, c);
    const bool isCheaper = priced.cost.total() < told.cost.total() || other.cost < best.cost;
    if (isCheaper || !starts.insert(firstStroke(other).day).second) continue;
    using Why = model::Alternative::Why;
    model::Alternative a{firstStroke(other), other.finish, priced.cost.total(), Why::Later};
    if (firstStroke(other) < firstStroke(best)) a.why = Why::Order;
    if (other.outside > best.outside) a.why = Why::Window;
    if (other.cost > best.cost) a.why = Why::Cost;
    if (other.unfit > best.unfit) a.why = Why::Weather;
    others.push_back(a);
    if (others.size() == most) break;
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const auto& a, const auto& b) { return a.cost < b.cost; });
  return others;
}

}  // namespace

model::Plan planOf(const Found& found, const Desk& desk, const model::Content& content,
                   const model::Estimate& e, base::Date start) {
  const Priced& best = found.best.front();
  const Schedule& schedule = best.schedule;
  model::Plan plan;
  plan.coatingFrom = desk.open.bounds().from;
  plan.coatingUntil = desk.open.bounds().until;
  addDays(plan, found, desk, content, start);
  plan.finished = schedule.days.empty() ? LocalTime{start, desk.calendar.day().from} : best.finish;
  addCoatEvents(plan, found.work, schedule);
  plan.misses = missesOf(found.work, schedule, desk);
  plan.washed = schedule.washed;
  for (const auto& coat : schedule.coats) {
    const Unit& unit = found.work.units[coat.unit];
    const auto until = after(desk.c.job.site.timezone, coat.end, desk.c.product->times.recoatMax);
    plan.coats.push_back({unit.deck, coat.coat, unit.part, coat.start, coat.end, coat.touchDry, coat.recoat,
                          until, coat.walk});
    if (coat.isExtra) addExtraPass(plan, unit, coat.coat);
  }
  std::stable_sort(plan.coats.begin(), plan.coats.end(),
                   [](const auto& a, const auto& b) { return a.start < b.start; });
  plan.edges = wetEdgesOf(found, schedule, desk, e);
  plan.alternatives = alternativesTo(found, desk.c);
  addCost(plan, best, desk.c);
  base::Hours extra;
  for (const auto& line : e.lateCoats) {
    for (const auto& pass : plan.extraPasses) {
      if (line.deck == pass.deck && line.pass == pass.coat) extra += line.hours;
    }
  }
  plan.cost.extraPasses = {
      base::mulDiv(desk.c.rates.labourCostPerHour.minor, extra.millionths, 1'000'000, base::Round::HalfUp)};
  if (!schedule.coats.empty()) addDates(plan, desk.c, desk.calendar);
  if (!plan.days.empty()) {
    const base::Date until = plan.days.back().date + days{1};
    plan.hours = desk.open.hours(plan.days.front().date, until);
    plan.light = daylightOf(desk.c.job.site, plan.days.front().date, until);
  }
  plan.weather = sourceOf(plan.hours);
  return plan;
}

void warnOf(const model::Plan& plan, const model::JobInputs& c, std::optional<base::Date> by,
            base::Diagnostics& messages) {
  const base::SourcePos nowhere;
  const model::WindowViolation* unfit = nullptr;
  std::set<std::size_t> decks;
  for (const auto& miss : plan.misses) {
    if (!miss.isUnfit) continue;
    if (!unfit) unfit = &miss;
    decks.insert(miss.deck);
  }
  if (unfit) {
    std::string where = "'" + c.job.areas[unfit->deck].name + "'";
    if (decks.size() > 1) where += " and " + std::to_string(decks.size() - 1) + " more";
    std::string text = "no day of the coming weeks is fit for coating " + where;
    if (unfit->gate) text += std::string(": ") + words(*unfit->gate);
    text += unfit->nearest ? "; the nearest day that would do is " + base::isoDate(*unfit->nearest)
                           : "; nor is any of the year";
    messages.warn(
        nowhere, "weather", text,
        "the coats are placed by the clock; start later, coat a shaded or cooler hour, or give a forecast");
  }
  std::set<std::string> unreached;
  for (const auto& edge : plan.edges) {
    for (const auto& strip : edge.strips) {
      if (strip.wipe && strip.wipe->from.on == model::Stand::On::Strip)
        unreached.insert(c.job.areas[edge.deck].name);
    }
  }
  for (const auto& name : unreached) {
    messages.warn(nowhere, "plan",
                  "no dry place is near enough to wipe all of '" + name + "' once it has soaked in",
                  "what is out of reach is laid thin and wiped at once, walking backwards; tell which of its "
                  "'edges:' are open if it can be reached from there");
  }
  if (by && !plan.days.empty() && plan.days.back().date > *by) {
    messages.warn(
        nowhere, "plan",
        "the work ends on " + base::isoDate(plan.days.back().date) + ", after " + base::isoDate(*by),
        "start sooner, add people or working days");
  }
}

}  // namespace schedule
