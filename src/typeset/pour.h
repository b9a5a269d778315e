// A stack of slices becomes pages.
#pragma once

#include "typeset/setter.h"

namespace typeset {

/// Fills pages from the top down. What belongs together goes to the next page together; what is taller than a
/// page is broken and warned about.
void pour(Setter& setter, Stack&& stack);

}  // namespace typeset
