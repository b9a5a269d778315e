// Numbers and strings as PDF syntax, by integer arithmetic only: no locale can change a byte.
#include "pdf/notation.h"

#include "base/fixed.h"
#include "base/utf8.h"

#include <stdexcept>

namespace pdf {
namespace {

void addThousandths(std::string& out, std::int64_t n) {
  if (n < 0) out += '-';
  const std::int64_t size = n < 0 ? -n : n;
  char digits[24];  // from the last one backwards
  char* const end = digits + sizeof digits;
  char* at = end;
  std::int64_t decimals = size % 1000;
  for (int i = 0; i < 3; ++i, decimals /= 10)
    if (at != end || decimals % 10 != 0) *--at = static_cast<char>('0' + decimals % 10);
  if (at != end) *--at = '.';
  std::int64_t whole = size / 1000;
  do *--at = static_cast<char>('0' + whole % 10);
  while ((whole /= 10) > 0);
  out.append(at, end);
}

void addUnit(std::string& out, unsigned unit) {
  constexpr char digits[] = "0123456789ABCDEF";
  for (int shift = 12; shift >= 0; shift -= 4) out += digits[unit >> shift & 15];
}

}  // namespace

namespace {

void addLength(std::string& out, typeset::Dim length) {
  // ISO 32000-1:2008, Annex C: a page is at most 14 400 units; drawings may reach beyond it, not by far.
  if (length > typeset::Dim::pt(30'000) || length < typeset::Dim::pt(-30'000))
    throw std::logic_error("internal error: a length is off the paper");
  addThousandths(out, base::mulDiv(length.raw, 10, 127, base::Round::HalfUp));
}

}  // namespace

std::string number(typeset::Dim length) {
  std::string out;
  addLength(out, length);
  return out;
}

void addNumber(std::string& out, typeset::Dim length) {
  addLength(out, length);
  out += ' ';
}

std::string channel(std::uint8_t value) {
  std::string out;
  addThousandths(out, base::mulDiv(value, 1000, 255, base::Round::HalfUp));
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

std::string words(std::string_view utf8) { return "<FEFF" + utf16(utf8) + ">"; }

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
