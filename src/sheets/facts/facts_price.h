// Facts about the price as the customer reads it.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// What is used up on a job, by the kinds of work it has: 'cleaner, abrasives, pads'.
std::string materialWords(const model::JobResult& x, const Formatter& w);

/// Three digits, enough for what lies years ahead: $38,900.
std::string roughMoney(base::Money m, const Formatter& w);

/// 'price', 'stages', 'options', 'currency', 'ten_years'. With 'withCosts' each line also holds its cost.
void addPrice(Facts& facts, const model::JobResult& x, const Formatter& w, bool withCosts);

}  // namespace sheets
