// A stack of slices becomes pages.
#pragma once

#include "typeset/fit.h"
#include "typeset/setter.h"

namespace typeset {

/// Fills pages from the top down. What belongs together goes to the next page together; what is taller than a
/// page is broken and warned about. How much of the last page is filled.
Dim pour(Setter& setter, Stack&& stack, EarlyFoot early);

}  // namespace typeset
