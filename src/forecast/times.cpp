#include "forecast/times.h"

#include "base/date.h"
#include "base/letters.h"

#include <charconv>

namespace forecast {
namespace {

using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;

using base::isDigits;

int number(std::string_view s) {
  int n = 0;
  std::from_chars(s.data(), s.data() + s.size(), n);
  return n;
}

/// '+12:00', '-0430', '+12'.
std::optional<minutes> parseOffset(std::string_view s) {
  const int sign = s[0] == '-' ? -1 : 1;
  s.remove_prefix(1);
  const std::string_view hour = s.substr(0, 2);
  std::string_view rest = s.substr(hour.size());
  if (rest.starts_with(":")) rest.remove_prefix(1);
  const bool isRest = rest.empty() ? s.size() == 2 : rest.size() == 2 && isDigits(rest);
  if (hour.size() != 2 || !isDigits(hour) || !isRest) return {};
  const int h = number(hour), m = rest.empty() ? 0 : number(rest);
  if (h > 14 || m > 59) return {};
  return minutes{sign * (h * 60 + m)};
}

}  // namespace

std::optional<Stamp> parseStamp(std::string_view s) {
  if (s.size() < 16 || (s[10] != 'T' && s[10] != ' ')) return {};
  const auto day = base::parseDate(s.substr(0, 10));
  const auto clock = base::parseClock(s.substr(11, 5));
  if (!day || !clock) return {};
  s.remove_prefix(16);
  if (s.starts_with(":")) {
    if (!s.starts_with(":00")) return {};
    s.remove_prefix(3);
    if (s.starts_with(".")) s.remove_prefix(std::min(s.find_first_not_of("0", 1), s.size()));
  }
  Stamp stamp{*day + minutes{*clock}, {}};
  if (s.empty()) return stamp;
  if (s == "Z" || s == "z") stamp.offset = minutes{0};
  else if (s[0] == '+' || s[0] == '-') stamp.offset = parseOffset(s);
  if (!stamp.offset) return {};
  return stamp;
}

std::optional<minutes> parseDuration(std::string_view s) {
  constexpr minutes most = days{31};
  if (!s.starts_with("P") || s.size() < 3) return {};
  s.remove_prefix(1);
  minutes sum{0};
  bool isTime = false;
  while (!s.empty()) {
    if (s[0] == 'T' && !isTime && s.size() > 1) {
      isTime = true;
      s.remove_prefix(1);
    }
    const auto end = s.find_first_not_of("0123456789");
    if (end == 0 || end == std::string_view::npos || end > 4) return {};
    const int n = number(s.substr(0, end));
    if (s[end] == 'D' && !isTime) sum += days{n};
    else if (s[end] == 'H' && isTime) sum += hours{n};
    else if (s[end] == 'M' && isTime) sum += minutes{n};
    else return {};
    s.remove_prefix(end + 1);
  }
  return sum > minutes{0} && sum <= most ? std::optional(sum) : std::nullopt;
}

std::string spanWords(std::chrono::seconds span) {
  const auto m = std::chrono::duration_cast<minutes>(span).count();
  return m % 60 == 0 ? std::to_string(m / 60) + " h" : std::to_string(m) + " min";
}

}  // namespace forecast
