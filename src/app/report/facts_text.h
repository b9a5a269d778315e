// Facts as text: what a template may name, one name a line.
#pragma once

#include "sheets/facts/facts.h"

namespace app {

/// 'firm.name: Tideboard Timber Care' and so on, in the order the facts were made. Of a list the first group
/// is shown, with the number of them.
std::string factsText(const sheets::Facts& facts, const std::string& prefix = "");

}  // namespace app
