// Facts about what is invoiced: the stage that is due, and what was agreed since the quote.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// With tax, of the options that the customer took.
base::Money takenOptions(const model::JobResult& x);

/// The tax in each stage, in the order of the price; they add up to the price's tax.
std::vector<base::Money> taxOfStages(const model::Price& price);

/// 'invoice': the last of the job's invoices, what went out before it and the options on it; of a job without
/// one the first, undated. 'agreed': the price and the options taken.
void addInvoice(Facts& facts, const model::JobResult& x, const Formatter& w);

}  // namespace sheets
