// A list of fragments becomes pages.
#pragma once

#include "typeset/layout_context.h"
#include "typeset/pages/fit.h"

namespace typeset {

/// Fills pages from the top down. What belongs together goes to the next page together; what is taller than a
/// page is broken and warned about. How much of the last page is filled.
Dim paginate(LayoutContext& context, VerticalList&& list, EarlyFoot early);

}  // namespace typeset
