// Latitudes and longitudes.
#include "input/yaml/words.h"

namespace input {
namespace {

/// '41.1 N' is 41.1, '41.1 S' is -41.1.
std::string degreesHint(std::string s) {
  const auto isSide = [](char c) { return c == 'N' || c == 'E' || c == 'S' || c == 'W'; };
  if (s.size() > 1 && (isSide(s.front()) || isSide(s.back()))) {
    const char side = isSide(s.back()) ? s.back() : s.front();
    s.erase(isSide(s.back()) ? s.size() - 1 : 0, 1);
    const std::string number = plain(s);
    if (!parseNumber(number).problem)
      return "write " + std::string(side == 'S' || side == 'W' ? "-" : "") + number;
  }
  return "write degrees with a point, like 41.1; south and west are negative";
}

}  // namespace

std::optional<std::int64_t> degrees(const Field& f, int most) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  const Parsed<base::Count> p = parseNumber(*s);
  if (p.problem) {
    f.error(p.problem->message, degreesHint(plain(*s)));
    return {};
  }
  const std::int64_t limit = most * std::int64_t{1'000'000};
  if (p.value.millionths > limit || p.value.millionths < -limit) {
    f.error(inQuotes(*s) + " is out of range", "allowed: from -" + std::to_string(most) + " to " +
                                                   std::to_string(most) +
                                                   "; latitude is north, longitude east");
    return {};
  }
  return p.value.millionths;
}

}  // namespace input
