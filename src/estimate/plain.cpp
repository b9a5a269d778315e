#include "estimate/plain.h"

namespace estimate {

std::string plain(std::int64_t millionths, int decimals) {
  std::int64_t step = 1'000'000;
  for (int i = 0; i < decimals; ++i) step /= 10;
  const std::int64_t rounded = base::divide(millionths, step, base::Round::HalfUp) * step;
  const std::int64_t size = rounded < 0 ? -rounded : rounded;
  std::string text = std::to_string(size / 1'000'000);
  std::string fraction = std::to_string(1'000'000 + size % 1'000'000).substr(1);
  fraction.erase(fraction.find_last_not_of('0') + 1);
  if (!fraction.empty()) text += "." + fraction;
  return rounded < 0 ? "-" + text : text;
}

std::string plainArea(base::Area a, model::UnitSystem units) {
  if (units == model::UnitSystem::UsCustomary)
    return plain(base::mulDiv(a.millionths, 1'000'000, squareFoot.millionths, base::Round::HalfUp)) + " ft2";
  return plain(base::divide(a.millionths, 1'000'000, base::Round::HalfUp)) + " m2";
}

std::string plainVolume(base::Volume v, model::UnitSystem units) {
  // 1 US fl oz = 29.573 529 562 5 mL, exactly: gallon / 128 (NIST SP 811 (2008), App. B.8).
  if (units == model::UnitSystem::UsCustomary)
    return plain(base::mulDiv(v.millionths, 128'000'000, 3'785'411'784, base::Round::HalfUp)) + " fl oz";
  return plain(v) + " mL";
}

}  // namespace estimate
