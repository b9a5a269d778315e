// A template and its partials become one run of pieces.
#pragma once

#include "sheets/template/template_scan.h"

#include <map>

namespace sheets {

/// Puts the pieces of every partial where it is named. A partial alone on its line brings its quote marks and
/// indentation to each of its own lines; one amid words goes in without its last line break. Unknown and
/// recursive partials are mistakes.
Pieces inlinePartials(const Template& main, const std::map<std::string, Template>& partials,
                      base::Diagnostics& messages);

}  // namespace sheets
