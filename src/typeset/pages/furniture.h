// What stands around the text on every page: letterhead or running head, ruler, foot.
#pragma once

#include "typeset/layout_context.h"

namespace typeset {

/// Draws it on all pages, once their number is known. To a reader of tags it is decoration, but for
/// the firm's address and numbers, which are read once, after all else.
void addFurniture(LayoutContext& context);

}  // namespace typeset
