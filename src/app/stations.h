// The days after the last coat as the stations of the aftercare sheet's timeline.
#pragma once

#include "figures/figures.h"
#include "sheets/make_facts.h"

namespace app {

/// The last coat, planned or laid, and each date after it that is the customer's, with the gaps between them
/// in words.
std::vector<figures::Station> stationsOf(const sheets::Computed& x);

}  // namespace app
