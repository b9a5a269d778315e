// Which tins of the shed to open, and what they are worth.
#pragma once

#include "model/estimate.h"

namespace estimate {

/// What a full tin costs to buy again: its price, or its share of that of the smallest larger tin (of the
/// largest tin where there is none). 'sold' must not be empty, smallest first.
base::Money priceAgain(base::Volume size, const std::vector<model::Tin>& sold);

struct Shed {
  std::vector<model::StockTin> opened, shut;
};

/// Opens what the need takes of the tins in the shed, the largest only where the others do not do. Where the
/// last tin is not emptied, it stays shut if buying instead costs less than what the job takes out of it and
/// what the rest of it loses, 'openedLoss' of its worth.
Shed openShed(base::Volume need, std::vector<model::StockTin> shed, const std::vector<model::Tin>& sold,
              base::Share openedLoss);

}  // namespace estimate
