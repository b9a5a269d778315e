// Latitudes and longitudes.
#include "input/yaml/words.h"

namespace input {
namespace {

std::optional<std::int64_t> microDegrees(const std::string& s, int most) {
  const Parsed<base::Count> p = parseNumber(s);
  const std::int64_t limit = most * std::int64_t{1'000'000};
  if (p.problem || p.value.millionths > limit || p.value.millionths < -limit) return {};
  return p.value.millionths;
}

/// '41.1 N' is 41.1, '41.1 S' is -41.1.
std::string degreesHint(std::string s, int most) {
  const auto isSide = [](char c) { return c == 'N' || c == 'E' || c == 'S' || c == 'W'; };
  if (s.size() > 1 && (isSide(s.front()) || isSide(s.back()))) {
    const char side = isSide(s.back()) ? s.back() : s.front();
    s.erase(isSide(s.back()) ? s.size() - 1 : 0, 1);
    const std::string number = plain(s);
    if (microDegrees(number, most))
      return "write " + std::string(side == 'S' || side == 'W' ? "-" : "") + number;
  }
  return "write degrees with a point, like 41.1; south and west are negative";
}

}  // namespace

std::optional<std::int64_t> degrees(const Field& f, int most) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  const auto value = microDegrees(*s, most);
  if (value) return value;
  if (const auto problem = parseNumber(*s).problem) {
    const auto isAccepted = [&](const std::string& meant) { return microDegrees(meant, most).has_value(); };
    f.error(problem->message,
            problem->hasComma ? commaHint(*problem, plain(*s), isAccepted) : degreesHint(plain(*s), most));
  } else {
    f.error(inQuotes(*s) + " is out of range", "allowed: from -" + std::to_string(most) + " to " +
                                                   std::to_string(most) +
                                                   "; latitude is north, longitude east");
  }
  return {};
}

}  // namespace input
