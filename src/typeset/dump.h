// The display list as text, for tests.
#pragma once

#include "typeset/page.h"

namespace typeset {

/// The display list as text, one item a line: the golden form of a page.
std::string dump(const Document& document);

}  // namespace typeset
