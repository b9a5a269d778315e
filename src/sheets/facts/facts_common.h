// The facts of each reader, and those that all of them may know: firm, job, site, product, days and dates.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/facts/room.h"
#include "sheets/words/formatter.h"

namespace sheets {

Facts commonFacts(const model::JobResult& x, const Formatter& w);
/// No money at all; with the crew's days.
Facts crewFacts(const model::JobResult& x, const Formatter& w);
/// Those of them that say less where there is less room.
Facts leafFacts(const model::JobResult& x, const Formatter& w, LeafRoom room);
/// Everything, costs included.
Facts officeFacts(const model::JobResult& x, const Formatter& w);
/// 'coat_days', 'other_days' and what belongs to them.
void addDayPlans(Facts& f, const model::JobResult& x, const Formatter& w);

/// The title of a document: 'Landing, Steps and Terrace, washed, sanded and oiled twice'.
std::string titleOf(const model::JobResult& x);
/// 'Landing, Steps and Terrace', or their number where they are many.
std::string deckNames(const model::Job& job, const Formatter& w);
/// The same at the beginning of a line.
std::string namesOfDecks(const model::JobResult& x);

/// Whom to ask about 'safety', 'waste' and so on: 'the local authority' where the region names none.
std::string authorityOf(const Formatter& w, const std::string& about);

FactList sentences(const std::vector<std::string>& words);
/// 'Coldwater Lodge, 4 Mill Bay Road, Ferncombe'.
std::string oneLine(const std::vector<std::string>& parts, const Formatter& w);
std::string lines(const std::vector<std::string>& words);

}  // namespace sheets
