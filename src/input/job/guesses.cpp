// What a number without its unit may mean.
#include "base/quantity_words.h"
#include "input/yaml/quantity.h"

#include <utility>

namespace input {
namespace {

using Units = std::vector<std::string>;

Guesses guessed(const std::string& number, std::vector<Units> kinds) {
  for (Units& units : kinds) {
    for (std::string& unit : units) unit = number + " " + unit;
  }
  return kinds;
}

Guesses guessed(const std::string& number, Units metric, Units us, bool isUs) {
  if (isUs) std::swap(metric, us);
  return guessed(number, {std::move(metric), std::move(us)});
}

}  // namespace

Guesses withUnits(const std::string& number, base::Length, bool isUs) {
  return guessed(number, {"m", "mm", "cm"}, {"ft", "in"}, isUs);
}

Guesses withUnits(const std::string& number, base::Area, bool isUs) {
  return guessed(number, {"m2"}, {"ft2"}, isUs);
}

Guesses withUnits(const std::string& number, base::Volume, bool isUs) {
  return guessed(number, {"L", "mL"}, {"gal", "qt", "fl oz"}, isUs);
}

Guesses withUnits(const std::string& number, base::Share, bool) {
  const base::Count n = parseNumber(number).value;
  if (n.millionths <= 0 || n >= base::Count::whole(1)) return guessed(number, {{"%"}});
  std::string hundredfold = base::decimal(n.millionths * 100, 6, ".", "");
  hundredfold.erase(hundredfold.find_last_not_of('0') + 1);
  if (hundredfold.back() == '.') hundredfold.pop_back();
  return guessed(hundredfold, {{"%"}});
}

Guesses withUnits(const std::string& number, base::Hours, bool) {
  return guessed(number, {{"min", "h"}, {"d"}});
}

Guesses withUnits(const std::string& number, base::Temperature, bool isUs) {
  return guessed(number, {"C"}, {"F"}, isUs);
}

}  // namespace input
