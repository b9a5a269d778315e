// Where a word ends without a space being set: at the end of a line, before the next column.
#pragma once

#include "typeset/page.h"

#include <cstdint>
#include <optional>
#include <unordered_set>

namespace pdf {

/// The runs of tagged text that need a space behind them, so that readers who follow the tags do not join
/// two words: ISO 32000-1:2008, 14.8.2.5. A hyphen or a slash at the end of a line takes none.
class WordEnds {
 public:
  explicit WordEnds(const typeset::Document& document);
  bool isAfter(const typeset::TextRun& run) const { return ends_.contains(&run); }

 private:
  std::unordered_set<const typeset::TextRun*> ends_;
};

/// The glyph of a face's space; nothing when it has none.
std::optional<std::uint32_t> spaceOf(const typeset::FontFace& face);

}  // namespace pdf
