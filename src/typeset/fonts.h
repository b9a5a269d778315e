// The faces of a document and text set in them: one line of words in a style becomes runs of glyphs.
#pragma once

#include "base/cache.h"
#include "typeset/face.h"

#include <functional>

namespace typeset {

/// Words as glyphs, for any size and colour.
struct ShapedWords {
  struct Run {
    std::size_t face = 0;
    std::string text;
    std::vector<Glyph> glyphs;
    std::int64_t units = 0;  // sum of the advances
  };
  std::vector<Run> runs;
  std::vector<char32_t> missing;  // letters no face has
};

struct Paragraph;  // typeset/text.h

/// Faces of one theme, by role, with the ones to fall back on. Immutable once made; may be shared by threads.
struct Fonts {
  std::vector<std::shared_ptr<const FontFace>> faces;  // what TextRun::face counts in
  std::map<model::Face, std::size_t> byRole;
  std::vector<std::size_t> fallbacks;
  std::string language = "en";  // as in BCP 47: some faces draw letters otherwise in some languages
  /// What has been shaped, by face, features, language and text: most words of a pack stand in every pack.
  std::shared_ptr<base::Cache<std::string, ShapedWords>> shapedWords =
      std::make_shared<base::Cache<std::string, ShapedWords>>();
  /// What has been made ready to be broken into lines; more of it takes memory and saves no time.
  std::shared_ptr<base::Cache<std::string, Paragraph>> paragraphs =
      std::make_shared<base::Cache<std::string, Paragraph>>(1'000);
};

/// Reads the faces a theme names. Throws std::runtime_error naming the file that cannot be used.
Fonts readFonts(const model::Theme& theme);

/// A stretch of text in one style.
struct StyledText {
  std::string text;  // UTF-8, no line breaks
  model::Face face = model::Face::Text;
  Dim size;
  Dim tracking;
  Colour colour;
  bool tabular = false;
};

/// Text that has been shaped: runs with baselines at y = 0, the first at x = 0, left to right. Letters no
/// face has are reported to 'missing' (may be empty) and set as an empty box. Hints that draw nothing
/// (U+00AD, U+200B, U+2060) are taken out of the text: who breaks a word at one adds the hyphen.
struct Shaped {
  std::vector<TextRun> runs;
  Dim width;
};
Shaped shape(const Fonts& fonts, const StyledText& span, const std::function<void(char32_t)>& missing = {});
Dim width(const Fonts& fonts, const StyledText& span);

/// A span in one of the theme's styles, plain.
StyledText spanIn(const model::Theme& theme, const std::string& style, std::string text);

}  // namespace typeset
