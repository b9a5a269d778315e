// A table of amounts, rounded so that its printed rows and columns add up.
#pragma once

#include <cstdint>
#include <vector>

namespace sheets {

using Amounts = std::vector<std::vector<std::int64_t>>;  // rows of one length, zero or above

/// Whole steps for each amount, the next below or above it, so that the sum of each row, of each column and
/// of all is the next whole step below or above its exact sum, too: zero-restricted controlled rounding (L.
/// H. Cox, 'A constructive procedure for unbiased controlled rounding', Journal of the American Statistical
/// Association 82 (1987)), each cycle moved the shorter way.
Amounts controlledRounding(const Amounts& amounts, std::int64_t step);

}  // namespace sheets
