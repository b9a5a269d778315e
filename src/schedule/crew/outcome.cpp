#include "schedule/crew/outcome.h"

#include "schedule/crew/choice.h"
#include "schedule/crew/dates.h"
#include "schedule/crew/misses.h"
#include "schedule/weather/hours.h"

#include <algorithm>
#include <map>
#include <set>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

/// Decks that get the same coat in one session are told together.
void addCoatEvents(model::Plan& plan, const Sessions& sessions) {
  struct Told {
    LocalTime start, end;
    std::vector<std::size_t> decks;
  };
  for (const auto& session : sessions) {
    std::map<std::size_t, Told> coats;
    for (const auto& lay : session.lays) {
      auto& told = coats.try_emplace(lay.coat, Told{lay.start(), lay.end(), {}}).first->second;
      told.start = std::min(told.start, lay.start());
      told.end = std::max(told.end, lay.end());
      told.decks.push_back(lay.deck->deck);
    }
    for (const auto& [coat, told] : coats) {
      const std::string name = "coat_" + std::to_string(coat + 1);
      plan.events.push_back({name + "_start", told.start, 0, told.decks});
      plan.events.push_back({name + "_end", told.end, 0, told.decks});
    }
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

}  // namespace

model::Plan planOf(const Course& course, const SessionMaker& maker, LocalTime start) {
  const auto& job = maker.job().job;
  model::Plan plan;
  plan.coatingFrom = maker.open().bounds().from;
  plan.coatingUntil = maker.open().bounds().until;
  plan.shifts = course.shifts;
  plan.finished = finishedOf(course, start);
  for (const auto& shift : plan.shifts) {
    if (plan.days.empty() || plan.days.back() != shift.start.day) plan.days.push_back(shift.start.day);
  }
  addCoatEvents(plan, course.sessions);
  for (std::size_t deck = 0; deck < job.areas.size(); ++deck) {
    const Lay* before = nullptr;
    for (const Lay* lay : laysOf(course.sessions, deck)) {
      if (const auto miss = missOf(before, *lay, maker)) plan.misses.push_back(*miss);
      before = lay;
    }
  }
  if (!course.sessions.empty()) addDates(plan, maker.job(), maker.calendar());
  if (!plan.days.empty()) {
    const base::Date until = plan.days.back() + days{1};
    plan.hours = maker.open().hours(plan.days.front(), until);
    plan.light = daylightOf(job.site, plan.days.front(), until);
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
  if (by && !plan.days.empty() && plan.days.back() > *by) {
    messages.warn(nowhere, "plan",
                  "the work ends on " + base::isoDate(plan.days.back()) + ", after " + base::isoDate(*by),
                  "start sooner, add people or working days");
  }
}

}  // namespace schedule
