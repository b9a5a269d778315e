#include "base/quantity_words.h"

namespace base {

std::string decimal(std::int64_t millionths, int places, const std::string& point, const std::string& group) {
  std::int64_t step = 1'000'000;
  for (int i = 0; i < places; ++i) step /= 10;
  const std::int64_t rounded = divide(millionths, step, Round::HalfUp);
  std::string digits = std::to_string(rounded < 0 ? -rounded : rounded);
  const auto after = static_cast<std::size_t>(places);
  if (digits.size() <= after) digits.insert(0, after + 1 - digits.size(), '0');
  const std::string whole = digits.substr(0, digits.size() - after);
  std::string out = rounded < 0 ? "\u2212" : "";
  for (std::size_t i = 0; i < whole.size(); ++i) {
    if (i > 0 && (whole.size() - i) % 3 == 0) out += group;
    out += whole[i];
  }
  if (places > 0) out += point + digits.substr(whole.size());
  return out;
}

std::string roundArea(std::int64_t millionths, const std::string& point, const std::string& group) {
  constexpr std::int64_t one = 999'500, hundred = 99'950'000;  // what is printed so
  return decimal(millionths, millionths < one ? 2 : millionths < hundred ? 1 : 0, point, group);
}

std::int64_t inSquareMetres(Area a) { return a.millionths / 1'000'000; }

std::int64_t inSquareFeet(Area a) {
  // NIST SP 811 (2008), App. B.8: the foot is 0.3048 m exactly.
  return mulDiv(a.millionths, 1'000'000, 92'903'040'000, a.millionths < 0 ? Round::Up : Round::Down);
}

std::int64_t inMetres(Length l) { return l.millionths / 1000; }

std::string feetAndInches(Length l) {
  static const char* const quarter[] = {"", "¼", "½", "¾"};
  const std::int64_t quarters = divide(l.millionths, 6'350'000, Round::HalfUp);  // 25.4 mm / 4
  const std::int64_t inches = quarters / 4 % 12;
  const auto part = static_cast<std::size_t>(quarters % 4);
  const std::string feet = quarters < 48 ? "" : std::to_string(quarters / 48) + "'-";
  return feet + std::to_string(inches) + quarter[part] + "\"";
}

}  // namespace base
