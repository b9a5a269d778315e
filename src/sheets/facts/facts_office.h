// The tables of the office sheet: money and hours by area, days, invoices, and whether the oil will do.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// 'money' and 'money_all', 'hours_heads', 'hours' and 'hours_all', 'labour_hours', 'work_days' and
/// 'work_days_all', 'invoices', 'enough'.
void addOfficeTables(Facts& facts, const model::JobResult& x, const Formatter& w);

}  // namespace sheets
