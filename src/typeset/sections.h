// A whole document as one stack: title, sections, what stands before them.
#pragma once

#include "typeset/blocks.h"

namespace typeset {

Stack setDocument(Setter& setter);

}  // namespace typeset
