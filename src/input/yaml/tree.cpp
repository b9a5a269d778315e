#include "input/yaml/tree.h"

#include "base/hidden.h"
#include "input/yaml/quick_yaml.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <sstream>

namespace input {
namespace {

/// Lines of the text, to count letters where the library counts bytes.
class Lines {
 public:
  explicit Lines(const std::string& text) : text_(text), starts_{0} {
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] == '\n') starts_.push_back(i + 1);
    }
  }

  Mark at(const YAML::Mark& m) {
    const int line = m.line < 0 ? 0 : m.line;
    if (static_cast<std::size_t>(line) >= starts_.size()) return {static_cast<int>(starts_.size()), 1};
    // Events come in order: a long line is counted through once, not once for each of its values.
    if (line != line_ || m.column < bytes_) {
      line_ = line;
      bytes_ = 0;
      column_ = 1;
    }
    std::size_t i = starts_[static_cast<std::size_t>(line)] + static_cast<std::size_t>(bytes_);
    for (; bytes_ < m.column && i < text_.size(); ++bytes_, ++i) {
      if ((text_[i] & 0xC0) != 0x80) ++column_;
    }
    return {line + 1, column_};
  }

  /// The first quote that begins a value behind the place.
  Mark firstQuoteAfter(const YAML::Mark& m) {
    YAML::Mark at;
    for (std::size_t i = 0; i < text_.size(); ++i) {
      const bool begins = i == 0 || std::string_view(" \n[{,:").find(text_[i - 1]) != std::string_view::npos;
      const bool isBehind = at.line > m.line || (at.line == m.line && at.column > m.column);
      if (isBehind && begins && (text_[i] == '"' || text_[i] == '\'')) return this->at(at);
      ++at.column;
      if (text_[i] == '\n') {
        ++at.line;
        at.column = 0;
      }
    }
    return this->at(m);
  }

 private:
  const std::string& text_;
  std::vector<std::size_t> starts_;
  int line_ = 0, bytes_ = 0, column_ = 1;  // as far as the last line is counted
};

/// Builds the tree from the parser's events.
class Builder : public YAML::EventHandler {
 public:
  Builder(Lines& lines, const std::string& file, base::Diagnostics& messages)
      : lines_(lines), file_(file), messages_(messages) {}

  Node root;
  std::optional<Mark> start;  // of the document
  YAML::Mark last;            // of the last value or key that was complete

  /// The place of the list or group of keys that is not complete yet.
  std::optional<Mark> innermost() const {
    if (open_.empty()) return {};
    return open_.back().mark;
  }

  void OnDocumentStart(const YAML::Mark& m) override { start = lines_.at(m); }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& m, YAML::anchor_t anchor) override {
    refuseAnchor(m, anchor);
    if (isKey()) return badKey(m);
    Node n;
    // The library places an empty value where the next word begins.
    n.mark = open_.empty()                          ? lines_.at(m)
             : open_.back().kind == Node::Kind::Map ? open_.back().entries.back().mark
                                                    : open_.back().mark;
    add(std::move(n));
  }

  void OnAlias(const YAML::Mark& m, YAML::anchor_t) override {
    error(m, "aliases (*name) are not allowed", "quote the value if it begins with *");
    if (isKey()) return badKey(m);
    add(broken(m));
  }

  void OnScalar(const YAML::Mark& m, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    last = m;
    refuseAnchor(m, anchor);
    refuseTag(m, tag);
    if (isKey()) {
      if (value == "<<") error(m, "merge keys (<<) are not allowed", "write the keys again");
      open_.back().entries.push_back({value, lines_.at(m), {}});
      awaitsValue_.back() = true;
      return;
    }
    Node n;
    n.kind = Node::Kind::Word;
    n.mark = lines_.at(m);
    n.word = value;
    add(std::move(n));
  }

  void OnSequenceStart(const YAML::Mark& m, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    begin(m, tag, anchor, Node::Kind::List);
  }
  void OnSequenceEnd() override { end(); }
  void OnMapStart(const YAML::Mark& m, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    begin(m, tag, anchor, Node::Kind::Map);
  }
  void OnMapEnd() override { end(); }

 private:
  /// The next value stands where a key belongs.
  bool isKey() const {
    return !open_.empty() && open_.back().kind == Node::Kind::Map && !awaitsValue_.back();
  }

  void badKey(const YAML::Mark& m) {
    error(m, "a key must be a word", "write it like key: value");
    open_.back().entries.push_back({"", lines_.at(m), {}});
    awaitsValue_.back() = true;
  }

  void begin(const YAML::Mark& m, const std::string& tag, YAML::anchor_t anchor, Node::Kind kind) {
    refuseAnchor(m, anchor);
    refuseTag(m, tag);
    isInKey_.push_back(isKey());
    if (isInKey_.back()) error(m, "a key must be a word", "write it like key: value");
    Node n;
    n.kind = kind;
    n.mark = lines_.at(m);
    open_.push_back(std::move(n));
    awaitsValue_.push_back(false);
  }

  void end() {
    Node n = std::move(open_.back());
    const bool wasKey = isInKey_.back();
    open_.pop_back();
    awaitsValue_.pop_back();
    isInKey_.pop_back();
    if (!wasKey) return add(std::move(n));
    open_.back().entries.push_back({"", n.mark, {}});
    awaitsValue_.back() = true;
  }

  void add(Node n) {
    if (open_.empty()) {
      root = std::move(n);
    } else if (open_.back().kind == Node::Kind::List) {
      open_.back().items.push_back(std::move(n));
    } else {
      open_.back().entries.back().value = std::move(n);
      awaitsValue_.back() = false;
    }
  }

  Node broken(const YAML::Mark& m) {
    Node n;
    n.kind = Node::Kind::Broken;
    n.mark = lines_.at(m);
    return n;
  }

  void refuseAnchor(const YAML::Mark& m, YAML::anchor_t anchor) {
    if (anchor != 0) error(m, "anchors (&name) are not allowed", "quote the value if it begins with &");
  }

  void refuseTag(const YAML::Mark& m, const std::string& tag) {
    // '?' is a plain value, '!' a quoted one.
    if (!tag.empty() && tag != "?" && tag != "!")
      error(m, "tags (!name) are not allowed", "quote the value if it begins with !");
  }

  void error(const YAML::Mark& m, std::string message, std::string hint) {
    const Mark at = lines_.at(m);
    messages_.error({file_, at.line, at.column}, "", std::move(message), std::move(hint));
  }

  Lines& lines_;
  const std::string& file_;
  base::Diagnostics& messages_;
  std::vector<Node> open_;
  std::vector<bool> awaitsValue_, isInKey_;
};

struct Explanation {
  Mark at;
  std::string message, hint;
};

/// The library's texts name its own grammar, and its place is where it gave up; these say what usually went
/// wrong, and where it began.
Explanation explain(const YAML::Exception& e, Lines& lines, const Builder& builder) {
  const auto has = [&](const char* part) { return e.msg.find(part) != std::string::npos; };
  const Mark at = lines.at(e.mark);
  const std::string columns = "lines of one list or one group of keys begin in the same column";
  if (has("EOF in scalar") || has("end of quoted"))
    return {lines.firstQuoteAfter(builder.last), "a quote is opened and never closed",
            "close it; a value that has quotes of one kind in it goes in quotes of the other kind"};
  if (has("end of map flow"))
    return {builder.innermost().value_or(at), "this { is not closed, or a comma is missing after it",
            "values with # , { } [ ] in them need quotes"};
  if (has("end of sequence flow"))
    return {builder.innermost().value_or(at), "this [ is not closed, or a comma is missing after it",
            "values with # , { } [ ] in them need quotes"};
  if (has("illegal map value"))
    return {at, "this colon cannot stand here",
            "a value with a colon and a space in it needs quotes; " + columns};
  if (has("end of map") || has("end of sequence"))
    return {at, "this line is not indented like those above", columns};
  if (has("anchor is not defined"))
    return {at, "aliases (*name) are not allowed", "quote the value if it begins with *"};
  if (has("bad file")) return {at, "nested too deeply", "take some brackets or blanks away"};
  return {at, "this is not YAML: " + e.msg,
          "values that begin with & * ! | > @ % ` or have : # { } [ ] , in them may need quotes"};
}

/// What cleanText refuses as it stands can still be written as an escape: "\x1B". A value that holds some
/// counts as broken, a key as one that has its error.
class EscapeCheck {
 public:
  EscapeCheck(const std::string& file, base::Diagnostics& messages) : file_(file), messages_(messages) {}

  void check(Node& node, const std::string& path) {
    if (node.kind == Node::Kind::Word && isRefused(node.word, node.mark, path))
      node.kind = Node::Kind::Broken;
    int number = 0;
    for (Node& item : node.items) check(item, path + "[" + std::to_string(++number) + "]");
    for (Entry& e : node.entries) {
      if (isRefused(e.key, e.mark, path)) e.key.clear();
      check(e.value, path.empty() ? e.key : path + "." + e.key);
    }
  }

 private:
  bool isRefused(const std::string& words, Mark at, const std::string& path) {
    std::string hidden = base::firstHiddenLetter(words);
    if (hidden.empty()) return false;
    messages_.error({file_, at.line, at.column}, path, std::move(hidden),
                    "delete its escape, which begins with a backslash");
    return true;
  }

  const std::string& file_;
  base::Diagnostics& messages_;
};

}  // namespace

std::optional<Node> parseTree(const std::string& bytes, const std::string& file,
                              base::Diagnostics& messages) {
  const std::optional<std::string> text = cleanText(bytes, file, messages);
  if (!text) return {};
  std::optional<Node> root = readQuickly(*text);
  if (!root) root = parseWithLibrary(*text, file, messages);
  if (root && text->find('\\') != std::string::npos) EscapeCheck(file, messages).check(*root, "");
  return root;
}

std::optional<Node> parseWithLibrary(const std::string& text, const std::string& file,
                                     base::Diagnostics& messages) {
  Lines lines(text);
  std::istringstream in(text);
  base::Diagnostics refused;  // told only when the text is YAML; else one error says where it stops being so
  Builder builder(lines, file, refused);
  try {
    YAML::Parser parser(in);
    if (!parser.HandleNextDocument(builder)) {
      messages.error({file, 1, 1}, "", "the file is empty",
                     "name another file; 'planksheaf new FILE' writes a job to fill in");
      return {};
    }
    Builder second(lines, file, messages);
    if (parser.HandleNextDocument(second)) {
      const Mark at = second.start.value_or(Mark{1, 1});
      messages.error({file, at.line, at.column}, "", "content after the end of the document",
                     "lines of one list or one group of keys begin in the same column");
      return {};
    }
  } catch (const YAML::Exception& e) {
    const Explanation why = explain(e, lines, builder);
    messages.error({file, why.at.line, why.at.column}, "", why.message, why.hint);
    return {};
  }
  for (const base::Diagnostic& d : refused.all()) messages.error(d.pos, d.path, d.message, d.hint);
  return std::move(builder.root);
}

}  // namespace input
