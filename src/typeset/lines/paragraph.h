// Words in one style, shaped and measured once, ready to be broken into lines.
#pragma once

#include "typeset/layout_context.h"
#include "typeset/lines/breaker.h"

namespace typeset {

/// Words in one style as the breaker sees them: alike in every document of a language, so most of a pack's
/// are made once in the process.
struct Paragraph {
  /// A shaped run or a picture.
  struct Piece {
    std::size_t inlineIndex = 0;
    TextRun run;
    std::vector<std::int64_t> units;  // sum of advances before each glyph
    const Drawing* drawing = nullptr;
    Size size;  // of the drawing as it is set
  };
  /// A stretch of a piece that the breaker sees as one item.
  struct Atom {
    BreakItem item;
    std::size_t piece = 0;           // noPiece for forced breaks
    std::size_t begin = 0, end = 0;  // glyphs
  };
  static constexpr std::size_t noPiece = SIZE_MAX;

  struct Lines {
    std::vector<Atom> atoms;  // with words cut where they may break
    std::vector<BrokenLine> lines;
  };

  std::vector<Piece> pieces;
  std::vector<Atom> atoms;
  std::vector<char32_t> missing;  // letters no face has
  Dim natural;                    // width without breaks other than forced ones
  Dim longest;                    // width of the longest word
  /// By width and whether the lines are balanced.
  std::shared_ptr<base::Cache<std::pair<Dim, bool>, Lines>> broken =
      std::make_shared<base::Cache<std::pair<Dim, bool>, Lines>>();

  Dim widthOf(const Fonts& fonts, const Piece& piece, std::size_t begin, std::size_t end) const;
};

/// Shapes the words, or finds them shaped.
std::shared_ptr<const Paragraph> prepare(LayoutContext& context, const markup::Inlines& words,
                                         const Style& style);

/// The style's span in the face of a part's emphasis, without text.
StyledText lookOf(const Style& style, const markup::Inline& part);

}  // namespace typeset
