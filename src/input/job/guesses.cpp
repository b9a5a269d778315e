// What a number without its unit may mean.
#include "base/letters.h"
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

std::vector<std::string> withoutCommas(const std::string& text) {
  const auto isDigitAt = [&](std::size_t at) { return at < text.size() && base::isDigit(text[at]); };
  const std::size_t first = text.find(','), last = text.rfind(',');
  std::string joined, pointed;
  bool partsThousands = true;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != ',') joined += text[i];
    else
      partsThousands =
          partsThousands && isDigitAt(i + 1) && isDigitAt(i + 2) && isDigitAt(i + 3) && !isDigitAt(i + 4);
    if (text[i] != '.' && text[i] != ',') pointed += text[i];
    else if (i == last) pointed += '.';
  }
  const std::size_t point = text.rfind('.');
  std::vector<std::string> all;
  if (partsThousands && (point == std::string::npos || point > last)) all.push_back(joined);
  if (first == last && isDigitAt(last + 1) && (point == std::string::npos || point < last))
    all.push_back(pointed);
  return all;
}

Guesses withUnits(const std::string& number, base::Length, bool isUs) {
  std::vector<std::string> metric = {"m", "mm", "cm"};
  if (parseNumber(number).value <= base::Count::whole(12)) metric.emplace_back("in");  // widths of boards
  return guessed(number, std::move(metric), {"ft", "in"}, isUs);
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

Guesses withUnits(const std::string& number, base::Spread, bool) {
  return guessed(number, {{"m2/L"}, {"ft2/gal"}, {"L/m2", "mL/m2"}});
}

Guesses withUnits(const std::string& number, base::Temperature, bool isUs) {
  return guessed(number, {"C"}, {"F"}, isUs);
}

}  // namespace input
