// Text with units becomes exact quantities: '12.4 m', '40 ft 6 in', '350 ft2/gal', '5 %', '46 F', '118.00'.
#pragma once

#include "base/money.h"
#include "input/yaml/scanner.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace input {

template <class T>
struct Parsed {
  T value{};
  std::optional<Problem> problem;
};

/// Lengths on paper, in thousandths of a point: '3.5 pt', '20 mm'.
struct PageLength {
  std::int32_t millipoints = 0;
};

// Signs are accepted everywhere, so that the caller can say what is wrong with '-3 m'. What is not a whole
// count of millionths ('1/3 in', '1/2 fl oz') is rounded half to even.
Parsed<base::Length> parseLength(std::string_view s);
Parsed<base::Area> parseArea(std::string_view s);
Parsed<base::Volume> parseVolume(std::string_view s);
/// 'm2/L' and 'ft2/gal', or the other way round as in '125 mL/m2'.
Parsed<base::Spread> parseSpread(std::string_view s);
Parsed<base::Share> parseShare(std::string_view s);
Parsed<base::Hours> parseTime(std::string_view s);
Parsed<base::Temperature> parseTemperature(std::string_view s);
Parsed<PageLength> parsePageLength(std::string_view s);

/// What one person does in an hour: square metres, metres or pieces, from any unit of that kind.
enum class PerHour { Area, Length, Pieces };
Parsed<base::Count> parsePerHour(std::string_view s, PerHour counted);

/// A number with one fixed unit, such as '830 kg/m3', '420 g/L', '92 dB', '3.5 m/s2', '12 months'.
Parsed<base::Count> parseWith(std::string_view unit, std::string_view s);

/// A bare number with the units a person may mean, the likeliest kind first; those of one kind of units
/// together. A share below one is meant as its hundredfold in per cent.
using Guesses = std::vector<std::vector<std::string>>;
Guesses withUnits(const std::string& number, base::Length, bool isUs);
Guesses withUnits(const std::string& number, base::Area, bool isUs);
Guesses withUnits(const std::string& number, base::Volume, bool isUs);
Guesses withUnits(const std::string& number, base::Share, bool isUs);
Guesses withUnits(const std::string& number, base::Hours, bool isUs);
Guesses withUnits(const std::string& number, base::Temperature, bool isUs);
inline Guesses withUnits(const std::string&, base::Count, bool) { return {}; }  // has none

/// A number without unit, at most six decimals.
Parsed<base::Count> parseNumber(std::string_view s);
Parsed<std::int64_t> parseWhole(std::string_view s);
/// An amount in a currency with so many digits for its coins.
Parsed<base::Money> parseMoney(std::string_view s, int digits);

}  // namespace input
