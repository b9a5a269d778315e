#include "base/holidays.h"

#include <algorithm>

namespace base {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::weekday;
using std::chrono::year;

int daysUntil(weekday from, weekday to) { return static_cast<int>((to - from).count()); }

Date dayIn(int y, const DayRule& rule) {
  struct Visitor {
    year y;
    Date operator()(std::chrono::month_day d) const { return sys_days{y / d}; }
    Date operator()(std::chrono::month_weekday d) const { return sys_days{y / d}; }
    Date operator()(std::chrono::month_weekday_last d) const { return sys_days{y / d}; }
    Date operator()(const NearestWeekday& d) const {
      const sys_days near{y / d.day};
      const int forward = daysUntil(weekday{near}, d.weekday);
      return near + days{forward > 3 ? forward - 7 : forward};
    }
    Date operator()(const NextWeekday& d) const {
      const sys_days first{y / d.day};
      return first + days{daysUntil(weekday{first}, d.weekday)};
    }
    Date operator()(EasterSunday) const { return easterSunday(int{y}); }
  };
  return std::visit(Visitor{year{y}}, rule.day) + days{rule.later};
}

/// The day of a year before weekends are looked at; nothing where the rule names none.
std::optional<Date> dayOf(const HolidayRule& rule, int y) {
  for (const Date date : rule.dates) {
    if (int{std::chrono::year_month_day{date}.year()} == y) return date;
  }
  if (!rule.day) return {};
  Date day = dayIn(y, *rule.day);
  if (rule.preferred) {
    const Date other = dayIn(y, rule.preferred->day);
    if (weekday{other} == rule.preferred->weekday) day = other;
  }
  if (rule.clash && day == dayIn(y, *rule.clash)) day += days{1};
  return day;
}

std::vector<Date> withWeekend(Date day, OnWeekend onWeekend) {
  const bool isSaturday = weekday{day} == std::chrono::Saturday;
  if (!isSaturday && weekday{day} != std::chrono::Sunday) return {day};
  const Date monday = day + days{isSaturday ? 2 : 1};
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
std::vector<Holiday> allOf(const std::vector<HolidayRule>& rules, int y) {
  std::vector<Holiday> all;
  for (const HolidayRule& rule : rules) {
    for (const int each : {y - 1, y, y + 1}) {  // a weekend may carry a day over the end of its year
      const auto day = dayOf(rule, each);
      if (!day) continue;
      for (const Date date : withWeekend(*day, rule.onWeekend)) {
        if (int{std::chrono::year_month_day{date}.year()} == y) all.push_back({date, &rule});
      }
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.date < b.date; });
  return all;
}

/// 'all' are in order of date.
bool isKeptIn(const std::vector<Holiday>& all, Date day, const std::string& state) {
  const auto first =
      std::lower_bound(all.begin(), all.end(), day, [](const Holiday& h, Date d) { return h.date < d; });
  const auto end = std::find_if(first, all.end(), [&](const Holiday& h) { return h.date != day; });
  return std::any_of(first, end, [&](const Holiday& h) { return holdsIn(h.rule->states, state); });
}

}  // namespace

Date easterSunday(int y) {
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

std::vector<Holiday> holidaysOf(const HolidayPlace& place, const std::string& state, int year) {
  const std::vector<Holiday> all = allOf(place.rules, year);
  std::vector<Holiday> kept;
  for (const Holiday& h : all) {
    const auto isKept = [&](const auto& each) { return isKeptIn(all, h.date, each.first); };
    const bool isThere = !state.empty() ? holdsIn(h.rule->states, state)
                                        : h.rule->states.empty() ||
                                              std::all_of(place.states.begin(), place.states.end(), isKept);
    const bool isTold = !kept.empty() && kept.back().date == h.date && kept.back().rule->name == h.rule->name;
    if (isThere && !isTold) kept.push_back(h);
  }
  return kept;
}

std::vector<std::string> statesWithHoliday(const HolidayPlace& place, Date day) {
  const auto all = allOf(place.rules, int{std::chrono::year_month_day{day}.year()});
  std::vector<std::string> states;
  for (const auto& [id, name] : place.states) {
    const bool isInListed = !states.empty() && id.starts_with(states.back() + "-");
    if (!isInListed && isKeptIn(all, day, id)) states.push_back(id);
  }
  return states;
}

}  // namespace base
