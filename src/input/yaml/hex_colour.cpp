#include "input/yaml/hex_colour.h"

namespace input {

model::Colour colour(const Field& f) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  unsigned value = 0;
  bool isHex = s->size() == 7 && s->front() == '#';
  for (std::size_t i = 1; isHex && i < 7; ++i) {
    const char c = (*s)[i];
    const int digit = c >= '0' && c <= '9'   ? c - '0'
                      : c >= 'a' && c <= 'f' ? c - 'a' + 10
                      : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                             : -1;
    isHex = digit >= 0;
    value = value * 16 + static_cast<unsigned>(digit);
  }
  if (!isHex) {
    f.error(inQuotes(*s) + " is not a colour", "write it in quotes like '#7a4522'");
    return {};
  }
  return {static_cast<std::uint8_t>(value >> 16), static_cast<std::uint8_t>(value >> 8 & 255),
          static_cast<std::uint8_t>(value & 255)};
}

}  // namespace input
