// Calendar days and wall-clock times, without a time zone and without a clock.
#pragma once

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace base {

using Date = std::chrono::sys_days;

/// A wall-clock time at the site: a day and the minutes since its midnight.
struct LocalTime {
  Date day{};
  int minutes = 0;  // 0..1439
  friend constexpr auto operator<=>(const LocalTime&, const LocalTime&) = default;
};

/// Reads exactly 'YYYY-MM-DD'; nothing for a day that does not exist.
std::optional<Date> parseDate(std::string_view s);
/// Reads exactly 'HH:MM', 00:00 to 23:59, as minutes since midnight.
std::optional<int> parseClock(std::string_view s);

std::string isoDate(Date d);        // 2027-03-16
std::string isoClock(int minutes);  // 07:30
std::string isoTime(LocalTime t);   // 2027-03-16T07:30
LocalTime plusMinutes(LocalTime t, std::int64_t minutes);
/// Same day of a later month; the 29th to 31st fall back to the month's last day.
Date plusMonths(Date d, int months);

}  // namespace base
