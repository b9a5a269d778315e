// Words and signs put into one fragment, for blocks that stand in columns of their own.
#pragma once

#include "typeset/blocks/blocks.h"

namespace typeset {

/// A style of the theme in another size on other leading; 'baseline' from the top of the line to the
/// baseline.
Style resized(LayoutContext& context, const std::string& name, Dim size, Dim leading, Dim baseline);

/// Lines of steps and of first aid, which are short, stand a tenth closer than reading does.
Style closer(Style style);

/// Sets words from 'y' down, and moves 'y' below them.
void addWords(LayoutContext& context, Fragment& fragment, const markup::Inlines& words, const Style& style,
              Column place, Dim& y, int tag, markup::Align align = markup::Align::Left);

/// How high they would stand.
Dim heightOfWords(LayoutContext& context, const markup::Inlines& words, const Style& style, Dim width);

/// Sets a sign of this height with its alternative words; its width.
Dim addSign(LayoutContext& context, Fragment& fragment, const markup::Inline& picture, Point at, Dim height,
            int parent);

/// The tag of a section's head, which is read before all that stands in its line and below; 0 without a head.
int headTag(LayoutContext& context, const markup::Heading* heading, int parent);

/// The head of a section, with its tag and a bookmark, in a line between two rules; it stays with what
/// follows.
void addHeadLine(LayoutContext& context, VerticalList& out, const markup::Heading* heading, int tag,
                 Fragment&& line, Column place);

Fragment fullRule(LayoutContext& context, RuleKind kind, Column place, Dim weight, const char* colour);

}  // namespace typeset
