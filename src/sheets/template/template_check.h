// Every name in a template against the facts, before anything is printed.
#pragma once

#include "sheets/facts/facts.h"
#include "sheets/template/template_scan.h"

namespace sheets {

inline constexpr std::size_t outputCap = 4 * 1024 * 1024;

/// Walks the template the way it will be printed. Reports names that are unknown where they stand or withheld
/// from this reader, variables that name no word, sections nested too deep, and loops whose text would pass
/// the output cap.
void checkNames(const Pieces& pieces, const Facts& facts, const Withheld& withheld,
                base::Diagnostics& messages);

/// Whether a section over this fact is printed: an empty word and an empty list count as no.
bool isTrue(const Fact& fact);

}  // namespace sheets
