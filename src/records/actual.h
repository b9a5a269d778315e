// What the recorded coats really took.
#pragma once

#include "model/estimate.h"

namespace records {

/// Puts the job's records beside the planned coats, and what is left over. Litres given for several decks
/// together are shared out in proportion to the planned ones, to the last nanolitre.
void addActual(model::Estimate& e, const model::Case& c);

/// A spreading rate as a product's table has it: without the job's loss, which is added again to whatever is
/// planned with it.
base::Spread withoutLoss(base::Spread asLaid, base::Share loss);

}  // namespace records
