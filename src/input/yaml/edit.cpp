#include "input/yaml/edit.h"

#include "base/letters.h"

#include <algorithm>

namespace input {
namespace {

/// Past the closing quote of a quoted value that begins at 'at'.
std::size_t quoteEnd(const std::string& text, std::size_t at) {
  const char quote = text[at];
  for (std::size_t i = at + 1; i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      if (quote == '"' || i + 1 >= text.size() || text[i + 1] != '\'') return i + 1;
      ++i;  // '' inside single quotes
    }
  }
  return text.size();
}

bool isComment(const std::string& text, std::size_t at) {
  return text[at] == '#' && (at == 0 || text[at - 1] == ' ' || text[at - 1] == '\t' || text[at - 1] == '\n');
}

}  // namespace

std::string plainOrQuoted(const std::string& words) {
  const bool isPlain =
      words.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789/._- ") ==
      std::string::npos;
  if (isPlain && !words.empty() && words.front() != ' ' && words.front() != '-' && words.back() != ' ')
    return words;
  std::string quoted = "\"";
  for (const char c : words) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + "\"";
}

Editor::Editor(const std::string& text, const Node&) : text_(text) {
  lines_.push_back(0);
  for (std::size_t i = 0; i < text_.size(); ++i) {
    if (text_[i] == '\n') lines_.push_back(i + 1);
  }
}

const Entry* Editor::find(const Node& map, const std::string& key) {
  for (const Entry& e : map.entries) {
    if (e.key == key) return &e;
  }
  return nullptr;
}

std::size_t Editor::offsetOf(Mark mark) const {
  std::size_t at = lines_.at(static_cast<std::size_t>(mark.line) - 1);
  for (int column = 1; column < mark.column && at < text_.size(); ++column) base::nextLetter(text_, at);
  return at;
}

std::size_t Editor::lineStart(std::size_t at) const {
  return *std::prev(std::upper_bound(lines_.begin(), lines_.end(), at));
}

std::size_t Editor::lineEnd(std::size_t at) const { return std::min(text_.find('\n', at), text_.size()); }

std::size_t Editor::indentAt(std::size_t line) const { return text_.find_first_not_of(' ', line) - line; }

bool Editor::isFlow(const Node& node) const {
  const char first = text_[offsetOf(node.mark)];
  return first == '{' || first == '[';
}

std::string Editor::valueText(const Node& map, const Entry& entry) const {
  const std::size_t from = offsetOf(entry.value.mark);
  const bool sharesLines = isFlow(map) || isFlow(entry.value);
  const std::size_t end = sharesLines ? valueEnd(entry.value, isFlow(map)) : entryEnd(entry);
  std::string words;
  for (std::size_t i = from; i < end; ++i) {
    const bool isSpace = text_[i] == ' ' || text_[i] == '\n' || text_[i] == '\t';
    if (!isSpace) words += text_[i];
    else if (!words.empty() && words.back() != ' ') words += ' ';
  }
  if (!words.empty() && words.back() == ' ') words.pop_back();
  return words;
}

std::size_t Editor::wordEnd(std::size_t at, bool inFlow, bool mayWrap) const {
  if (text_[at] == '"' || text_[at] == '\'') return quoteEnd(text_, at);
  std::size_t end = at;
  while (end < text_.size() && (mayWrap || text_[end] != '\n') && !isComment(text_, end)) {
    if (inFlow && std::string_view(",{}[]").find(text_[end]) != std::string_view::npos) break;
    ++end;
  }
  while (end > at && std::string_view(" \t\n").find(text_[end - 1]) != std::string_view::npos) --end;
  return end;
}

std::size_t Editor::bracketEnd(std::size_t at) const {
  int depth = 0;
  for (std::size_t i = at; i < text_.size(); ++i) {
    const char before = i == 0 ? ' ' : text_[i - 1];
    const bool opensQuote = (text_[i] == '"' || text_[i] == '\'') &&
                            std::string_view(" \n\t,[{:").find(before) != std::string_view::npos;
    if (opensQuote) i = quoteEnd(text_, i) - 1;
    else if (isComment(text_, i)) i = lineEnd(i);
    else if (text_[i] == '{' || text_[i] == '[') ++depth;
    else if ((text_[i] == '}' || text_[i] == ']') && --depth == 0) return i + 1;
  }
  return text_.size();
}

std::size_t Editor::valueEnd(const Node& value, bool inFlow) const {
  const std::size_t at = offsetOf(value.mark);
  return text_[at] == '{' || text_[at] == '[' ? bracketEnd(at) : wordEnd(at, inFlow, inFlow);
}

std::size_t Editor::entryEnd(const Entry& entry) const {
  const std::size_t key = offsetOf(entry.mark), column = key - lineStart(key);
  const std::size_t value = offsetOf(entry.value.mark);
  const bool isBracketed = value > key && (text_[value] == '{' || text_[value] == '[');
  const bool isQuoted = value > key && (text_[value] == '"' || text_[value] == '\'');
  std::size_t end = lineEnd(isBracketed ? bracketEnd(value) : isQuoted ? quoteEnd(text_, value) : key);
  if (isBracketed || isQuoted) return std::min(end + 1, text_.size());
  // Deeper lines belong to it, and the dashes of a list that stand below its key.
  std::size_t last = end;
  while (last < text_.size()) {
    const std::size_t line = last + 1, stop = lineEnd(line);
    if (line >= text_.size()) break;
    const std::size_t first = text_.find_first_not_of(' ', line);
    const bool isBlank = first == std::string::npos || first >= stop;
    const bool isDash =
        !isBlank && first - line == column && text_[first] == '-' && entry.value.kind == Node::Kind::List;
    if (!isBlank && first - line <= column && !isDash) break;
    if (!isBlank) end = stop;
    last = stop;
  }
  return std::min(end + 1, text_.size());
}

void Editor::setWord(const Node& value, const std::string& word) {
  const std::size_t at = offsetOf(value.mark);
  const bool isQuoted = text_[at] == '"' || text_[at] == '\'';
  // Numbers, dates and ids hold no comma or brace: they end alike inside and outside of braces.
  edits_.push_back({at, (isQuoted ? quoteEnd(text_, at) : wordEnd(at, true, false)) - at, word});
}

void Editor::setValue(const Node& map, const Entry& entry, const std::string& value) {
  const std::size_t at = offsetOf(entry.value.mark);
  if (isFlow(map) || text_[at] == '[' || text_[at] == '{') {
    edits_.push_back({at, valueEnd(entry.value, isFlow(map)) - at, value});
    return;
  }
  const std::size_t key = offsetOf(entry.mark);
  edits_.push_back({key, entryEnd(entry) - key, entry.key + ": " + value + "\n"});
}

bool Editor::standsBehindDash(const Entry& entry) const {
  const std::size_t key = offsetOf(entry.mark);
  return text_.find_first_not_of(' ', lineStart(key)) < key;
}

std::size_t Editor::nextKept(const Node& map, std::size_t i, const std::vector<std::string>& gone) const {
  for (std::size_t next = i + 1; next < map.entries.size(); ++next) {
    const Entry& entry = map.entries[next];
    if (std::find(gone.begin(), gone.end(), entry.key) == gone.end()) return offsetOf(entry.mark);
  }
  return entryEnd(map.entries[i]);
}

void Editor::remove(const Node& map, const std::vector<std::string>& keys) {
  const Entry* before = nullptr;  // the last entry passed, kept or not
  bool hasKept = false;
  for (std::size_t i = 0; i < map.entries.size(); ++i) {
    const Entry& entry = map.entries[i];
    const bool goes = std::find(keys.begin(), keys.end(), entry.key) != keys.end();
    const std::size_t key = offsetOf(entry.mark);
    if (goes && !isFlow(map) && standsBehindDash(entry)) {
      edits_.push_back({key, nextKept(map, i, keys) - key, ""});
    } else if (goes && !isFlow(map)) {
      const std::size_t from = lineStart(key);
      edits_.push_back({from, entryEnd(entry) - from, ""});
    } else if (goes) {
      // With the comma before it, or, as long as none was kept, with the one after it.
      const bool isLast = i + 1 == map.entries.size();
      const std::size_t from = hasKept ? valueEnd(before->value, true) : key;
      const std::size_t to =
          hasKept || isLast ? valueEnd(entry.value, true) : offsetOf(map.entries[i + 1].mark);
      edits_.push_back({from, to - from, ""});
    }
    hasKept = hasKept || !goes;
    before = &entry;
  }
}

void Editor::removeWithHead(const Node& map, const std::string& key) {
  remove(map, {key});
  const Entry* entry = find(map, key);
  if (entry == nullptr || isFlow(map) || entry == &map.entries.front()) return;
  const std::size_t end = lineStart(offsetOf(entry->mark));
  std::size_t from = end;
  while (from > 0 && text_[lineStart(from - 1) + indentAt(lineStart(from - 1))] == '#')
    from = lineStart(from - 1);
  edits_.push_back({from, end - from, ""});
}

void Editor::commentOut(const Node& map, const Entry& entry, const std::vector<std::string>& gone) {
  const std::size_t key = offsetOf(entry.mark), column = key - lineStart(key), end = entryEnd(entry);
  if (standsBehindDash(entry)) {  // the dash stays where it is, for the next key
    const auto i = static_cast<std::size_t>(&entry - map.entries.data());
    insertLineBefore(map, "# " + entry.key + ": " + valueText(map, entry));
    edits_.push_back({key, nextKept(map, i, gone) - key, ""});
    return;
  }
  for (std::size_t line = lineStart(key); line < end; line = lineEnd(line) + 1) {
    if (text_[line] != '\n') edits_.push_back({line + std::min(column, indentAt(line)), 0, "# "});
  }
}

std::size_t Editor::dashLine(const Node& item) const {
  std::size_t line = lineStart(offsetOf(item.mark));
  while (line > 0 && text_[line + indentAt(line)] != '-') line = lineStart(line - 1);
  return line;
}

std::size_t Editor::lastEnd(const Node& value) const {
  const auto pastLine = [&](std::size_t at) { return std::min(lineEnd(at) + 1, text_.size()); };
  if (isFlow(value) || (value.entries.empty() && value.items.empty()))
    return pastLine(valueEnd(value, false));
  if (!value.items.empty()) return lastEnd(value.items.back());
  const Entry& last = value.entries.back();
  const bool isNested = !last.value.entries.empty() || !last.value.items.empty();
  return isNested ? lastEnd(last.value) : entryEnd(last);
}

void Editor::commentOutItem(const Node& list, std::size_t item) {
  const bool isLast = item + 1 == list.items.size();
  if (isFlow(list)) {
    const std::size_t from = offsetOf(list.items[item].mark);
    const std::size_t begin = isLast && item > 0 ? valueEnd(list.items[item - 1], true) : from;
    const std::size_t end = isLast ? valueEnd(list.items[item], true) : offsetOf(list.items[item + 1].mark);
    edits_.push_back({begin, end - begin, ""});
    return;
  }
  const std::size_t from = dashLine(list.items[item]), dash = indentAt(from);
  const std::size_t end = isLast ? lastEnd(list.items[item]) : dashLine(list.items[item + 1]);
  for (std::size_t line = from; line < end; line = lineEnd(line) + 1) {
    const std::size_t first = std::min(text_.find_first_not_of(' ', line), lineEnd(line));
    if (first < lineEnd(line) && text_[first] != '#')
      edits_.push_back({line + std::min(dash, first - line), 0, "# "});
  }
}

void Editor::insertAfter(const Node& map, const Entry& entry, const std::string& words,
                         const std::string& comment) {
  if (isFlow(map)) {
    edits_.push_back({valueEnd(entry.value, true), 0, ", " + words});
    return;
  }
  const std::size_t key = offsetOf(entry.mark), column = key - lineStart(key), end = entryEnd(entry);
  const std::string newLine = end > 0 && text_[end - 1] != '\n' ? "\n" : "";
  edits_.push_back({end, 0,
                    newLine + std::string(column, ' ') + words + (comment.empty() ? "" : "   # " + comment) +
                        (newLine.empty() ? "\n" : "")});
}

void Editor::insertLineBefore(const Node& node, const std::string& line) {
  const std::size_t from = lineStart(offsetOf(node.mark));
  edits_.push_back({from, 0, std::string(indentAt(from), ' ') + line + "\n"});
}

std::string Editor::result() const {
  std::vector<Edit> edits = edits_;
  // Insertions come before what is replaced at the same place, in the order they were asked for.
  std::stable_sort(edits.begin(), edits.end(), [](const Edit& a, const Edit& b) {
    return a.at != b.at ? a.at < b.at : (a.length == 0) > (b.length == 0);
  });
  std::string text;
  std::size_t at = 0;
  for (const Edit& e : edits) {
    if (e.at > at) text += text_.substr(at, e.at - at);
    text += e.words;
    at = std::max(at, e.at + e.length);
  }
  text += text_.substr(at);
  while (!text.empty() && text.back() == '\n') text.pop_back();
  return text + "\n";
}

}  // namespace input
