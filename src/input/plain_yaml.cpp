#include "input/plain_yaml.h"

#include <string_view>

namespace input {
namespace {

/// Thrown and caught in this file only: the text holds more than plain YAML.
struct NotPlain {};

constexpr int deepest = 40;
constexpr std::size_t longestKey = 100;  // the library knows a key of up to 1024 bytes

bool isLetterOrDigit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}
bool isKeyLetter(char c) { return isLetterOrDigit(c) || c == '_' || c == '-' || c == '.'; }

/// What the library takes for an empty value.
bool isNull(std::string_view word) {
  return word.empty() || word == "~" || word == "null" || word == "Null" || word == "NULL";
}

class Reader {
 public:
  explicit Reader(const std::string& text) : text_(text) {}

  Node read() {
    skipToWord();
    Node root = block(0);
    if (at_ < text_.size() || root.kind == Node::Kind::Word) throw NotPlain{};
    return root;
  }

 private:
  // ---- where we are

  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\n'; }
  std::size_t column() const { return at_ - lineStart_; }

  /// Marks are asked for in order, so that a long line is counted through once.
  Mark mark() {
    if (counted_ < lineStart_) counted_ = lineStart_, letters_ = 0;
    for (; counted_ < at_; ++counted_) letters_ += (text_[counted_] & 0xC0) != 0x80;
    return {line_, letters_ + 1};
  }

  void skipSpaces() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }

  /// True when the line ends here, a comment left aside; then the next word or the end of all follows.
  bool skipLineEnd() {
    const std::size_t from = at_;
    skipSpaces();
    if (at_ < text_.size() && text_[at_] == '#' && (at_ > from || at_ == lineStart_)) {
      while (at_ < text_.size() && text_[at_] != '\n') ++at_;
    }
    if (at_ < text_.size() && text_[at_] != '\n') return false;
    if (at_ < text_.size()) {
      lineStart_ = ++at_;
      ++line_;
    }
    return true;
  }

  /// To the next word at the beginning of its line.
  void skipToWord() {
    while (at_ < text_.size() && skipLineEnd()) {
    }
  }

  void endLine() {
    if (!skipLineEnd()) throw NotPlain{};
    skipToWord();
  }

  // ---- blocks: one entry a line

  bool isItem() const { return peek() == '-' && peek(1) == ' '; }

  /// A list or keys that begin here, in this column.
  Node block(int depth) {
    if (depth > deepest || at_ >= text_.size()) throw NotPlain{};
    return isItem() ? list(column(), depth) : map(column(), depth);
  }

  /// True when another line of this block begins here.
  bool goesOn(std::size_t indent) const {
    if (at_ >= text_.size() || column() < indent) return false;
    if (column() > indent) throw NotPlain{};
    return true;
  }

  Node list(std::size_t indent, int depth) {
    Node n;
    n.kind = Node::Kind::List;
    n.mark = mark();
    while (goesOn(indent) && isItem()) {
      ++at_;
      skipSpaces();
      n.items.push_back(isKey() ? map(column(), depth + 1) : lineValue(indent, depth));
    }
    return n;
  }

  Node map(std::size_t indent, int depth) {
    Node n;
    n.kind = Node::Kind::Map;
    n.mark = mark();
    while (goesOn(indent)) {
      if (!isKey()) throw NotPlain{};
      Entry entry = key();
      const Mark at = entry.mark;
      if (skipLineEnd()) {
        skipToWord();
        // A list may stand in the column of the key that holds it.
        const bool isInside = at_ < text_.size() && (column() > indent || (column() == indent && isItem()));
        if (isInside) entry.value = block(depth + 1);
        else entry.value.mark = at;
      } else {
        entry.value = lineValue(indent, depth);
      }
      n.entries.push_back(std::move(entry));
    }
    return n;
  }

  bool isKey() const {
    std::size_t i = at_;
    while (i < text_.size() && isKeyLetter(text_[i])) ++i;
    const bool ends = i < text_.size() && text_[i] == ':' &&
                      (i + 1 == text_.size() || text_[i + 1] == ' ' || text_[i + 1] == '\n');
    return ends && i > at_ && i - at_ <= longestKey && isLetterOrDigit(text_[at_]);
  }

  Entry key() {
    Entry entry;
    entry.mark = mark();
    const std::size_t from = at_;
    while (text_[at_] != ':') ++at_;
    entry.key = text_.substr(from, at_ - from);
    if (isNull(entry.key)) throw NotPlain{};
    ++at_;
    return entry;
  }

  /// The value on the rest of a line, and what follows it must not belong to it.
  Node lineValue(std::size_t indent, int depth) {
    skipSpaces();
    Node n = isFlow() ? flow(indent, depth + 1) : isQuote() ? quoted() : plain(false);
    endLine();
    if (at_ < text_.size() && column() > indent) throw NotPlain{};
    return n;
  }

  // ---- values

  bool isFlow() const { return peek() == '[' || peek() == '{'; }
  bool isQuote() const { return peek() == '"' || peek() == '\''; }

  Node word(const Mark& at, std::string value) {
    Node n;
    n.kind = Node::Kind::Word;
    n.mark = at;
    n.word = std::move(value);
    return n;
  }

  Node quoted() {
    const Mark at = mark();
    const char quote = text_[at_++];
    std::string value;
    while (true) {
      const char c = peek();
      if (c == '\n' || (c == '\\' && quote == '"')) throw NotPlain{};
      ++at_;
      if (c != quote) {
        value += c;
      } else if (quote == '\'' && peek() == '\'') {
        value += '\'';
        ++at_;
      } else {
        return word(at, std::move(value));
      }
    }
  }

  Node plain(bool isInFlow) {
    const Mark at = mark();
    const char first = peek();
    const bool isNumber = first == '-' && isLetterOrDigit(peek(1));
    const bool isText =
        (first & 0x80) != 0 || std::string_view("(+._/$").find(first) != std::string_view::npos;
    if (!isLetterOrDigit(first) && !isNumber && !isText) throw NotPlain{};
    const std::size_t from = at_;
    std::size_t until = at_;
    for (; peek() != '\n'; ++at_) {
      const char c = peek();
      if (c == '#' && text_[at_ - 1] == ' ') break;
      if (isInFlow && (c == ',' || c == ']' || c == '}')) break;
      if (isInFlow && (c == '[' || c == '{' || c == '?')) throw NotPlain{};
      if (c == ':' && (peek(1) == ' ' || peek(1) == '\n')) throw NotPlain{};
      if (c == ':' && isInFlow && std::string_view(",]}").find(peek(1)) != std::string_view::npos)
        throw NotPlain{};
      if (c != ' ') until = at_ + 1;
    }
    at_ = until;
    std::string value = text_.substr(from, until - from);
    if (isNull(value)) throw NotPlain{};
    return word(at, std::move(value));
  }

  /// Over line ends and comments inside brackets.
  void skipInFlow(std::size_t indent) {
    const int line = line_;
    while (at_ < text_.size() && skipLineEnd()) {
    }
    if (at_ >= text_.size() || (line_ > line && column() <= indent)) throw NotPlain{};
  }

  Node flow(std::size_t indent, int depth) {
    if (depth > deepest) throw NotPlain{};
    const bool isMap = peek() == '{';
    const char close = isMap ? '}' : ']';
    Node n;
    n.kind = isMap ? Node::Kind::Map : Node::Kind::List;
    n.mark = mark();
    ++at_;
    skipInFlow(indent);
    while (peek() != close) {
      if (isMap) {
        if (!isKey()) throw NotPlain{};
        n.entries.push_back(key());
        skipInFlow(indent);
        n.entries.back().value = flowValue(indent, depth);
      } else {
        if (isKey()) throw NotPlain{};
        n.items.push_back(flowValue(indent, depth));
      }
      skipInFlow(indent);
      if (peek() == close) break;
      if (peek() != ',') throw NotPlain{};
      ++at_;
      skipInFlow(indent);
      if (peek() == close) throw NotPlain{};
    }
    ++at_;
    return n;
  }

  Node flowValue(std::size_t indent, int depth) {
    if (isFlow()) return flow(indent, depth + 1);
    return isQuote() ? quoted() : plain(true);
  }

  const std::string& text_;
  std::size_t at_ = 0, lineStart_ = 0;
  int line_ = 1;
  std::size_t counted_ = 0;
  int letters_ = 0;
};

}  // namespace

std::optional<Node> readPlainYaml(const std::string& text) {
  if (text.empty() || text.find_first_of("\t\r") != std::string::npos) return {};
  if (text.find("\xEF\xBB\xBF") != std::string::npos) return {};
  try {
    return Reader(text).read();
  } catch (const NotPlain&) {
    return {};
  }
}

}  // namespace input
