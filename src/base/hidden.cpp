#include "base/hidden.h"

#include "base/letters.h"

namespace base {
namespace {

struct Range {
  char32_t first, last;
};

constexpr Range controls[] = {{0x00, 0x08}, {0x0B, 0x1F}, {0x7F, 0x9F}};
constexpr Range invisible[] = {
    {0x034F, 0x034F}, {0x061C, 0x061C}, {0x115F, 0x1160}, {0x180B, 0x180F},   {0x200B, 0x200F},
    {0x2028, 0x202E}, {0x2060, 0x206F}, {0x3164, 0x3164}, {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF},
    {0xFFA0, 0xFFA0}, {0xFFF9, 0xFFFB}, {0xFFFE, 0xFFFF}, {0xE0000, 0xE01EF},
};
constexpr Range privateUse[] = {{0xE000, 0xF8FF}, {0xF0000, 0x10FFFF}};

template <std::size_t N>
bool isIn(const Range (&ranges)[N], char32_t letter) {
  for (const Range& r : ranges) {
    if (letter >= r.first && letter <= r.last) return true;
  }
  return false;
}

std::string hex(char32_t number, int digits) {
  constexpr char all[] = "0123456789ABCDEF";
  std::string s;
  for (; number > 0 || digits > 0; number >>= 4, --digits) s.insert(s.begin(), all[number & 15]);
  return s;
}

bool isBroken(std::string_view text, std::size_t at, char32_t letter) {
  return letter == 0xFFFD && text.substr(at, 3) != "\xEF\xBF\xBD";
}

}  // namespace

std::string hiddenLetter(char32_t letter) {
  if (letter > 0x1F && letter < 0x7F) return {};
  const char* kind = isIn(controls, letter)     ? "control"
                     : isIn(invisible, letter)  ? "invisible"
                     : isIn(privateUse, letter) ? "private-use"
                                                : nullptr;
  return kind == nullptr ? std::string{} : std::string(kind) + " character U+" + hex(letter, 4);
}

std::string firstHiddenLetter(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    if (auto found = hiddenLetter(nextLetter(text, at)); !found.empty()) return found;
  }
  return {};
}

std::string printable(std::string_view text, Lines lines) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const char32_t letter = nextLetter(text, at);
    const bool isSpace = letter == '\n' || letter == '\t';
    if (isBroken(text, start, letter)) out += "<" + hex(static_cast<unsigned char>(text[start]), 2) + ">";
    else if ((isSpace && lines == Lines::Join) || !hiddenLetter(letter).empty())
      out += "<U+" + hex(letter, 4) + ">";
    else out += text.substr(start, at - start);
  }
  return out;
}

}  // namespace base
