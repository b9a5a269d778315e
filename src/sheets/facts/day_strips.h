// The strips of a day in words: for each coat when every strip begins, and what it takes.
#pragma once

#include "sheets/facts/day_parts.h"

namespace sheets {

struct StripWords {
  std::string number, time, litres;  // '14' '13:41' '0.6 L'
};

/// A row of a table: some strips of one coat. Its first row names the coat; in the others 'deck' and 'note'
/// are empty.
struct StripRow {
  std::string deck, note;  // 'A Landing' '14 strips of 2 to 4 boards'
  std::vector<StripWords> strips;
};

/// '0.6 L'; a narrow last strip may take less than the smallest step that is printed: '<0.1 L'.
std::string stripLitres(std::int64_t steps, const Formatter& w);

/// All strips of a day in the order they are laid. Coats without strips have no row.
std::vector<StripRow> stripRows(const Day& day, const model::JobResult& x, const Formatter& w);

/// The same as facts, and an item for each column of that table beside the names.
FactList stripRowFacts(const Day& day, const model::JobResult& x, const Formatter& w);
FactList stripColumns(const Formatter& w);

}  // namespace sheets
