// The tags of one template, each with its place, checked for everything that can be known without the facts.
#pragma once

#include "base/diagnostic.h"
#include "sheets/template/template.h"

#include <vector>

namespace sheets {

/// A stretch of words (never across a line break) or one tag.
struct Piece {
  enum class Kind { Words, Variable, Section, Inverted, Close, Partial };
  Kind kind = Kind::Words;
  std::string text;  // the words, or the name in the tag
  base::SourcePos pos;
  bool startsLine = false;    // the first piece of a line that is printed
  bool isStandalone = false;  // a partial alone on its line
  std::string prefix;         // of a standalone partial: the quote marks and blanks before it
};
using Pieces = std::vector<Piece>;

inline constexpr std::size_t templateSizeCap = 256 * 1024;
inline constexpr std::size_t sectionDepthCap = 64;

/// Cuts a template into pieces. Comments are gone; a line of nothing but section, close, comment and partial
/// tags, quote marks and blanks has left only its tags, without the line break. That way loops make no blank
/// lines in tables and quotes.
Pieces scanTemplate(const Template& source, base::Diagnostics& messages);

/// A tag as its author writes it: '{{#areas}}'.
std::string written(const Piece& tag);

}  // namespace sheets
