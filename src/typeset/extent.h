// The box around what an item draws.
#pragma once

#include "typeset/page.h"

namespace typeset {

/// Curves stay inside the box of their control points. Nothing for a path without points.
Rect extentOf(const Path& path);
/// Letters count as high as their size, above the baseline.
Rect extentOf(const Item& item);
/// The box around both.
Rect joined(const Rect& a, const Rect& b);

}  // namespace typeset
