// Edits of a YAML text that leave everything else, comments too, as the person wrote it.
#pragma once

#include "input/yaml/tree.h"

namespace input {

/// In double quotes where the words would mean something else to YAML.
std::string plainOrQuoted(const std::string& words);

class Editor {
 public:
  /// The text must have been read as this tree.
  Editor(const std::string& text, const Node& root);

  /// An entry of a map of the tree; null when it has none of this key.
  static const Entry* find(const Node& map, const std::string& key);

  /// A map or list in braces or brackets, its entries one after the other.
  bool isFlow(const Node& node) const;
  /// What is written behind the key, on one line.
  std::string valueText(const Node& map, const Entry& entry) const;

  /// A single value becomes another.
  void setWord(const Node& value, const std::string& word);
  /// A whole value, list or group, becomes another that is written on one line.
  void setValue(const Node& map, const Entry& entry, const std::string& value);
  /// The entries of these keys, as far as the map has them.
  void remove(const Node& map, const std::vector<std::string>& keys);
  /// The same with the comment right above it.
  void removeWithHead(const Node& map, const std::string& key);
  /// Turns the lines of an entry into comments. The map must not be in braces; 'gone' are the keys that are
  /// removed from it.
  void commentOut(const Node& map, const Entry& entry, const std::vector<std::string>& gone);
  /// Turns the lines of an item of a list into comments; in brackets it is taken out.
  void commentOutItem(const Node& list, std::size_t item);
  /// A new entry right after another of the same map. The comment is left out where entries share a line.
  void insertAfter(const Node& map, const Entry& entry, const std::string& words, const std::string& comment);
  /// A line above the one that the node begins in, as far to the right.
  void insertLineBefore(const Node& node, const std::string& line);

  /// The text with all edits.
  std::string result() const;

 private:
  struct Edit {
    std::size_t at = 0, length = 0;
    std::string words;
  };

  std::size_t offsetOf(Mark mark) const;
  std::size_t lineStart(std::size_t at) const;
  std::size_t lineEnd(std::size_t at) const;  // of its line break, or the text's end
  std::size_t indentAt(std::size_t line) const;
  bool standsBehindDash(const Entry& entry) const;
  /// Of a map that is not in braces: where the dash of an item finds its next key, or the entry's end.
  std::size_t nextKept(const Node& map, std::size_t i, const std::vector<std::string>& gone) const;
  std::size_t wordEnd(std::size_t at, bool inFlow, bool mayWrap) const;
  std::size_t bracketEnd(std::size_t at) const;
  std::size_t valueEnd(const Node& value, bool inFlow) const;
  /// Where the line begins that holds the dash of an item of a list without brackets.
  std::size_t dashLine(const Node& item) const;
  /// Past the line break of the last line of a value that has its lines for itself.
  std::size_t lastEnd(const Node& value) const;
  /// Past the line break of the last line of an entry that has its lines for itself.
  std::size_t entryEnd(const Entry& entry) const;

  std::string text_;
  std::vector<std::size_t> lines_;  // where each begins
  std::vector<Edit> edits_;
};

}  // namespace input
