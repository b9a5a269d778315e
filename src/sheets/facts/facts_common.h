// Facts every reader may know: firm, job, site, product, days and dates.
#pragma once

#include "sheets/facts/make_facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

Facts commonFacts(const Computed& x, const Formatter& w);

FactList sentences(const std::vector<std::string>& words);
/// 'Coldwater Lodge, 4 Mill Bay Road, Ferncombe'.
std::string oneLine(const std::vector<std::string>& parts, const Formatter& w);
std::string lines(const std::vector<std::string>& words);

}  // namespace sheets
