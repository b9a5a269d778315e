// CommonMark text becomes a tree of blocks.
#pragma once

#include "base/diagnostic.h"
#include "markup/block.h"

#include <string>

namespace markup {

/// Reads the subset that documents are made of. Whatever is outside it (code, HTML, deeper headings, unknown
/// boxes) is an error with its line; 'file' is for messages.
Document readMarkdown(const std::string& text, const std::string& file, base::Diagnostics& messages);

}  // namespace markup
