// Where a figure stands on its page.
#pragma once

#include "typeset/page.h"

#include <string>

namespace pdf {

/// The layout attributes of a tag's figure, with the box around all it draws on a page.
std::string layoutOf(const typeset::Document& document, int tag, std::size_t page);

}  // namespace pdf
