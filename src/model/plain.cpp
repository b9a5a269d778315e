#include "model/plain.h"

#include "base/quantity_words.h"

#include <cstdlib>

namespace model {

std::string plain(std::int64_t millionths, int decimals) {
  std::string text = base::decimal(std::abs(millionths), decimals, ".", "");
  if (millionths < 0 && text.find_first_not_of("0.") != std::string::npos) text = "-" + text;
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string plainArea(base::Area a, UnitSystem units) {
  if (units == UnitSystem::UsCustomary) return plain(base::inSquareFeet(a)) + " ft2";
  return plain(base::inSquareMetres(a)) + " m2";
}

std::string plainTemperature(base::Temperature t, UnitSystem units) {
  if (units == UnitSystem::UsCustomary)
    return plain(base::mulDiv(t.millionths, 9, 5, base::Round::HalfUp) + 32'000'000, 1) + " F";
  return plain(t.millionths, 1) + " C";
}

std::string plainVolume(base::Volume v, UnitSystem units) {
  // 1 US fl oz = 29.573 529 562 5 mL, exactly: gallon / 128 (NIST SP 811 (2008), App. B.8).
  if (units == UnitSystem::UsCustomary)
    return plain(base::mulDiv(v.millionths, 128'000'000, 3'785'411'784, base::Round::HalfUp)) + " fl oz";
  return plain(v) + " mL";
}

std::string plainLitres(base::Volume v, UnitSystem units) {
  if (units == UnitSystem::UsCustomary)  // 1 US gallon = 3.785 411 784 L, exactly (NIST SP 811, App. B.8)
    return plain(base::mulDiv(v.millionths, 1'000'000, 3'785'411'784, base::Round::HalfUp)) + " gal";
  return plain(v.millionths / 1000) + " L";
}

}  // namespace model
