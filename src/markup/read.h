// CommonMark text becomes a tree of blocks.
#pragma once

#include "base/diagnostic.h"
#include "markup/block.h"

#include <string>

namespace markup {

/// Reads the subset that documents are made of. Whatever is outside it (code, HTML, deeper headings, unknown
/// boxes) is an error with its line; 'file' is for messages.
Document readMarkdown(const std::string& text, const std::string& file, base::Diagnostics& messages);

/// The same for text that was made from a template: lines[n - 1] is where line n comes from, for messages.
/// The lines of blocks stay those of the text.
Document readMarkdown(const std::string& text, const std::vector<base::SourcePos>& lines,
                      base::Diagnostics& messages);

}  // namespace markup
