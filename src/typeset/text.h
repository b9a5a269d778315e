// Words with emphasis, links and pictures in the line: shaped once, measured and broken into lines.
#pragma once

#include "typeset/breaker.h"
#include "typeset/setter.h"

namespace typeset {

/// A line of text: baseline at 'rise', left edge at 0.
struct TextLine {
  Dim width, height, rise;
  std::vector<Item> items;
};

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
std::shared_ptr<const Paragraph> prepare(Setter& setter, const markup::Inlines& words, const Style& style);

class Text {
 public:
  Text(Setter& setter, markup::Inlines words, const Style& style);

  bool isEmpty() const { return paragraph_->atoms.empty(); }
  const Style& style() const { return style_; }
  const markup::Inlines& words() const { return words_; }
  Dim natural() const { return paragraph_->natural; }
  Dim longest() const { return paragraph_->longest; }
  /// Broken to the width: ragged right, or in wide columns to both margins where the style says so.
  /// 'isBalanced' makes lines of about one length (titles).
  std::vector<TextLine> lines(Dim width, int tag, bool isBalanced = false);

 private:
  using Piece = Paragraph::Piece;
  using Atom = Paragraph::Atom;
  static constexpr std::size_t noPiece = Paragraph::noPiece;

  Dim widthOf(const Piece& piece, std::size_t begin, std::size_t end) const {
    return paragraph_->widthOf(setter_.in.fonts, piece, begin, end);
  }
  bool mayDivide(Dim width) const;
  bool isLoneWord(std::size_t atom, bool mustBreak) const;
  std::vector<std::size_t> divisionsOf(const Atom& atom) const;
  Dim hyphenWidth(const Atom& atom) const;
  static bool isDivision(const std::vector<Atom>& atoms, const BrokenLine& line);
  bool hasHole(const std::vector<BrokenLine>& lines, const std::vector<Atom>& atoms, Dim width) const;
  std::vector<Atom> brokenTo(Dim width, bool isDivided) const;
  std::vector<BrokenLine> breaks(const std::vector<Atom>& atoms, Dim width) const;
  std::vector<BrokenLine> breaksWithFewHyphens(std::vector<Atom>& atoms, Dim width) const;
  void lengthenLast(std::vector<BrokenLine>& lines, const std::vector<Atom>& atoms, Dim width) const;
  Paragraph::Lines brokenLines(Dim width, bool isBalanced) const;
  bool isJustified(Dim width) const;
  /// Filled up to 'full' by the white between words; 0 leaves it as it is.
  TextLine lineOf(const std::vector<Atom>& atoms, BrokenLine line, int tag, Dim full);
  static Dim fullWidth(const std::vector<Atom>& atoms, const BrokenLine& line, Dim width);
  void addHyphen(TextLine& line, const Piece& piece, Dim& x) const;

  Setter& setter_;
  const markup::Inlines words_;
  const Style& style_;
  const std::shared_ptr<const Paragraph> paragraph_;
  std::map<std::size_t, int> tags_;  // of links and pictures, by inline
};

/// The style's span in the face of a part's emphasis, without text.
Span lookOf(const Style& style, const markup::Inline& part);

/// One word or line in one look, at the left of 'at' and on its baseline; no tag.
struct SetWords {
  std::vector<Item> items;
  Dim width;
};
SetWords setWords(Setter& setter, const Style& style, const std::string& words, Point at, int tag = artifact);

/// Lines as a stack at a place; widows and orphans of two lines are kept.
Stack stackOf(const Setter& setter, std::vector<TextLine>&& lines, Place place,
              markup::Align align = markup::Align::Left);

/// The beginning of the text with an ellipsis, as much as 'fits' takes, at the end of a word where that is
/// near; all of it when it fits as it is, nothing when not even two letters do.
std::string shortened(const std::string& text, const std::function<bool(const std::string&)>& fits);
std::string shortened(const Setter& setter, const Style& style, const std::string& text, Dim room);

/// The letter that a glyph begins; 0 past the end.
char32_t letterAt(const TextRun& run, std::size_t glyph);
bool isLetter(char32_t c);

/// The words without any style, for bookmarks and messages.
std::string plainWords(const markup::Inlines& words);
/// True when there are words and all of them are of this kind.
bool isAll(const markup::Inlines& words, markup::Inline::Style style);
/// The same words, plain.
markup::Inlines plain(markup::Inlines words);
Item scaledItem(Item item, Dim to, Dim from);
/// The drawing at this height, its corner at (0, 0).
Drawing scaled(const Drawing& drawing, Dim height);

}  // namespace typeset
