#include "base/date.h"

#include "base/letters.h"

namespace base {
namespace {

int number(std::string_view digits) {
  int n = 0;
  for (const char c : digits) n = n * 10 + (c - '0');
  return n;
}

std::string padded(int n, std::size_t width) {
  std::string s(width, '0');
  for (std::size_t i = width; i > 0; --i, n /= 10) s[i - 1] = static_cast<char>('0' + n % 10);
  return s;
}

}  // namespace

std::optional<Date> parseDate(std::string_view s) {
  if (s.size() != 10 || s[4] != '-' || s[7] != '-') return {};
  const auto y = s.substr(0, 4), m = s.substr(5, 2), d = s.substr(8, 2);
  if (!isDigits(y) || !isDigits(m) || !isDigits(d)) return {};
  const std::chrono::year_month_day ymd{std::chrono::year{number(y)},
                                        std::chrono::month{static_cast<unsigned>(number(m))},
                                        std::chrono::day{static_cast<unsigned>(number(d))}};
  if (!ymd.ok()) return {};
  return Date{ymd};
}

std::optional<int> parseClock(std::string_view s) {
  if (s.size() != 5 || s[2] != ':' || !isDigits(s.substr(0, 2)) || !isDigits(s.substr(3, 2))) return {};
  const int h = number(s.substr(0, 2)), m = number(s.substr(3, 2));
  if (h > 23 || m > 59) return {};
  return h * 60 + m;
}

std::string isoDate(Date d) {
  const std::chrono::year_month_day ymd{d};
  return padded(static_cast<int>(ymd.year()), 4) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(ymd.month())), 2) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(ymd.day())), 2);
}

std::string isoClock(int minutes) { return padded(minutes / 60, 2) + ":" + padded(minutes % 60, 2); }

std::string isoTime(LocalTime t) { return isoDate(t.day) + "T" + isoClock(t.minutes); }

LocalTime plusMinutes(LocalTime t, std::int64_t minutes) {
  constexpr std::int64_t day = 1440;
  const std::int64_t total = t.minutes + minutes;
  const std::int64_t days = total >= 0 ? total / day : -((-total + day - 1) / day);
  return {t.day + std::chrono::days{days}, static_cast<int>(total - days * day)};
}

Date plusMonths(Date d, int months) {
  const std::chrono::year_month_day ymd = std::chrono::year_month_day{d} + std::chrono::months{months};
  if (ymd.ok()) return Date{ymd};
  return Date{ymd.year() / ymd.month() / std::chrono::last};
}

}  // namespace base
