// Facts about the price as the customer reads it.
#pragma once

#include "sheets/make_facts.h"
#include "sheets/words.h"

namespace sheets {

/// 'price', 'stages', 'options', 'currency'. With 'withCosts' each line also holds its cost.
void addPrice(Facts& facts, const Computed& x, const Words& w, bool withCosts);

}  // namespace sheets
