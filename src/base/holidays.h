// Public holidays as rules, and the days of a year by them.
#pragma once

#include "base/date.h"

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace base {

/// 'Monday nearest 29 January': from Tuesday to Thursday it goes back, from Friday to Sunday forward.
struct NearestWeekday {
  std::chrono::month_day day;
  std::chrono::weekday weekday;
};
/// 'Wednesday on or after 10 August'.
struct NextWeekday {
  std::chrono::month_day day;
  std::chrono::weekday weekday;
};
struct EasterSunday {};

/// A day of the year: '25 December', 'fourth Monday of October - 3', 'Easter + 1'.
struct DayRule {
  std::variant<std::chrono::month_day, std::chrono::month_weekday, std::chrono::month_weekday_last,
               NearestWeekday, NextWeekday, EasterSunday>
      day;
  int later = 0;  // days after it; below 0 before it
};

/// A day that counts only where it falls on one weekday.
struct DayIfWeekday {
  DayRule day;
  std::chrono::weekday weekday;
};

/// What a holiday on a weekend does. 'Adds' leaves the weekend day a holiday too, for crews that work then.
enum class OnWeekend {
  Stays,
  AddsMonday,
  MovesToMonday,
  SundayMovesToMonday,
  AddsTwoDaysLater,   // of two days running: Saturday adds Monday, Sunday adds Tuesday
  MovesTwoDaysLater,  // the same, and the weekend day is none
  AddsNearestWeekday  // Saturday adds Friday, Sunday adds Monday
};

struct HolidayRule {
  std::string name;
  std::string source;                     // the law's title and year
  std::vector<std::string> states;        // ids; none = the whole region
  std::optional<DayRule> day;             // nothing = only 'dates'
  std::optional<DayIfWeekday> preferred;  // in its place where it fits
  std::optional<DayRule> clash;           // where the day falls on this one, the next day counts
  std::vector<Date> dates;                // in their years in place of the rule
  OnWeekend onWeekend = OnWeekend::Stays;
  std::optional<int> knownUntil;  // last year for which this is known to hold
};

/// By the Gregorian calendar: anonymous rule, Meeus, Astronomical Algorithms (1991), chapter 8.
Date easterSunday(int year);

/// Whether what holds for these states holds in one: none named = everywhere; 'QLD-BNE' lies in 'QLD'.
bool holdsIn(const std::vector<std::string>& states, const std::string& state);

struct Holiday {
  Date date;
  const HolidayRule* rule = nullptr;  // of its region, which outlives it
};

/// The holidays of a place: its rules, and the names of its states by id.
struct HolidayPlace {
  const std::vector<HolidayRule>& rules;
  const std::map<std::string, std::string>& states;
};

/// In order of date, then as listed; a day that a weekend carries over new year is of the year it falls in.
/// Where the state is not known (empty): what all states keep.
std::vector<Holiday> holidaysOf(const HolidayPlace& place, const std::string& state, int year);

/// States, by id, in which a day is a holiday; without the towns of those that are listed.
std::vector<std::string> statesWithHoliday(const HolidayPlace& place, Date day);

}  // namespace base
