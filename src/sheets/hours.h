// How the hours of a line of labour came about, for the office.
#pragma once

#include "model/estimate.h"
#include "sheets/words.h"

namespace sheets {

/// '74.87 m2 / 12 m2/h x 130 %', '0.5 h x 3 days': plain figures, as an office types them into a sheet of
/// sums.
std::string hoursFormula(const model::LabourLine& line, const model::Task& task, const Words& w);

}  // namespace sheets
