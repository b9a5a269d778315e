// The part of SVG our signs are drawn in: elements with attributes, and the data of paths.
#pragma once

#include "typeset/page.h"

#include <stdexcept>

namespace drawings {

/// What is wrong with a file of a sign, and in which line.
struct SvgError : std::runtime_error {
  SvgError(int atLine, const std::string& what) : std::runtime_error(what), line(atLine) {}
  int line;
};

struct Attribute {
  std::string name, value;
};

struct Element {
  std::string name;
  int line = 0;
  std::vector<Attribute> attributes;
  std::vector<Element> children;
  std::string text;  // between its tags

  /// The value of an attribute; nothing when it is not there.
  const std::string* find(const std::string& attribute) const;
};

/// Reads a file's only outer element. Comments and an XML declaration are passed over; entities, doctypes and
/// CDATA are refused. Throws SvgError.
Element readElements(const std::string& text);

/// Numbers of the drawing are counted in millionths of its unit.
using Micro = std::int64_t;
constexpr Micro micro = 1'000'000;
/// No number of a drawing is as large: sums of a few stay far from what 64 bits hold.
constexpr Micro mostNumber = 1'000'000 * micro;

/// Reads numbers separated by spaces and commas, as they stand in points, viewBox and path data.
class NumberReader {
 public:
  NumberReader(const std::string& text, int line) : text_(text), line_(line) {}

  bool isAtEnd();
  bool isAtNumber();
  Micro number();
  /// A 0 or 1, which need not be separated from what follows.
  bool flag();
  char letter();

 private:
  void skipSeparators();
  const std::string& text_;
  int line_;
  std::size_t at_ = 0;
};

/// All of a text as one number.
Micro readNumber(const std::string& text, int line);

/// Where the drawing's units come to lie on paper.
struct Frame {
  Micro left = 0, top = 0, height = micro;
  typeset::Dim paperHeight;

  /// Throws std::overflow_error for more than 100 m.
  typeset::Dim length(Micro m) const;
  typeset::Point on(Micro x, Micro y) const { return {length(x - left), length(y - top)}; }
};

/// Path data with the commands M L H V C S Q A Z, absolute and relative. Throws SvgError.
std::vector<typeset::Step> readPathData(const std::string& data, int line, const Frame& frame);

}  // namespace drawings
