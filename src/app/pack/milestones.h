// The days after the last coat as the stations of the aftercare sheet's timeline.
#pragma once

#include "drawings/drawings.h"
#include "model/job_result.h"

namespace app {

/// The last coat, planned or laid, and each date after it that is the customer's, with the gaps between them
/// in words.
std::vector<drawings::Milestone> stationsOf(const model::JobResult& x);

/// The dates of a quote: when the areas have to be clear, each kind of work, and when they can be used again.
std::vector<drawings::Milestone> quoteStationsOf(const model::JobResult& x);

}  // namespace app
