#include "markup/apostrophes.h"

#include "base/letters.h"

namespace markup {
namespace {

/// Of words: ASCII letters, and every letter beyond.
bool isLetter(char c) { return base::isLetter(c) || static_cast<unsigned char>(c) >= 0x80; }

/// What stands for the mark between two letters; 0 is none. Empty: it stays.
std::string_view curled(char before, char after) {
  if (isLetter(before)) return "\u2019";
  const bool begins = before == 0 || before == ' ' || before == '(' || before == '\n';
  return begins && isLetter(after) ? "\u2018" : "";
}

}  // namespace

void curlApostrophes(Inlines& words) {
  char before = 0;  // the last byte of the part before
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string& text = words[i].text;
    const bool isWords = words[i].figure.empty() && words[i].link.empty();
    for (std::size_t at = isWords ? text.find('\'') : std::string::npos; at != std::string::npos;) {
      const char left = at > 0 ? text[at - 1] : before;
      char right = 0;
      if (at + 1 < text.size()) right = text[at + 1];
      else if (i + 1 < words.size() && !words[i + 1].text.empty()) right = words[i + 1].text.front();
      const std::string_view mark = curled(left, right);
      if (!mark.empty()) text.replace(at, 1, mark);
      at = text.find('\'', at + 1);
    }
    before = text.empty() || !words[i].figure.empty() ? '\0' : text.back();
  }
}

}  // namespace markup
