#include "schedule/crew/calendar.h"

#include "model/crew_time.h"
#include "model/lookup.h"

#include <algorithm>
#include <stdexcept>

namespace schedule {

using std::chrono::days;

Calendar::Calendar(const model::Job& job, const model::Region* region, int morning, int evening)
    : job_(job),
      region_(region),
      day_{model::upToStep(job.crew.startMinutes) + morning, job.crew.endMinutes / 5 * 5 - evening},
      morning_(morning),
      evening_(evening),
      rest_(model::upToStep(job.crew.breakMinutes)),
      restAt_(model::breakOf(job.crew).from) {}

bool Calendar::isWorkday(base::Date day) const {
  const unsigned fromMonday = std::chrono::weekday{day}.iso_encoding() - 1;
  const auto& crew = job_.crew;
  return crew.works[fromMonday] && std::find(crew.off.begin(), crew.off.end(), day) == crew.off.end() &&
         !isHoliday(day);
}

bool Calendar::isHoliday(base::Date day) const {
  if (region_ == nullptr) return false;
  const int year = int{std::chrono::year_month_day{day}.year()};
  const auto [found, isNew] = holidays_.try_emplace(year);
  auto& dates = found->second;
  if (isNew) {
    for (const auto& h : model::holidaysOff(job_, *region_, year)) dates.push_back(h.date);
  }
  return std::binary_search(dates.begin(), dates.end(), day);
}

base::Date Calendar::workday(base::Date day) const {
  constexpr int tenYears = 3660;
  for (int i = 0; i < tenYears; ++i, day += days{1}) {
    if (isWorkday(day)) return day;
  }
  throw std::logic_error("internal error: nobody works within ten years");
}

base::Date Calendar::workdayBefore(base::Date day, int n) const {
  constexpr int tenYears = 3660;
  for (int i = 0; i < tenYears && n > 0; ++i) {
    day -= days{1};
    if (isWorkday(day)) --n;
  }
  return day;
}

bool Calendar::hasWorkdays(base::Date from) const {
  for (int i = 0; i < 366; ++i) {
    if (isWorkday(from + days{i})) return true;
  }
  return false;
}

int Calendar::capacity() const {
  const int whole = day_.until - day_.from;
  return whole + morning_ + evening_ > longestSpell ? whole - rest_ : whole;
}

}  // namespace schedule
