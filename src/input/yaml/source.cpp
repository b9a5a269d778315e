// Guards on the raw bytes of a file: yaml-cpp 0.7 takes broken UTF-8, NUL and control characters without a
// word, and an unclosed quote as long as the file ends in a newline.
#include "base/hidden.h"
#include "base/letters.h"
#include "input/read.h"
#include "input/yaml/tree.h"

#include <filesystem>
#include <fstream>

namespace input {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t mostBytes = 1 << 20, mostFileBytes = 64 << 20;

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
  std::error_code failed;
  if (!fs::is_regular_file(file, failed)) return {};  // a pipe or a device may never end
  std::ifstream in(file, std::ios::binary);
  std::string bytes;
  char block[1 << 16];
  while (in.read(block, sizeof block) || in.gcount() > 0) {
    bytes.append(block, static_cast<std::size_t>(in.gcount()));
    if (bytes.size() > mostFileBytes) return {};
  }
  if (!in.eof()) return {};
  return bytes;
}

std::string whyUnreadable(const std::string& file) {
  std::error_code failed;
  const fs::file_status status = fs::status(file, failed);
  if (!fs::exists(status)) return "there is no such file";
  if (fs::is_directory(status)) return "it is a folder";
  if (!fs::is_regular_file(status)) return "it is a device or a pipe, not a file";
  if (fs::file_size(file, failed) > mostFileBytes && !failed) return "it is larger than 64 MiB";
  return "the system does not allow it";
}

std::optional<std::string> cleanText(const std::string& bytes, const std::string& file,
                                     base::Diagnostics& messages) {
  if (bytes.size() > mostBytes) {
    messages.error({file, 1, 1}, "", "the file is larger than 1 MiB",
                   "check that it is the right file; long texts go into 'note' lines");
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
    if (std::string hidden = base::hiddenLetter(c); !hidden.empty()) {
      messages.error({file, line, column}, "", std::move(hidden), "delete it");
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
