// Guards on the raw bytes of a file: yaml-cpp 0.7 takes broken UTF-8, NUL and control characters without a
// word, and an unclosed quote as long as the file ends in a newline.
#include "base/utf8.h"
#include "input/read.h"
#include "input/tree.h"

#include <fstream>
#include <iterator>

namespace input {
namespace {

constexpr std::size_t mostBytes = 1 << 20;

std::string hex(char32_t letter) {
  constexpr char digits[] = "0123456789ABCDEF";
  std::string s;
  for (int shift = 12; shift >= 0; shift -= 4) s += digits[letter >> shift & 15];
  return s;
}

bool isControl(char32_t c) {
  return (c < 0x20 && c != '\t' && c != '\n') || c == 0x7F || (c >= 0x80 && c < 0xA0);
}

std::string withUnixLineEnds(const std::string& bytes) {
  std::string text;
  text.reserve(bytes.size());
  for (std::size_t i = bytes.compare(0, 3, "\xEF\xBB\xBF") == 0 ? 3 : 0; i < bytes.size(); ++i) {
    if (bytes[i] == '\r' && i + 1 < bytes.size() && bytes[i + 1] == '\n') continue;
    text += bytes[i];
  }
  return text;
}

}  // namespace

std::optional<std::string> readFile(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return {};
  std::string bytes{std::istreambuf_iterator<char>(in), {}};
  if (in.bad() || (bytes.empty() && !in.eof())) return {};  // a folder
  return bytes;
}

std::optional<std::string> cleanText(const std::string& bytes, const std::string& file,
                                     base::Diagnostics& messages) {
  if (bytes.size() > mostBytes) {
    messages.error({file, 1, 1}, "", "the file is larger than 1 MiB",
                   "give a job file; long texts go into 'note' lines");
    return {};
  }
  std::string text = withUnixLineEnds(bytes);
  int line = 1, column = 1;
  bool isIndent = true, hasTab = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const char32_t c = base::nextLetter(text, at);
    if (c == 0xFFFD && text.compare(start, 3, "\xEF\xBF\xBD") != 0) {
      messages.error({file, line, column}, "", "this is not UTF-8 text", "save the file as UTF-8");
      return {};
    }
    if (isControl(c)) {
      messages.error({file, line, column}, "", "control character U+" + hex(c), "delete it");
      return {};
    }
    if (c == '\n') {
      ++line;
      column = 1;
      isIndent = true;
      hasTab = false;
      continue;
    }
    if (isIndent && c == '\t') hasTab = true;
    if (isIndent && c != ' ' && c != '\t') {
      isIndent = false;
      if (hasTab && c != '#') {
        messages.error({file, line, 1}, "", "a tab in the indentation", "indent with spaces");
        return {};
      }
    }
    ++column;
  }
  while (!text.empty() && (text.back() == '\n' || text.back() == ' ' || text.back() == '\t')) text.pop_back();
  return text;
}

}  // namespace input
