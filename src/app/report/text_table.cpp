#include "app/report/text_table.h"

#include "base/letters.h"

#include <algorithm>

namespace app {
namespace {

std::size_t letters(const std::string& s) {
  std::size_t n = 0;
  for (std::size_t at = 0; at < s.size(); ++n) base::nextLetter(s, at);
  return n;
}

}  // namespace

std::string textTable(const std::vector<TextRow>& rows) {
  std::vector<std::size_t> widths(rows.front().size());
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], letters(row[i]));
  }
  std::string s;
  for (const auto& row : rows) {
    std::string line = "  ";
    for (std::size_t i = 0; i < row.size(); ++i)
      line += row[i] + std::string(widths[i] - letters(row[i]) + 2, ' ');
    s += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return s;
}

}  // namespace app
