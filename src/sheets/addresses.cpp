#include "sheets/addresses.h"

#include <algorithm>

namespace sheets {
namespace {

bool isDigit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

bool isPhone(const std::string& words) {
  const auto isSign = [](char c) {
    return c == ' ' || c == '-' || c == '.' || c == '/' || c == '(' || c == ')';
  };
  const std::size_t begin = words.starts_with('+') ? 1 : 0;
  const auto from = words.begin() + static_cast<std::ptrdiff_t>(begin);
  return std::all_of(from, words.end(), [&](char c) { return isDigit(c) || isSign(c); }) &&
         std::count_if(from, words.end(), isDigit) >= 3;
}

// RFC 3966 (2004), 3: digits; the signs between them carry nothing. A number without its country's code is
// dialled as it stands, which is what a telephone at the place does.
std::string phoneAddress(const std::string& words) {
  std::string s = words.starts_with('+') ? "tel:+" : "tel:";
  std::copy_if(words.begin(), words.end(), std::back_inserter(s), isDigit);
  return s;
}

std::string mailAddress(const std::string& words) { return "mailto:" + words; }

std::string webAddress(const std::string& words) {
  return words.find("://") == std::string::npos ? "https://" + words : words;
}

std::string webWords(const std::string& words) {
  const auto scheme = words.find("://");
  std::string s = scheme == std::string::npos ? words : words.substr(scheme + 3);
  if (s.ends_with('/')) s.pop_back();
  return s;
}

}  // namespace sheets
