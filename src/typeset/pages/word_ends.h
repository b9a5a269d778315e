// Where a word ends without a space being set: at the end of a line, before the next column.
#pragma once

#include "typeset/page.h"

namespace typeset {

/// Marks the runs of tagged text that end a word, so that readers who follow the tags do not join two: ISO
/// 32000-1:2008, 14.8.2.5. A hyphen or a slash at the end of a line ends none.
void markWordEnds(Document& document);

}  // namespace typeset
