#include "markup/source.h"

#include "base/nearest.h"

#include <algorithm>
#include <functional>

namespace markup {
namespace {

bool isBlank(char c) { return c == ' ' || c == '\t'; }

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && isBlank(s.front())) s.remove_prefix(1);
  while (!s.empty() && isBlank(s.back())) s.remove_suffix(1);
  return s;
}

/// Whether an odd number of backslashes stands before the character.
bool isEscaped(std::string_view s, std::size_t at) {
  std::size_t n = 0;
  while (n < at && s[at - 1 - n] == '\\') ++n;
  return n % 2 == 1;
}

/// Three or more of '-', '*' or '_', with blanks between (CommonMark 0.31.2, 4.1).
bool isBreak(std::string_view words) {
  if (words.empty() || (words[0] != '-' && words[0] != '*' && words[0] != '_')) return false;
  const auto marks = std::count(words.begin(), words.end(), words[0]);
  const auto blanks = std::count_if(words.begin(), words.end(), isBlank);
  return marks >= 3 && marks + blanks == static_cast<std::ptrdiff_t>(words.size());
}

/// The cells of a row as they stand in the source.
std::vector<std::string_view> splitRow(std::string_view row) {
  row = trimmed(row);
  if (row.starts_with('|')) row.remove_prefix(1);
  if (row.ends_with('|') && !isEscaped(row, row.size() - 1)) row.remove_suffix(1);
  std::vector<std::string_view> cells;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= row.size(); ++i) {
    if (i < row.size() && (row[i] != '|' || isEscaped(row, i))) continue;
    cells.push_back(trimmed(row.substr(begin, i - begin)));
    begin = i + 1;
  }
  return cells;
}

/// The number of dashes of ':---:'; 0 for anything else.
int dashesIn(std::string_view cell) {
  if (cell.starts_with(':')) cell.remove_prefix(1);
  if (cell.ends_with(':')) cell.remove_suffix(1);
  const bool isDashes = std::all_of(cell.begin(), cell.end(), [](char c) { return c == '-'; });
  return isDashes ? static_cast<int>(cell.size()) : 0;
}

bool isHeading(std::string_view words) {
  const std::size_t level = std::min(words.find_first_not_of('#'), words.size());
  return level >= 1 && level <= 6 && level < words.size() && isBlank(words[level]);
}

std::vector<std::string> wordsIn(std::string_view s) {
  std::vector<std::string> words;
  bool isInside = false;
  for (const char c : s) {
    if (isBlank(c)) {
      isInside = false;
      continue;
    }
    if (!isInside) words.emplace_back();
    words.back() += c;
    isInside = true;
  }
  return words;
}

}  // namespace

LineStart startOf(std::string_view line) {
  LineStart start;
  bool ownsBlank = false;  // the last quote mark takes one blank with it
  std::size_t i = 0;
  for (; i < line.size(); ++i) {
    if (line[i] == '>') {
      ++start.quotes;
      start.marksEnd = i + 1;
      start.indent = 0;
      ownsBlank = true;
    } else if (isBlank(line[i])) {
      if (!ownsBlank) ++start.indent;
      ownsBlank = false;
    } else {
      break;
    }
  }
  start.words = line.substr(i);
  return start;
}

Source::Source(const std::string& text, const std::vector<base::SourcePos>& lines,
               base::Diagnostics& messages)
    : lines_(lines), messages_(messages) {
  int number = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    std::string line = text.substr(at, end - at);
    while (line.ends_with('\r')) line.pop_back();
    if (at == 0 && line.starts_with("\xEF\xBB\xBF")) line.erase(0, 3);
    at = end + 1;
    addLine(line, ++number);
    // The words after '[!kind]' are the box's title. An empty line keeps them apart from the paragraph below
    // and lets a table follow, which cannot begin right under a line of words.
    const LineStart start = startOf(line);
    if (start.quotes > 0 && start.words.starts_with("[!")) addLine(line.substr(0, start.marksEnd), number);
  }
}

void Source::addLine(std::string_view line, int original) {
  originals_.push_back(original);
  starts_.push_back(buffer_.size());
  std::string copy(line);
  takeAttributes(copy);
  checkLine(copy);
  buffer_ += copy + '\n';
}

/// Takes '{wide fenced}' off the end of a heading. Blanks take its place, so that offsets stay.
void Source::takeAttributes(std::string& line) {
  const std::size_t last = line.find_last_not_of(" \t");
  if (last == std::string::npos || line[last] != '}' || isEscaped(line, last)) return;
  const std::size_t open = line.rfind('{');
  if (open == std::string::npos || isEscaped(line, open) || !isHeading(startOf(line).words)) return;
  HeadingAttributes& attributes = attributes_[lineCount()];
  const auto words = wordsIn(std::string_view(line).substr(open + 1, last - open - 1));
  for (const auto& word : words) {
    if (word == "wide") attributes.isWide = true;
    else if (word == "fenced") attributes.isFenced = true;
    else if (word == "small") attributes.isSmall = true;
    else if (word == "whole") attributes.isWhole = true;
    else {
      const std::string near = base::nearest(word, {"wide", "fenced", "small", "whole"});
      error(lineCount(), "'" + word + "' is not an attribute of a heading" + base::didYouMean(near),
            "known are {wide}, {small}, {whole} and {fenced}");
    }
  }
  std::fill(line.begin() + static_cast<std::ptrdiff_t>(open), line.end(), ' ');
}

/// Link definitions print nothing, so md4c would drop them without a word.
void Source::checkLine(std::string_view line) const {
  const std::string_view words = startOf(line).words;
  const std::size_t close = words.find("]:");
  if (words.starts_with('[') && close != std::string_view::npos && !isEscaped(words, close) &&
      words.find(']') == close) {
    error(lineCount(), "link definitions are not read",
          "write the address behind the words: [words](https://...)");
  }
}

std::string_view Source::line(int number) const {
  if (number < 1 || number > lineCount()) return {};
  const std::size_t begin = starts_[static_cast<std::size_t>(number - 1)];
  return std::string_view(buffer_).substr(begin, buffer_.find('\n', begin) - begin);
}

int Source::original(int number) const {
  if (number < 1 || number > lineCount()) return 0;
  return originals_[static_cast<std::size_t>(number - 1)];
}

int Source::lineOf(const char* text) const {
  // std::less compares pointers into different objects too.
  const std::less<const char*> less;
  if (less(text, buffer_.data()) || !less(text, buffer_.data() + buffer_.size())) return 0;
  const auto offset = static_cast<std::size_t>(text - buffer_.data());
  return static_cast<int>(std::upper_bound(starts_.begin(), starts_.end(), offset) - starts_.begin());
}

HeadingAttributes Source::attributesOf(int line) const {
  const auto found = attributes_.find(line);
  return found == attributes_.end() ? HeadingAttributes{} : found->second;
}

int Source::breakAfter(int line) const {
  for (int n = line + 1; n <= lineCount(); ++n) {
    if (isBreak(startOf(this->line(n)).words)) return n;
  }
  return line;
}

std::optional<DelimiterRow> Source::delimiterRowAfter(int line, std::size_t columns) const {
  for (int n = line + 1; n <= lineCount(); ++n) {
    const std::string_view words = startOf(this->line(n)).words;
    if (words.find('|') == std::string_view::npos) continue;
    DelimiterRow row{n, {}};
    for (const auto cell : splitRow(words)) row.dashes.push_back(dashesIn(cell));
    const bool isWhole = std::find(row.dashes.begin(), row.dashes.end(), 0) == row.dashes.end();
    if (isWhole && row.dashes.size() == columns) return row;
  }
  return {};
}

void Source::error(int line, std::string message, std::string hint) const {
  messages_.error(base::placeOf(lines_, original(line)), "", std::move(message), std::move(hint));
}

std::size_t cellsIn(std::string_view row) { return splitRow(startOf(row).words).size(); }

}  // namespace markup
