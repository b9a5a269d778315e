// Which tins to buy.
#pragma once

#include "model/estimate.h"

namespace estimate {

/// The cheapest set of tins that holds at least 'need'; among equals the fewest tins, then the least left
/// over. Exact for any sizes and prices. An empty set for no need; 'tins' must not be empty and hold sizes
/// above zero.
model::TinSet cheapestTins(base::Volume need, const std::vector<model::Tin>& tins);

}  // namespace estimate
