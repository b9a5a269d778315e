// Blocks and a theme become pages of placed items.
#pragma once

#include "typeset/layout_input.h"

namespace typeset {

/// Sets the document. Never fails on content: what cannot be placed well is placed sensibly and warned about.
Document layOut(const LayoutInput& in, base::Diagnostics& messages);

}  // namespace typeset
