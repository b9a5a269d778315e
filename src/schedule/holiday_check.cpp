// What a job's days have to do with public holidays.
#include "base/joined.h"
#include "model/lookup.h"
#include "schedule/plan.h"

#include <algorithm>

namespace schedule {
namespace {

int yearOf(base::Date day) { return int{std::chrono::year_month_day{day}.year()}; }

class HolidayCheck {
 public:
  HolidayCheck(const model::JobInputs& c, const model::Plan& plan, base::Diagnostics& messages)
      : job_(c.job), region_(*c.region), plan_(plan), messages_(messages) {}

  void run() {
    if (job_.crew.worksOnHolidays || plan_.days.empty()) return;
    checkStart();
    if (job_.site.state.empty()) checkStates();
    for (int year = yearOf(job_.start); year <= yearOf(plan_.days.back().date); ++year) checkYear(year);
  }

 private:
  void warn(const char* path, std::string message, std::string hint) {
    messages_.warn(base::placeOf(job_.places, path), path, std::move(message), std::move(hint));
  }

  void checkStart() {
    const unsigned fromMonday = std::chrono::weekday{job_.start}.iso_encoding() - 1;
    const auto off = model::holidaysOff(job_, region_, yearOf(job_.start));
    const auto holiday =
        std::find_if(off.begin(), off.end(), [&](const auto& h) { return h.date == job_.start; });
    if (holiday == off.end() || !job_.crew.works[fromMonday]) return;
    warn("start", base::isoDate(job_.start) + " is a public holiday, " + holiday->rule->name,
         "the crew starts on " + base::isoDate(plan_.days.front().date) +
             "; with 'works_on_holidays: true' under 'crew' it works that day");
  }

  void checkStates() {
    std::string days, first;
    for (const auto& site : plan_.days) {
      const base::Date day = site.date;
      const auto states = base::statesWithHoliday({region_.holidays, region_.states}, day);
      if (states.empty()) continue;
      if (first.empty()) first = states.front();
      std::vector<std::string> names;
      for (const std::string& id : states) names.push_back(region_.states.at(id));
      days += (days.empty() ? "" : "; ") + base::isoDate(day) + " in " + base::joined(names);
    }
    if (days.empty()) return;
    warn("site", "days on site are public holidays in some states: " + days,
         "add the state to 'site:', like 'state: " + first + "'");
  }

  void checkYear(int year) {
    std::vector<std::string> names;
    std::string source;
    for (const auto& rule : region_.holidays) {
      if (!rule.knownUntil || *rule.knownUntil >= year) continue;
      if (!rule.states.empty() && (job_.site.state.empty() || !base::holdsIn(rule.states, job_.site.state)))
        continue;
      names.push_back(rule.name);
      source = rule.source;
    }
    if (names.empty()) return;
    warn("start",
         "holidays of " + std::to_string(year) + " that are not known for certain: " + base::joined(names),
         "name the days under 'off:' in 'crew'; " + source);
  }

  const model::Job& job_;
  const model::Region& region_;
  const model::Plan& plan_;
  base::Diagnostics& messages_;
};

}  // namespace

void checkHolidays(const model::JobInputs& c, const model::Plan& plan, base::Diagnostics& messages) {
  HolidayCheck(c, plan, messages).run();
}

}  // namespace schedule
