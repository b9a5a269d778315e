#include "forecast/csv_rows.h"

#include <algorithm>
#include <optional>
#include <string_view>

namespace forecast {
namespace {

constexpr int mostLines = 10'000;  // a hundred days in steps of a quarter of an hour
constexpr std::size_t mostCells = 200;

int letters(std::string_view s) {
  return static_cast<int>(std::count_if(s.begin(), s.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

char separatorOf(std::string_view line) {
  char best = ',';
  for (const char c : {';', '\t'}) {
    if (std::count(line.begin(), line.end(), c) > std::count(line.begin(), line.end(), best)) best = c;
  }
  return best;
}

/// The text of a cell that begins with a quote, and how many bytes it takes; nothing where the quote does not
/// close.
std::optional<std::pair<std::string, std::size_t>> quoted(std::string_view line) {
  std::string text;
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (line[i] != '"') text += line[i];
    else if (i + 1 < line.size() && line[i + 1] == '"') text += line[i++];
    else return std::pair{text, i + 1};
  }
  return {};
}

std::string trimmed(std::string_view s) {
  const auto from = s.find_first_not_of(" \t");
  return from == std::string_view::npos ? ""
                                        : std::string(s.substr(from, s.find_last_not_of(" \t") - from + 1));
}

struct Reader {
  const std::string& file;
  base::Diagnostics& messages;
  char separator = ',';

  void error(int line, int column, std::string message, std::string hint) {
    messages.error({file, line, column}, "", std::move(message), std::move(hint));
  }

  std::vector<Cell> cellsOf(std::string_view rest, int line) {
    std::vector<Cell> cells;
    for (int column = 1;;) {
      if (cells.size() == mostCells) {
        error(line, column, "this line has more than " + std::to_string(mostCells) + " values",
              "leave out what is not needed");
        return cells;
      }
      const auto inQuotes = rest.starts_with("\"") ? quoted(rest) : std::nullopt;
      if (rest.starts_with("\"") && !inQuotes)
        error(line, column, "this quote does not close", "close it on the same line");
      const std::size_t end = rest.find(separator, inQuotes ? inQuotes->second : 0);
      cells.push_back({inQuotes ? inQuotes->first : trimmed(rest.substr(0, end)), column});
      if (end == std::string_view::npos) return cells;
      column += letters(rest.substr(0, end + 1));
      rest.remove_prefix(end + 1);
    }
  }
};

}  // namespace

Table readRows(const std::string& text, const std::string& file, base::Diagnostics& messages) {
  Table table;
  Reader reader{file, messages};
  int line = 0;
  bool isNew = true;
  for (std::size_t from = 0; from < text.size() && messages.ok();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    const std::string_view here = std::string_view(text).substr(from, end - from);
    from = end + 1;
    if (++line > mostLines) {
      reader.error(line, 1, "more than " + std::to_string(mostLines) + " lines",
                   "leave out what lies behind the job");
      break;
    }
    if (here.find_first_not_of(" ,;\t") == std::string_view::npos) {
      isNew = true;
      continue;
    }
    if (table.sections.empty()) table.separator = reader.separator = separatorOf(here);
    if (isNew) table.sections.emplace_back();
    isNew = false;
    table.sections.back().push_back({line, reader.cellsOf(here, line)});
  }
  if (!messages.ok()) table.sections.clear();
  return table;
}

}  // namespace forecast
