#include "schedule/crew/calendar.h"

#include "model/lookup.h"

#include <algorithm>
#include <stdexcept>

namespace schedule {

Calendar::Calendar(const model::Job& job, const model::Region* region, int morning, int evening)
    : job_(job), region_(region), day_{job.crew.startMinutes + morning, job.crew.endMinutes - evening} {
  const auto pause = model::breakOf(job.crew);
  pause_ = {pause.from, pause.until};
}

bool Calendar::isWorkday(base::Date day) const {
  constexpr std::int64_t mostLooks = 300'000'000;
  if (++looks_ > mostLooks) throw std::logic_error("internal error: the plan comes to no end");
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

int Calendar::workable(Span s) const {
  const int from = std::max(s.from, day_.from), until = std::min(s.until, day_.until);
  if (until <= from) return 0;
  const int pause = std::max(0, std::min(until, pause_.until) - std::max(from, pause_.from));
  return until - from - pause;
}

bool Calendar::hasTime(Span within, base::Date from) const {
  if (workable(within) <= 0) return false;
  for (int i = 0; i < 366; ++i) {
    if (isWorkday(from + std::chrono::days{i})) return true;
  }
  return false;
}

base::LocalTime Calendar::next(base::LocalTime t, Span within) const {
  if (workable(within) == 0) throw std::logic_error("internal error: no minute of these hours is worked");
  while (true) {
    if (isWorkday(t.day)) {
      int at = std::max({t.minutes, within.from, day_.from});
      if (at >= pause_.from && at < pause_.until) at = pause_.until;
      if (at < std::min(within.until, day_.until)) return {t.day, at};
    }
    t = {t.day + std::chrono::days{1}, 0};
  }
}

std::vector<Part> Calendar::fill(base::LocalTime t, int minutes, Span within) const {
  std::vector<Part> parts;
  t = next(t, within);
  while (true) {
    const int today = std::min(minutes, workable({t.minutes, std::min(within.until, day_.until)}));
    int end = t.minutes + today;
    if (t.minutes < pause_.from && end > pause_.from) end += pause_.until - pause_.from;
    parts.push_back({t, {t.day, end}});
    minutes -= today;
    if (minutes <= 0) return parts;
    t = next({t.day + std::chrono::days{1}, 0}, within);
  }
}

}  // namespace schedule
