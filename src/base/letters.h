// Letters: those of ASCII whatever the locale, and UTF-8 text letter by letter.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

namespace base {

constexpr bool isDigit(char c) { return c >= '0' && c <= '9'; }
constexpr bool isCapital(char c) { return c >= 'A' && c <= 'Z'; }
constexpr bool isLetter(char c) { return isCapital(c) || (c >= 'a' && c <= 'z'); }

/// Digits, and at least one.
inline bool isDigits(std::string_view s) { return !s.empty() && std::all_of(s.begin(), s.end(), isDigit); }

constexpr char lowered(char c) { return isCapital(c) ? static_cast<char>(c - 'A' + 'a') : c; }

inline std::string lowered(std::string_view s) {
  std::string small(s);
  for (char& c : small) c = lowered(c);
  return small;
}

/// The letter that begins at byte 'at', which moves on to the next one. A broken sequence gives U+FFFD for
/// its first byte. 'at' must be inside the text.
constexpr char32_t nextLetter(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at++);
  if (first < 0x80) return first;
  const std::size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
  if (first < 0xC2 || first > 0xF4 || at + more > text.size()) return 0xFFFD;
  char32_t letter = first & (0x3Fu >> more);
  for (std::size_t i = 0; i < more; ++i) {
    if ((byte(at + i) & 0xC0) != 0x80) return 0xFFFD;
    letter = letter << 6 | (byte(at + i) & 0x3Fu);
  }
  constexpr char32_t smallest[] = {0, 0x80, 0x800, 0x10000};
  if (letter < smallest[more] || letter > 0x10FFFF || (letter >= 0xD800 && letter < 0xE000)) return 0xFFFD;
  at += more;
  return letter;
}

}  // namespace base
