// Hints that say what to write are taken at their word: typed in, they make the error go away.
#pragma once

#include "input/yaml/edit.h"

#include <catch2/catch.hpp>
#include <regex>
#include <set>

namespace fixture {

/// What a hint says to write: 140 mm of "write '140 mm' or '14 cm'", [6 m, 4 m] of "write [6 m, 4 m]", -44.7
/// of "write -44.7"; nothing of other hints.
inline std::vector<std::string> typedOf(const std::string& hint) {
  static const std::regex quoted("write '[^']*'( or '[^']*')*"), bare(R"(write (-?[0-9][0-9.]*|\[[^\]]*\]))");
  std::vector<std::string> all;
  std::smatch found;
  if (std::regex_match(hint, found, bare)) all.push_back(found[1]);
  else if (std::regex_match(hint, quoted))
    for (std::size_t at = hint.find('\''); at != std::string::npos; at = hint.find('\'', at)) {
      const std::size_t end = hint.find('\'', at + 1);
      all.push_back(hint.substr(at + 1, end - at - 1));
      at = end + 1;
    }
  return all;
}

namespace hints {

inline bool isAt(const input::Mark& mark, const base::SourcePos& pos) {
  return mark.line == pos.line && mark.column == pos.column;
}

/// Puts what is typed in the place of the value that begins there.
inline bool replaceAt(input::Editor& editor, const input::Node& node, const base::SourcePos& pos,
                      const std::string& typed) {
  for (const auto& item : node.items) {
    const bool isWord = item.kind == input::Node::Kind::Word;
    if (isWord && isAt(item.mark, pos)) return editor.setWord(item, typed), true;
    if (replaceAt(editor, item, pos, typed)) return true;
  }
  for (const auto& entry : node.entries) {
    const bool isNested = !entry.value.items.empty() || !entry.value.entries.empty();
    if (isNested && replaceAt(editor, entry.value, pos, typed)) return true;
    if (isAt(entry.value.mark, pos)) return editor.setValue(node, entry, typed), true;
  }
  return false;
}

}  // namespace hints

/// Types each hint in and reads the text again, as 'read' does: the error at that path has to be gone.
template <class Read>
void checkHints(const std::string& text, const base::Diagnostics& messages, Read read) {
  for (const base::Diagnostic& d : messages.all()) {
    for (const std::string& typed : typedOf(d.hint)) {
      base::Diagnostics ignored;
      const auto clean = input::cleanText(text, "", ignored);
      const auto root = input::parseTree(clean.value(), "", ignored);
      input::Editor editor(*clean, root.value());
      INFO(base::format(d));
      REQUIRE(hints::replaceAt(editor, *root, d.pos, typed));
      base::Diagnostics again;
      read(editor.result(), again);
      for (const base::Diagnostic& left : again.all()) {
        INFO(typed << " is told to be typed in, then: " << base::format(left));
        CHECK_FALSE((left.severity == base::Severity::Error && left.path == d.path));
      }
    }
  }
}

}  // namespace fixture
