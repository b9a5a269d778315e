// Cells of comma-separated text (RFC 4180, 2005), each with its place. Written out here: libcsv tells no
// columns of its cells, and the parser of libfccp wants all columns named when it is compiled.
#pragma once

#include "base/diagnostic.h"

#include <string>
#include <vector>

namespace forecast {

struct Cell {
  std::string text;
  int column = 1;  // in letters
};

struct Row {
  int line = 0;
  std::vector<Cell> cells;
};

/// Rows up to an empty line; the first one names the columns.
using Section = std::vector<Row>;

struct Table {
  std::vector<Section> sections;
  char separator = ',';  // or a semicolon, with decimal commas, or a tab
};

/// Errors, and no sections, for more than 10,000 lines, 200 cells in one, and quotes that do not close.
Table readRows(const std::string& text, const std::string& file, base::Diagnostics& messages);

}  // namespace forecast
