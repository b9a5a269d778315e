// Facts every reader may know: firm, job, site, product, days and dates.
#pragma once

#include "sheets/facts/make_facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

Facts commonFacts(const Computed& x, const Formatter& w);

FactList sentences(const std::vector<std::string>& words);
std::string lines(const std::vector<std::string>& words);

}  // namespace sheets
