// Facts about the price as the customer reads it.
#pragma once

#include "sheets/facts/make_facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// 'price', 'stages', 'options', 'currency'. With 'withCosts' each line also holds its cost.
void addPrice(Facts& facts, const Computed& x, const Formatter& w, bool withCosts);

}  // namespace sheets
