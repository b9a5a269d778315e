// The days after the last coat as the stations of the aftercare sheet's timeline.
#pragma once

#include "drawings/drawings.h"
#include "model/job_result.h"

namespace app {

/// The last coat, planned or laid, and each date after it that is the customer's, with the gaps between them
/// in words.
std::vector<drawings::Milestone> stationsOf(const model::JobResult& x);

}  // namespace app
