// Numbers and strings as PDF syntax, by integer arithmetic only: no locale can change a byte.
#include "pdf/objects/notation.h"

#include "base/fixed.h"
#include "base/letters.h"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <stdexcept>

namespace pdf {
namespace {

/// A count of hundredths or thousandths, without the noughts at the end; 'behind' follows it unless it is 0.
void addDecimal(std::string& out, std::int64_t n, std::int64_t parts, char behind) {
  char text[32];
  char* at = text;
  if (n < 0) *at++ = '-';
  const std::int64_t size = n < 0 ? -n : n;
  at = std::to_chars(at, std::end(text), size / parts).ptr;
  std::int64_t rest = size % parts;
  if (rest != 0) *at++ = '.';
  for (; rest != 0; rest %= parts) {
    parts /= 10;
    *at++ = static_cast<char>('0' + rest / parts);
  }
  if (behind != 0) *at++ = behind;
  out.append(text, at);
}

void addUnit(std::string& out, unsigned unit) {
  constexpr char digits[] = "0123456789ABCDEF";
  for (int shift = 12; shift >= 0; shift -= 4) out += digits[unit >> shift & 15];
}

void addLength(std::string& out, typeset::Dim length, char behind) {
  // ISO 32000-1:2008, Annex C: a page is at most 14 400 units; drawings may reach beyond it, not by far.
  if (length > typeset::Dim::pt(30'000) || length < typeset::Dim::pt(-30'000))
    throw std::logic_error("internal error: a length is off the paper");
  const std::int64_t half = length.raw < 0 ? -63 : 63;  // of the 127 that make a hundredth of a point
  addDecimal(out, (length.raw + half) / 127, 100, behind);
}

}  // namespace

std::string number(typeset::Dim length) {
  std::string out;
  addLength(out, length, 0);
  return out;
}

void addNumber(std::string& out, typeset::Dim length) { addLength(out, length, ' '); }

std::string channel(std::uint8_t value) {
  std::string out;
  addDecimal(out, base::mulDiv(value, 1000, 255, base::Round::HalfUp), 1000, 0);
  return out;
}

std::string utf16(std::string_view utf8) {
  std::string out;
  for (std::size_t at = 0; at < utf8.size();) {
    const char32_t letter = base::nextLetter(utf8, at);
    if (letter < 0x10000) {
      addUnit(out, letter);
    } else {
      addUnit(out, 0xD800 | (letter - 0x10000) >> 10);
      addUnit(out, 0xDC00 | ((letter - 0x10000) & 0x3FF));
    }
  }
  return out;
}

std::string words(std::string_view utf8) {
  // What both encodings of text know alike is a quarter as long in the older one.
  const bool isPlain = std::all_of(utf8.begin(), utf8.end(), [](char c) { return c >= ' ' && c <= '~'; });
  return isPlain ? literal(utf8) : "<FEFF" + utf16(utf8) + ">";
}

void addEscaped(std::string& out, unsigned char byte) {
  if (byte == '\r') {  // readers turn a bare one into a line feed
    out += "\\r";
    return;
  }
  if (byte == '(' || byte == ')' || byte == '\\') out += '\\';
  out += static_cast<char>(byte);
}

std::string literal(std::string_view bytes) {
  std::string out = "(";
  for (const char c : bytes) addEscaped(out, static_cast<unsigned char>(c));
  return out + ")";
}

}  // namespace pdf
