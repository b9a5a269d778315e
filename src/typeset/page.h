// The display list: pages of placed items. What the PDF writer draws, and what tests read as text.
// Lengths are whole counts of 1/12700 point from the top left corner of the page.
#pragma once

#include "model/theme.h"

#include <compare>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace typeset {

using model::Colour;

/// A length on paper: 12 700 to the point, 36 000 to the millimetre.
struct Dim {
  std::int64_t raw = 0;

  static constexpr Dim pt(std::int64_t n) { return {n * 12'700}; }
  static constexpr Dim mm(std::int64_t n) { return {n * 36'000}; }
  static constexpr Dim milli(model::Millipoint n) {
    return {std::int64_t{n} * 127 / 10};
  }  // thousandths of a point

  friend constexpr Dim operator+(Dim a, Dim b) { return {a.raw + b.raw}; }
  friend constexpr Dim operator-(Dim a, Dim b) { return {a.raw - b.raw}; }
  friend constexpr Dim operator-(Dim a) { return {-a.raw}; }
  friend constexpr Dim operator*(Dim a, std::int64_t n) { return {a.raw * n}; }
  friend constexpr Dim operator/(Dim a, std::int64_t n) { return {a.raw / n}; }
  constexpr Dim& operator+=(Dim b) {
    raw += b.raw;
    return *this;
  }
  constexpr Dim& operator-=(Dim b) {
    raw -= b.raw;
    return *this;
  }
  friend constexpr auto operator<=>(Dim, Dim) = default;
};
static_assert(Dim::mm(254) == Dim::pt(720));

struct Point {
  Dim x, y;
};
struct Size {
  Dim w, h;
};
struct Rect {
  Point at;
  Size size;
};

// ---------------------------------------------------------------- items

struct Glyph {
  std::uint32_t id = 0;      // in the face
  std::int32_t advance = 0;  // font units, kerning included
  std::int32_t dx = 0, dy = 0;
  std::uint32_t cluster = 0;  // byte in the run's text where its letters begin
};

/// Letters of one face on one line.
struct TextRun {
  Point baseline;
  std::size_t face = 0;  // index into Document::faces
  Dim size;
  Colour colour;
  std::string text;  // UTF-8, what a reader copies out
  std::vector<Glyph> glyphs;
  Dim width;
  Dim tracking;            // added after each glyph
  bool isUpright = true;   // false: turned a quarter left, reading upwards
  bool endsWord = false;   // a space follows that takes no room
  bool isDivided = false;  // the last glyph is a hyphen that the word gets only because its line ends there
};

struct Stroke {
  Colour colour;
  Dim width;
  std::vector<Dim> dash;  // empty = solid
  bool isRound = false;   // caps and joins
};

struct Step {
  enum class Kind { Move, Line, Curve, Close };
  Kind kind = Kind::Move;
  Point a, b, to;  // a and b: control points of a curve
};

struct Path {
  std::vector<Step> steps;
  std::optional<Colour> fill;
  bool isEvenOdd = false;
  std::optional<Stroke> stroke;
};

/// A picture of pixels; JPEG data is embedded as it is.
struct Image {
  int width = 0, height = 0;
  std::string rgb;    // width * height * 3 bytes; empty when jpeg is set
  std::string alpha;  // width * height bytes; empty = opaque
  std::string jpeg;
  bool isGrey = false;  // of the JPEG
  // The same, deflated once by its reader; empty = by each document.
  std::string packedRgb = {}, packedAlpha = {};
  std::string palette = {};  // three bytes a colour; if there is one, packedRgb has one byte a pixel
};

struct PlacedImage {
  Rect box;
  std::shared_ptr<const Image> image;
};

struct Link {
  Rect box;
  std::string uri;
  std::string words;
};

/// Index into Document::tags of the element an item belongs to; decoration (rules, running heads) has none.
inline constexpr int artifact = -1;

struct Item {
  std::variant<TextRun, Path, PlacedImage, Link> what;
  int tag = artifact;
};

struct Page {
  Size size;
  std::vector<Item> items;
};

// ---------------------------------------------------------------- structure

enum class Role {
  Document,
  H1,
  H2,
  H3,
  P,
  L,
  LI,
  Lbl,
  LBody,
  Table,
  THead,
  TBody,
  TR,
  TH,
  TD,
  Figure,
  Link,
  Note,
  Sect,
  Span
};
enum class Scope { None, Column, Row };

struct Tag {
  Role role = Role::P;
  int parent = -1;            // index of an earlier tag; -1 for the first, the document
  std::string alt;            // figures
  Scope scope = Scope::None;  // table heads
  bool isOrdered = false;     // lists
  int columns = 1, rows = 1;  // cells: how many they span
};

struct Bookmark {
  std::string title;
  std::size_t page = 0;
  Dim y;
  int level = 1;
};

class FontFace;  // typeset/face.h

struct Document {
  std::string title, subject, author, language;
  std::string date;  // ISO 8601 day, of the job: the only date in the file's data
  std::vector<Page> pages;
  std::vector<Tag> tags;  // tags[0] is the document; parents stand before children; reading order
  std::vector<Bookmark> bookmarks;
  std::vector<std::shared_ptr<const FontFace>> faces;
};

// ---------------------------------------------------------------- drawings

/// A drawing with its own corner at (0, 0), ready to be placed in the flow. Its text has no tags of its own:
/// 'alt' speaks for the whole.
struct Drawing {
  Size size;
  std::vector<Item> items;
  std::string alt;
};

}  // namespace typeset
