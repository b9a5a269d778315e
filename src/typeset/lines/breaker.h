// Total-fit line breaking: Knuth and Plass, Breaking Paragraphs into Lines (1981), in whole numbers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace typeset {

/// What a paragraph is made of for the breaker. Widths are in any one unit.
struct BreakItem {
  enum class Kind { Box, Glue, Penalty };
  Kind kind = Kind::Box;
  std::int64_t width = 0;  // of a penalty: what a break here adds to the line (a hyphen)
  std::int64_t stretch = 0, shrink = 0;
  int penalty = 0;
  bool isFlagged = false;  // two such breaks in a row are bad
};

inline constexpr int neverBreak = 10'000, mustBreak = -10'000;

struct BreakRules {
  std::int64_t width = 0;               // of every line
  std::int64_t lineStretch = 0;         // white that may stand at the end of a line: ragged words
  std::int64_t tolerance = 10'000'000;  // greatest ratio, in millionths
};

struct BrokenLine {
  std::size_t begin = 0, end = 0;  // items; begin is the first that prints, end the break
  std::int64_t ratio = 0;          // how far white is stretched (above 0) or shrunk, in millionths
};

/// Breaks at the places with the fewest demerits. When no way keeps to the rules, lines that do not keep to
/// them come out (their ratio says so): nothing is lost.
std::vector<BrokenLine> breakIntoLines(const std::vector<BreakItem>& items, const BreakRules& rules);

}  // namespace typeset
