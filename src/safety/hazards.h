// Which hazards of content/hazards.yaml apply to a job, and why.
#pragma once

#include "model/exposure.h"
#include "model/plan.h"

#include <vector>

namespace safety {

/// One answer for each hazard of the content, in its order, with those that do not apply. What is not known
/// counts as if it held.
std::vector<model::HazardChoice> hazardsOf(const model::JobInputs& c, const model::Content& content,
                                           const model::Estimate& estimate, const model::Resources& resources,
                                           const model::CrewExposure& exposure);

}  // namespace safety
