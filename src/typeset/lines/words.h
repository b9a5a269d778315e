// Small helpers around words: one line of them, lines as a list, drawings scaled to the type.
#pragma once

#include "typeset/layout_context.h"

namespace typeset {

/// A line of text: baseline at 'baseline', left edge at 0.
struct TextLine {
  Dim width, height, baseline;
  std::vector<Item> items;
};

/// One word or line in one look, at the left of 'at' and on its baseline; no tag.
struct PlacedWords {
  std::vector<Item> items;
  Dim width;
};
PlacedWords placeWords(LayoutContext& context, const Style& style, const std::string& words, Point at,
                       int tag = artifact);

/// Lines as a list at a place; widows and orphans of two lines are kept.
VerticalList listOf(const LayoutContext& context, std::vector<TextLine>&& lines, Column place,
                    markup::Align align = markup::Align::Left);

/// The beginning of the text with an ellipsis, as much as 'fits' takes, at the end of a word where that is
/// near; all of it when it fits as it is, nothing when not even two letters do.
std::string shortened(const std::string& text, const std::function<bool(const std::string&)>& fits);
std::string shortened(const LayoutContext& context, const Style& style, const std::string& text, Dim room);

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
