// The facts of each reader, and those that all of them may know: firm, job, site, product, days and dates.
#pragma once

#include "sheets/facts/make_facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

Facts commonFacts(const Computed& x, const Formatter& w);
/// No money at all; with the crew's days.
Facts crewFacts(const Computed& x, const Formatter& w, Room room);
/// Everything, costs included.
Facts officeFacts(const Computed& x, const Formatter& w);
/// 'day_plans' and what belongs to them.
void addDayPlans(Facts& f, const Computed& x, const Formatter& w);

FactList sentences(const std::vector<std::string>& words);
std::string lines(const std::vector<std::string>& words);

}  // namespace sheets
