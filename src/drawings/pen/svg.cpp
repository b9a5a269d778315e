#include "drawings/pen/svg.h"

#include "base/fixed.h"
#include "base/letters.h"

namespace drawings {

const std::string* Element::find(const std::string& attribute) const {
  for (const auto& a : attributes)
    if (a.name == attribute) return &a.value;
  return nullptr;
}

namespace {

bool isSpace(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
using base::isDigit;
bool isName(char c) { return base::isLetter(c) || isDigit(c) || c == '-' || c == ':'; }

class ElementReader {
 public:
  explicit ElementReader(const std::string& text) : text_(text) {}

  Element onlyElement() {
    skipBetween();
    if (at_ >= text_.size()) fail("there is no drawing in it");
    Element e = element(0);
    skipBetween();
    if (at_ < text_.size()) fail("something follows the drawing");
    return e;
  }

 private:
  [[noreturn]] void fail(const std::string& what) const { throw SvgError(line_, what); }
  bool startsWith(const char* s) const {
    return text_.compare(at_, std::char_traits<char>::length(s), s) == 0;
  }
  char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }

  char next() {
    if (at_ >= text_.size()) fail("the file breaks off");
    if (text_[at_] == '\n') ++line_;
    return text_[at_++];
  }

  void skipSpaces() {
    while (isSpace(peek())) next();
  }

  void skipPast(const char* end) {
    while (!startsWith(end)) next();
    at_ += std::char_traits<char>::length(end);
  }

  /// Spaces, comments and the declaration.
  void skipBetween() {
    for (;;) {
      skipSpaces();
      if (startsWith("<!--")) skipPast("-->");
      else if (startsWith("<?xml")) skipPast("?>");
      else return;
    }
  }

  void expect(char c) {
    if (peek() != c) fail(std::string("'") + c + "' is missing");
    next();
  }

  std::string name() {
    std::string s;
    while (isName(peek())) s += next();
    if (s.empty()) fail("a name is missing");
    return s;
  }

  std::string upTo(char end) {
    std::string s;
    while (at_ >= text_.size() || peek() != end) {
      const char c = next();
      if (c == '&' || c == '<') fail("'" + std::string(1, c) + "' is not allowed here");
      s += c;
    }
    return s;
  }

  Element element(int depth) {
    if (depth > 20) fail("elements are nested too deeply");
    Element e;
    e.line = line_;
    expect('<');
    e.name = name();
    for (skipSpaces(); peek() != '>' && peek() != '/'; skipSpaces()) {
      Attribute a;
      a.name = name();
      if (e.find(a.name)) fail("'" + a.name + "' stands twice");
      expect('=');
      const char quote = next();
      if (quote != '"' && quote != '\'') fail("the value of '" + a.name + "' has no quotes");
      a.value = upTo(quote);
      next();
      e.attributes.push_back(std::move(a));
    }
    if (next() == '/') {
      expect('>');
      return e;
    }
    for (;;) {
      skipBetween();
      if (startsWith("</")) break;
      if (peek() == '<') e.children.push_back(element(depth + 1));
      else e.text += upTo('<');
    }
    at_ += 2;
    if (const auto closed = name(); closed != e.name) fail("'" + closed + "' closes '" + e.name + "'");
    skipSpaces();
    expect('>');
    return e;
  }

  const std::string& text_;
  std::size_t at_ = 0;
  int line_ = 1;
};

}  // namespace

Element readElements(const std::string& text) { return ElementReader(text).onlyElement(); }

void NumberReader::skipSeparators() {
  while (at_ < text_.size() && (isSpace(text_[at_]) || text_[at_] == ',')) ++at_;
}

bool NumberReader::isAtEnd() {
  skipSeparators();
  return at_ >= text_.size();
}

bool NumberReader::isAtNumber() {
  if (isAtEnd()) return false;
  const char c = text_[at_];
  return isDigit(c) || c == '-' || c == '+' || c == '.';
}

Micro NumberReader::number() {
  if (!isAtNumber()) throw SvgError(line_, "a number is missing in '" + text_ + "'");
  const std::size_t from = at_;
  const bool isNegative = text_[at_] == '-';
  if (isNegative || text_[at_] == '+') ++at_;
  Micro value = 0;
  int digits = 0;
  const auto bad = [&] {
    return SvgError(line_, "'" + text_.substr(from, at_ + 1 - from) + "' is not a number a sign may use");
  };
  for (; at_ < text_.size() && isDigit(text_[at_]) && value < mostNumber; ++at_, ++digits)
    value = value * 10 + (text_[at_] - '0') * micro;
  if (at_ < text_.size() && text_[at_] == '.') {
    Micro place = micro / 10;
    for (++at_; at_ < text_.size() && isDigit(text_[at_]); ++at_, ++digits, place /= 10)
      value += (text_[at_] - '0') * place;
  }
  const bool hasExponent = at_ < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E');
  if (digits == 0 || digits > 12 || value >= mostNumber || hasExponent) throw bad();
  return isNegative ? -value : value;
}

bool NumberReader::flag() {
  if (isAtEnd() || (text_[at_] != '0' && text_[at_] != '1'))
    throw SvgError(line_, "an arc's flag is not 0 or 1");
  return text_[at_++] == '1';
}

char NumberReader::letter() {
  skipSeparators();
  return text_[at_++];
}

Micro readNumber(const std::string& text, int line) {
  NumberReader in(text, line);
  const Micro m = in.number();
  if (!in.isAtEnd()) throw SvgError(line, "'" + text + "' is not a number");
  return m;
}

typeset::Dim Frame::length(Micro m) const {
  constexpr typeset::Dim most = typeset::Dim::mm(100'000);
  const typeset::Dim d = {base::mulDiv(m, paperHeight.raw, height, base::Round::HalfUp)};
  if (d.raw > most.raw || d.raw < -most.raw) throw std::overflow_error("a drawing is larger than 100 m");
  return d;
}

}  // namespace drawings
