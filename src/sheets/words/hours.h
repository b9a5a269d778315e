// How the hours of a line of labour came about, for the office.
#pragma once

#include "model/estimate.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// '74.87 m² / 12 m²/h × 130 %', '0.5 h × 3 days'.
std::string hoursFormula(const model::LabourLine& line, const model::Task& task, const Formatter& w);

}  // namespace sheets
