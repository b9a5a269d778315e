#include "input/yaml/scanner.h"

#include "base/letters.h"

#include <algorithm>
#include <utility>

namespace input {
namespace {

using base::isDigit;
bool isSpace(char c) { return c == ' ' || c == '\t' || c == '\n'; }

void replaceAll(std::string& s, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = s.find(from, at)) != std::string::npos; at += to.size())
    s.replace(at, from.size(), to);
}

std::int64_t toInt(std::string_view digits) {
  std::int64_t n = 0;
  for (const char c : digits) n = n * 10 + (c - '0');
  return n;
}

std::string_view word(std::string_view s) {
  std::size_t n = 0;
  while (n < s.size() && !isSpace(s[n])) ++n;
  return s.substr(0, n);
}

Problem notPlain(std::string_view start) {
  return {inQuotes(word(start)) + " is not a plain number", "write digits with a point, like 12.5"};
}

Problem tooManyDigits(std::string_view start) {
  return {inQuotes(word(start)) + " has too many digits",
          "round it: twelve digits before the point, nine after"};
}

/// '12\u00BD' is '12 1/2'.
void spellOut(std::string& s, std::string_view sign, const char* fraction) {
  for (std::size_t at = 0; (at = s.find(sign, at)) != std::string::npos;)
    s.replace(at, sign.size(), (at > 0 && isDigit(s[at - 1]) ? " " : "") + std::string(fraction));
}

}  // namespace

std::string inQuotes(std::string_view s) {
  std::size_t most = 60;
  if (s.size() <= most) return "'" + std::string(s) + "'";
  while ((s[most] & 0xC0) == 0x80) --most;
  return "'" + std::string(s.substr(0, most)) + "...'";
}

std::string plain(std::string_view text) {
  std::string s(text);
  replaceAll(s, "\u00B2", "2");
  replaceAll(s, "\u00B3", "3");
  replaceAll(s, "\u00A0", " ");
  replaceAll(s, "\u202F", " ");
  replaceAll(s, "\u2032", "'");
  replaceAll(s, "\u2019", "'");
  replaceAll(s, "\u201D", "\"");
  replaceAll(s, "\u2033", "\"");
  replaceAll(s, "\u2212", "-");
  replaceAll(s, "\u00B0", "");
  replaceAll(s, "\u00B5", "u");
  replaceAll(s, "\u2044", "/");
  constexpr std::pair<const char*, const char*> fractions[] = {
      {"\u00BC", "1/4"}, {"\u00BD", "1/2"}, {"\u00BE", "3/4"}, {"\u2153", "1/3"}, {"\u2154", "2/3"},
      {"\u215B", "1/8"}, {"\u215C", "3/8"}, {"\u215D", "5/8"}, {"\u215E", "7/8"}};
  for (const auto& [sign, fraction] : fractions) spellOut(s, sign, fraction);
  while (!s.empty() && isSpace(s.back())) s.pop_back();
  while (!s.empty() && isSpace(s.front())) s.erase(s.begin());
  return s;
}

bool beginsLikeNumber(std::string_view s) { return !s.empty() && (isDigit(s[0]) || s[0] == '-'); }

bool Scanner::isAtEnd() {
  skipSpaces();
  return rest_.empty();
}

std::optional<Problem> Scanner::number(Number& n) {
  skipSpaces();
  const std::string_view start = rest_;
  const bool isNegative = take('-');
  std::string_view whole = digits();
  if (whole.empty()) return notPlain(start);
  if (whole.size() > 12) return tooManyDigits(start);
  if (whole.size() > 1 && whole[0] == '0') return notPlain(start);
  n = {toInt(whole), 1, 0, false};
  if (take('/')) {
    if (auto p = over(n, toInt(whole), 0, start)) return p;
  } else if (take('.')) {
    const std::string_view d = digits();
    if (d.empty()) return notPlain(start);
    if (d.size() > 9) return tooManyDigits(start);
    for (std::size_t i = 0; i < d.size(); ++i) n.denominator *= 10;
    n.numerator = n.numerator * n.denominator + toInt(d);
    n.decimals = static_cast<int>(d.size());
  } else if (auto p = mixed(n, toInt(whole), start)) {
    return p;
  }
  if (isNegative) n.numerator = -n.numerator;
  if (!rest_.empty() && rest_[0] == ',')
    return Problem{inQuotes(word(start)) + " has a comma in its number",
                   "write digits with a point, like 12.5", false, true};
  if (!rest_.empty() && (rest_[0] == '_' || rest_[0] == '.')) return notPlain(start);
  // '1e400' and '0x10' are numbers of programmers; '5in' and '3x' are not.
  if (rest_.size() > 1 && (rest_[0] == 'e' || rest_[0] == 'E' || rest_[0] == 'x') &&
      (isDigit(rest_[1]) || rest_[1] == '-' || rest_[1] == '+'))
    return notPlain(start);
  return {};
}

std::string Scanner::unit() {
  skipSpaces();
  std::string name = bareUnit();
  if (name == "sq" || name == "square" || name == "fl") {
    skipSpaces();
    name += " " + bareUnit();
  }
  return name;
}

bool Scanner::slash() {
  skipSpaces();
  return take('/');
}

void Scanner::dash() {
  skipSpaces();
  if (rest_.size() > 1 && rest_[0] == '-' && (isDigit(rest_[1]) || isSpace(rest_[1]))) take('-');
}

void Scanner::skipSpaces() {
  while (!rest_.empty() && isSpace(rest_[0])) rest_.remove_prefix(1);
}

bool Scanner::take(char c) {
  if (rest_.empty() || rest_[0] != c) return false;
  rest_.remove_prefix(1);
  return true;
}

std::string_view Scanner::digits() {
  std::size_t n = 0;
  while (n < rest_.size() && isDigit(rest_[n])) ++n;
  const std::string_view d = rest_.substr(0, n);
  rest_.remove_prefix(n);
  return d;
}

/// '5 1/2' and '5-1/2': the part after the whole number, if there is one.
std::optional<Problem> Scanner::mixed(Number& n, std::int64_t whole, std::string_view start) {
  const std::string_view before = rest_;
  if (!take('-')) skipSpaces();
  const std::string_view top = digits();
  if (top.empty() || top.size() > 4 || !take('/')) {
    rest_ = before;
    return {};
  }
  return over(n, toInt(top), whole, start);
}

std::optional<Problem> Scanner::over(Number& n, std::int64_t top, std::int64_t whole,
                                     std::string_view start) {
  const std::string_view bottom = digits();
  if (bottom.empty() || bottom.size() > 4 || toInt(bottom) == 0) return notPlain(start);
  n = {base::Wide{whole} * toInt(bottom) + top, toInt(bottom), 0, true};
  return {};
}

std::string Scanner::bareUnit() {
  if (!rest_.empty() && (rest_[0] == '\'' || rest_[0] == '"' || rest_[0] == '%')) {
    const std::string name(rest_.substr(0, 1));
    rest_.remove_prefix(1);
    return name;
  }
  std::size_t n = 0;
  while (n < rest_.size() && !isSpace(rest_[n]) && rest_[n] != '/' && (n > 0 || !isDigit(rest_[n]))) ++n;
  const std::string name(rest_.substr(0, n));
  rest_.remove_prefix(n);
  return name;
}

}  // namespace input
