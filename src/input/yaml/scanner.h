// Reads a quantity's text from left to right: numbers ('12.4', '5 1/2') and names of units ('m', 'sq ft').
#pragma once

#include "base/fixed.h"

#include <optional>
#include <string>
#include <string_view>

namespace input {

/// Why a text is not the quantity that was asked for.
struct Problem {
  std::string message;  // "'12.4' needs a unit"
  std::string hint;     // "write '12.4 m'"
  bool isBare = false;  // it is a number without its unit
  bool hasComma = false;
};

struct Number {
  base::Wide numerator = 0;  // at most 21 digits
  std::int64_t denominator = 1;
  int decimals = 0;
  bool isFraction = false;  // written with a slash
};

class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  bool isAtEnd();
  std::optional<Problem> number(Number& n);
  /// The next unit's name, empty at the end or before a digit.
  std::string unit();
  bool slash();
  /// Passes over the dash of 12'-6".
  void dash();

 private:
  void skipSpaces();
  bool take(char c);
  std::string_view digits();
  std::optional<Problem> mixed(Number& n, std::int64_t whole, std::string_view start);
  std::optional<Problem> over(Number& n, std::int64_t top, std::int64_t whole, std::string_view start);
  std::string bareUnit();

  std::string_view rest_;
};

/// Typographic spellings in plain letters ('m²' as 'm2', '12½' as '12 1/2', a degree sign left out), outer
/// spaces off.
std::string plain(std::string_view text);
bool beginsLikeNumber(std::string_view s);
/// In single quotes, cut short after 60 bytes.
std::string inQuotes(std::string_view s);

}  // namespace input
