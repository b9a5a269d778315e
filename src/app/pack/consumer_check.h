// Warnings about a deposit and about a start that the consumer law of the place may forbid.
#pragma once

#include "model/estimate.h"
#include "sheets/words/formatter.h"

namespace app {

void checkConsumerRules(const model::JobInputs& c, const model::Price& price, const sheets::Formatter& w,
                        base::Diagnostics& messages);

}  // namespace app
