#include "model/holidays.h"

#include <algorithm>

namespace model {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::weekday;
using std::chrono::year;

int daysUntil(weekday from, weekday to) { return static_cast<int>((to - from).count()); }

base::Date dayIn(int y, const DayRule& rule) {
  struct Visitor {
    year y;
    base::Date operator()(std::chrono::month_day d) const { return sys_days{y / d}; }
    base::Date operator()(std::chrono::month_weekday d) const { return sys_days{y / d}; }
    base::Date operator()(std::chrono::month_weekday_last d) const { return sys_days{y / d}; }
    base::Date operator()(const NearestWeekday& d) const {
      const sys_days near{y / d.day};
      const int forward = daysUntil(weekday{near}, d.weekday);
      return near + days{forward > 3 ? forward - 7 : forward};
    }
    base::Date operator()(const NextWeekday& d) const {
      const sys_days first{y / d.day};
      return first + days{daysUntil(weekday{first}, d.weekday)};
    }
    base::Date operator()(EasterSunday) const { return easterSunday(int{y}); }
  };
  return std::visit(Visitor{year{y}}, rule.day) + days{rule.later};
}

/// The day of a year before weekends are looked at; nothing where the rule names none.
std::optional<base::Date> dayOf(const HolidayRule& rule, int y) {
  for (const base::Date date : rule.dates) {
    if (int{std::chrono::year_month_day{date}.year()} == y) return date;
  }
  if (!rule.day) return {};
  base::Date day = dayIn(y, *rule.day);
  if (rule.preferred) {
    const base::Date other = dayIn(y, rule.preferred->day);
    if (weekday{other} == rule.preferred->weekday) day = other;
  }
  if (rule.clash && day == dayIn(y, *rule.clash)) day += days{1};
  return day;
}

std::vector<base::Date> withWeekend(base::Date day, OnWeekend onWeekend) {
  const bool isSaturday = weekday{day} == std::chrono::Saturday;
  if (!isSaturday && weekday{day} != std::chrono::Sunday) return {day};
  const base::Date monday = day + days{isSaturday ? 2 : 1};
  switch (onWeekend) {
    case OnWeekend::Stays:
      return {day};
    case OnWeekend::AddsMonday:
      return {day, monday};
    case OnWeekend::MovesToMonday:
      return {monday};
    case OnWeekend::SundayMovesToMonday:
      return {isSaturday ? day : monday};
    case OnWeekend::AddsTwoDaysLater:
      return {day, day + days{2}};
    case OnWeekend::MovesTwoDaysLater:
      return {day + days{2}};
    case OnWeekend::AddsNearestWeekday:
      return {day, isSaturday ? day - days{1} : monday};
  }
  return {day};
}

/// Of all states, in order of date, then as listed.
std::vector<Holiday> allOf(const Region& region, int y) {
  std::vector<Holiday> all;
  for (const HolidayRule& rule : region.holidays) {
    for (const int each : {y - 1, y, y + 1}) {  // a weekend may carry a day over the end of its year
      const auto day = dayOf(rule, each);
      if (!day) continue;
      for (const base::Date date : withWeekend(*day, rule.onWeekend)) {
        if (int{std::chrono::year_month_day{date}.year()} == y) all.push_back({date, &rule});
      }
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.date < b.date; });
  return all;
}

bool isKeptIn(const std::vector<Holiday>& all, base::Date day, const std::string& state) {
  return std::any_of(all.begin(), all.end(),
                     [&](const Holiday& h) { return h.date == day && holdsIn(h.rule->states, state); });
}

}  // namespace

base::Date easterSunday(int y) {
  const int a = y % 19, b = y / 100, c = y % 100, d = b / 4, e = b % 4, g = (b - (b + 8) / 25 + 1) / 3;
  const int h = (19 * a + b - d - g + 15) % 30, i = c / 4, k = c % 4;
  const int l = (32 + 2 * e + 2 * i - h - k) % 7, m = (a + 11 * h + 22 * l) / 451;
  const int n = h + l - 7 * m + 114;
  return sys_days{year{y} / (n / 31) / (n % 31 + 1)};
}

bool holdsIn(const std::vector<std::string>& states, const std::string& state) {
  const auto names = [&](const std::string& id) {
    return std::find(states.begin(), states.end(), id) != states.end();
  };
  return states.empty() || names(state) || names(state.substr(0, state.find('-')));
}

std::vector<Holiday> holidaysOf(const Region& region, const std::string& state, int year) {
  const std::vector<Holiday> all = allOf(region, year);
  std::vector<Holiday> kept;
  for (const Holiday& h : all) {
    const auto isKept = [&](const auto& each) { return isKeptIn(all, h.date, each.first); };
    const bool isThere = !state.empty() ? holdsIn(h.rule->states, state)
                                        : h.rule->states.empty() ||
                                              std::all_of(region.states.begin(), region.states.end(), isKept);
    const bool isTold = !kept.empty() && kept.back().date == h.date && kept.back().rule->name == h.rule->name;
    if (isThere && !isTold) kept.push_back(h);
  }
  return kept;
}

std::vector<Holiday> holidaysOff(const Job& job, const Region& region, int year) {
  if (job.crew.worksOnHolidays) return {};
  std::vector<Holiday> off = holidaysOf(region, job.site.state, year);
  const auto& worked = job.crew.workedHolidays;
  std::erase_if(off, [&](const Holiday& h) {
    return std::find(worked.begin(), worked.end(), h.rule->name) != worked.end();
  });
  return off;
}

std::optional<Holiday> holidayOn(const Job& job, const Region& region, base::Date day) {
  for (const Holiday& h : holidaysOff(job, region, int{std::chrono::year_month_day{day}.year()})) {
    if (h.date == day) return h;
  }
  return {};
}

std::vector<std::string> statesWithHoliday(const Region& region, base::Date day) {
  const auto all = allOf(region, int{std::chrono::year_month_day{day}.year()});
  std::vector<std::string> states;
  for (const auto& [id, name] : region.states) {
    const bool isInListed = !states.empty() && id.starts_with(states.back() + "-");
    if (!isInListed && isKeptIn(all, day, id)) states.push_back(id);
  }
  return states;
}

}  // namespace model
