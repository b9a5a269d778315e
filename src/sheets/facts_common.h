// Facts every reader may know: firm, job, site, product, days and dates.
#pragma once

#include "sheets/make_facts.h"
#include "sheets/words.h"

namespace sheets {

Facts commonFacts(const Computed& x, const Words& w);

/// A name and a yes or no beside it: 'hospital' and whether it is known.
void addWord(Facts& facts, const std::string& name, const std::string& words);
FactList sentences(const std::vector<std::string>& words);
std::string lines(const std::vector<std::string>& words);

}  // namespace sheets
