// The look of the pages: paper, grid, faces, styles and colours. Read from templates/themes/*.yaml and the
// firm.
#pragma once

#include "base/diagnostic.h"
#include "base/units.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace model {

struct Colour {
  std::uint8_t r = 0, g = 0, b = 0;
  friend bool operator==(const Colour&, const Colour&) = default;
};

struct NamedColour {
  std::string name;
  Colour colour;
};

/// Page lengths in the theme are counted in thousandths of a point.
using Millipoint = std::int32_t;

enum class Paper { A4, Letter };

/// The roles a font file can play. A theme names one file for each.
enum class Face { Text, TextItalic, TextBold, Display, Sans, SansItalic, SansBold };

/// A font file and where it was named, for messages about it.
struct FontFile {
  std::string file;  // absolute
  base::SourcePos pos;
  std::string key;  // 'faces.text'
};
using FaceFiles = std::map<Face, FontFile>;

/// One role of type: what it is set in and where its line sits.
struct TextStyle {
  Face face = Face::Text;
  Face strong = Face::TextBold;      // for **strong** inside it
  Face emphasis = Face::TextItalic;  // for *emphasis* inside it
  Millipoint size = 10'500;
  Millipoint leading = 14'000;   // height of a line
  Millipoint baseline = 10'500;  // from the top of the line down to the baseline
  Millipoint tracking = 0;       // added after each letter
  std::string colour = "ink";    // a key of Theme::colours
  bool tabular = false;          // digits of one width
  bool isJustified = false;      // both margins are met: running text only
};

struct Theme {
  std::string name;
  Millipoint marginLeft = 56'693;           // 20 mm
  Millipoint sideWidth = 119'055;           // 42 mm
  Millipoint gutter = 17'008;               // 6 mm
  Millipoint textWidth = 334'488;           // 118 mm
  Millipoint top = 70'000;                  // first line of an ordinary page, from the top of the paper
  Millipoint letterheadTop = 98'000;        // and of a page with the letterhead
  Millipoint bottom = 44'000;               // from the last line's lower edge to the bottom of the paper
  Millipoint unit = 3'500;                  // everything stands on multiples of it; four make a line
  int snap = 4;                             // so many units is what white between sections is rounded up to
  base::Share shrink;                       // the unit may shrink by so much to save a page left nearly empty
  std::map<Face, std::string> faces;        // font files, absolute
  std::map<std::string, FontFile> named;    // by file: where faces and fallbackFaces were named
  std::vector<std::string> fallbackFaces;   // tried in order for letters the face lacks
  std::map<std::string, TextStyle> styles;  // title kind lede figure total hazard signal head rowHead body
                                            // table note label firm runFirm drawing
  std::map<std::string, Colour>
      colours;  // ink soft accent tint rule wood wall danger warning caution notice white ...
  std::map<std::string, Colour> crewColours;  // of the same names, in place of those on the crew's papers
};

}  // namespace model
