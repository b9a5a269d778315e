// Lines, boxes and small marks as paths.
#pragma once

#include "typeset/page.h"

namespace typeset {

Item lineItem(Point from, Point to, Dim weight, Colour colour);
Item filledBox(Rect box, Colour colour);
Item frame(Rect box, Dim weight, Colour colour);
/// The alert sign: a filled triangle with its mark cut out; 'box' holds it.
Item alertSign(Rect box, Colour colour);

/// Marks of list items, in a line that begins at 'at' and has its baseline 10.5 pt below.
/// Where a mark's line begins so that the mark stands by words of this baseline; marks are drawn for 10.5 pt.
constexpr Dim markTop(Dim baseline) { return baseline - Dim::milli(10'500); }
Item dashMark(Point at, Colour colour);
Item crossMark(Point at, Colour colour);
Item tickMark(Point at, Colour colour);
Item boxMark(Point at, Colour colour);

}  // namespace typeset
