// A whole document as one list: title, sections, what stands before them.
#pragma once

#include "typeset/blocks/blocks.h"

namespace typeset {

VerticalList layOutDocument(LayoutContext& context);

}  // namespace typeset
