// Fillings of charts that stay apart in black and white: tints and hatches.
#pragma once

#include "drawings/pen/paths.h"

namespace drawings {

enum class Hatch {
  Plain,      // white
  Tint,       // the theme's tint
  Wood,       // solid, a middle grey on a grey print
  Accent,     // solid, dark
  Slash,      // wide /
  Backslash,  // wide, the other way
  Tight,      // narrow / on the tint
  Upright,    // lines up and down
  Level,      // lines across
  Crossed,    // both slashes
  Dashes,     // broken lines across
  Dark,       // narrow / of heavy lines
  DarkBack,   // the same, the other way
  Dots
};

/// A box filled and framed.
void putHatched(Items& items, const Rect& box, Hatch hatch, const Pen& pen);

/// Words in the middle of a box on a patch of white, when they fit into it with some air.
void putOnPatch(Items& items, const ShapedText& words, const Rect& box);

}  // namespace drawings
