// The block tree as text, one node a line: the golden form of a document's content.
#pragma once

#include "markup/block.h"

namespace markup {

std::string dump(const Document& document);

/// '[!note]' without its brackets.
const char* nameOf(Callout kind);

}  // namespace markup
