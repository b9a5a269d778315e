// The public holidays of a place in a year, by the rules of its region.
#pragma once

#include "model/job.h"

namespace model {

struct Holiday {
  base::Date date;
  const HolidayRule* rule = nullptr;  // of the region, which outlives it
};

/// By the Gregorian calendar: anonymous rule, Meeus, Astronomical Algorithms (1991), chapter 8.
base::Date easterSunday(int year);

/// Whether what holds for these states holds in one: none named = everywhere; 'QLD-BNE' lies in 'QLD'.
bool holdsIn(const std::vector<std::string>& states, const std::string& state);

/// In order of date, then as listed. Where the state is not known (empty): what all states of the region
/// keep. Laws of a Friday before 1 January are among those of the year before.
std::vector<Holiday> holidaysOf(const Region& region, const std::string& state, int year);

/// Those on which the crew of a job stays at home.
std::vector<Holiday> holidaysOff(const Job& job, const Region& region, int year);

/// The holiday a day is for the crew of a job; nothing where it works.
std::optional<Holiday> holidayOn(const Job& job, const Region& region, base::Date day);

/// States, by id, in which a day is a holiday; without the towns of those that are listed.
std::vector<std::string> statesWithHoliday(const Region& region, base::Date day);

}  // namespace model
