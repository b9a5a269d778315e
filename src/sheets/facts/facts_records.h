// Facts about the coats as they were laid.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// Every batch that went onto the decks: the job's own list, then those of the records.
std::vector<std::string> batchesOf(const model::JobResult& x);

/// Whether every coat of the job was recorded: until then its dates are plans.
bool isAllLaid(const model::JobResult& x);

/// 'all_laid', 'has_records' and 'laid': one row for each record, in order of time, then one for each coat
/// still planned. No hours, nothing measured and no remark: those are the office's.
void addLaid(Facts& facts, const model::JobResult& x, const Formatter& w);

/// 'visit': of the yearly one after the job, when it is due, two weeks to choose from, and, where an offer is
/// made, its guide price.
void addVisit(Facts& facts, const model::JobResult& x, const Formatter& w);

/// 'last_time': each deck with the batches, the readings and the rate of its last coat, and what was noted of
/// it.
void addLastTime(Facts& facts, const model::JobResult& x, const Formatter& w);

/// 'actual' and what belongs to it: each recorded coat beside the plan, what was measured, what is left.
void addActual(Facts& facts, const model::JobResult& x, const Formatter& w);

}  // namespace sheets
