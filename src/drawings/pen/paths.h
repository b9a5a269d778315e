// Small makers of display-list items: lines, boxes, circles, and words measured for drawings.
#pragma once

#include "drawings/drawings.h"

namespace drawings {

using typeset::Dim;
using typeset::Path;
using typeset::Point;
using typeset::Rect;
using typeset::Size;
using typeset::Stroke;

constexpr Dim tenths(std::int64_t n) { return {n * 3'600}; }      // of a millimetre
constexpr Dim hundredthsPt(std::int64_t n) { return {n * 127}; }  // of a point

inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Dim right(const Rect& r) { return r.at.x + r.size.w; }
inline Dim bottom(const Rect& r) { return r.at.y + r.size.h; }
/// The same rectangle with 'by' more on every side.
Rect grown(const Rect& r, Dim by);
Rect around(const Rect& a, const Rect& b);
bool overlap(const Rect& a, const Rect& b);

void moveTo(Path& path, Point to);
void lineTo(Path& path, Point to);
/// Adds a closed circle or ellipse of four curves.
void addEllipse(Path& path, Point centre, Dim rx, Dim ry);

Path line(Point a, Point b, Stroke stroke);
Path polygon(const std::vector<Point>& corners, std::optional<model::Colour> fill,
             std::optional<Stroke> stroke);
Path box(const Rect& r, std::optional<model::Colour> fill, std::optional<Stroke> stroke);
Path circle(Point centre, Dim radius, std::optional<model::Colour> fill, std::optional<Stroke> stroke);

/// A colour of the theme by name. Throws std::logic_error for a name it lacks.
model::Colour colour(const Pen& pen, const std::string& name);

/// Words of one style, shaped: as wide as they run, as high as the style's capitals.
struct ShapedText {
  typeset::Shaped shaped;
  Dim width, height;
};
ShapedText words(const Pen& pen, const typeset::StyledText& span);
ShapedText words(const Pen& pen, const std::string& style, const std::string& text);
/// In the bold face of a style.
ShapedText boldWords(const Pen& pen, const std::string& style, const std::string& text);

/// As a crew reads it at arm's length: never below 9 pt, whatever the look.
typeset::StyledText legibleSpan(const Pen& pen, const std::string& style, const std::string& text);
ShapedText legible(const Pen& pen, const std::string& style, const std::string& text, bool isBold = false);
/// In the sans face of this size.
ShapedText sized(const Pen& pen, Dim size, const std::string& text, bool isBold);

using Items = std::vector<typeset::Item>;
void put(Items& items, Path path);
/// Baseline starting at 'at'.
void put(Items& items, const ShapedText& words, Point at);
/// Centred on 'at', both ways.
void putCentred(Items& items, const ShapedText& words, Point at);
/// Centred and turned a quarter left, reading upwards.
void putUpwards(Items& items, const ShapedText& words, Point at);

/// Moves everything.
void shift(Items& items, Point by);

/// Breaks a span's text at its spaces into lines no wider than 'width', at most 'most' of them; what is left
/// over stays on the last line.
std::vector<std::string> wrapped(const Pen& pen, typeset::StyledText span, Dim width, std::size_t most);
std::vector<std::string> wrapped(const Pen& pen, const std::string& style, const std::string& text, Dim width,
                                 std::size_t most);

}  // namespace drawings
