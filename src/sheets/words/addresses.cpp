#include "sheets/words/addresses.h"

#include "base/letters.h"

#include <algorithm>

namespace sheets {
namespace {

using base::isDigit;

/// The first of several numbers, '020 7946 0123 / 07700 900123', without an extension. A stroke inside a
/// number stands behind a few digits only.
std::string firstNumber(const std::string& words) {
  const std::string first = words.substr(0, std::min(words.find_first_of(",;"), words.find("ext")));
  constexpr int leastDigits = 7;
  for (auto at = first.find('/'); at != std::string::npos; at = first.find('/', at + 1)) {
    const auto here = first.begin() + static_cast<std::ptrdiff_t>(at);
    if (std::count_if(first.begin(), here, isDigit) >= leastDigits) return first.substr(0, at);
  }
  return first;
}

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

// RFC 3966 (2004), 3: digits; the signs between them carry nothing.
std::string phoneAddress(const std::string& words, const model::Dialling& dialling) {
  std::string written = firstNumber(words);
  const bool isWhole = written.starts_with('+');
  const std::string aside = "(" + dialling.trunk + ")";  // '+44 (0)1632 960142'
  if (const auto at = written.find(aside); isWhole && !dialling.trunk.empty() && at != std::string::npos)
    written.erase(at, aside.size());
  std::string digits;
  std::copy_if(written.begin(), written.end(), std::back_inserter(digits), isDigit);
  constexpr std::size_t longestService = 4;  // '000' of Australia begins like any number of the country
  if (isWhole) return "tel:+" + digits;
  if (dialling.country.empty() || digits.size() <= longestService) return "tel:" + digits;
  if (digits.starts_with(dialling.abroad)) return "tel:+" + digits.substr(dialling.abroad.size());
  if (static_cast<int>(digits.size()) == dialling.digits) return "tel:+" + dialling.country + digits;
  if (digits.starts_with(dialling.trunk))
    return "tel:+" + dialling.country + digits.substr(dialling.trunk.size());
  return "tel:" + digits;
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
