// The text as md4c gets it, and what md4c does not tell: lines, attributes of headings, widths of columns.
#pragma once

#include "base/diagnostic.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace markup {

/// How a line begins: its quote marks and the blanks after them.
struct LineStart {
  int quotes = 0;
  std::size_t marksEnd = 0;  // byte after the last quote mark
  int indent = 0;            // blanks before the first word; the one that belongs to a quote mark not counted
  std::string_view words;    // from the first word on
};
LineStart startOf(std::string_view line);

struct HeadingAttributes {
  bool isWide = false;
  bool isFenced = false;
  bool isSmall = false;
  bool isWhole = false;
};

/// Where the line of dashes of a table stands, and how many dashes each column has there.
struct DelimiterRow {
  int line = 0;
  std::vector<int> dashes;
};

/// Lines are counted from 1 in the buffer, which may have more of them than the text had: 'original' gives
/// the text's own.
class Source {
 public:
  /// 'lines' tells where each line of the text comes from.
  Source(const std::string& text, const std::vector<base::SourcePos>& lines, base::Diagnostics& messages);

  const std::string& buffer() const { return buffer_; }
  int lineCount() const { return static_cast<int>(starts_.size()); }
  std::string_view line(int number) const;
  int original(int number) const;

  /// The line a piece of md4c's text stands on; 0 when it is not a part of the buffer.
  int lineOf(const char* text) const;
  HeadingAttributes attributesOf(int line) const;
  /// The first thematic break after a line; the line itself when there is none.
  int breakAfter(int line) const;
  std::optional<DelimiterRow> delimiterRowAfter(int line, std::size_t columns) const;

  void error(int line, std::string message, std::string hint) const;

 private:
  void addLine(std::string_view line, int original);
  void takeAttributes(std::string& line);
  void checkLine(std::string_view line) const;

  const std::vector<base::SourcePos>& lines_;
  base::Diagnostics& messages_;
  std::string buffer_;               // std::string: md4c 0.4.8 may read one byte past the end, which is a NUL
  std::vector<std::size_t> starts_;  // of each line
  std::vector<int> originals_;
  std::map<int, HeadingAttributes> attributes_;
};

/// How many cells a row of a table has.
std::size_t cellsIn(std::string_view row);

}  // namespace markup
