// Words with emphasis, links and pictures in the line, broken into lines.
#pragma once

#include "typeset/lines/paragraph.h"
#include "typeset/lines/words.h"

namespace typeset {

class Text {
 public:
  Text(LayoutContext& context, markup::Inlines words, const Style& style);

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
    return paragraph_->widthOf(context_.in.fonts, piece, begin, end);
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

  LayoutContext& context_;
  const markup::Inlines words_;
  const Style& style_;
  const std::shared_ptr<const Paragraph> paragraph_;
  std::map<std::size_t, int> tags_;  // of links and pictures, by inline
};

}  // namespace typeset
