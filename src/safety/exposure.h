// What this job does to its crew, day by day. Limits of the region say what is too much; no number here
// permits anything.
#pragma once

#include "model/exposure.h"
#include "model/plan.h"

namespace safety {

/// Everybody works on the same task, each with his own machine, so a person's time with a tool is the shift's
/// time and the tool's share of it. Days without noise, vibration or known weather are left out; vapour is
/// counted for decks under a roof or between walls only.
model::CrewExposure exposureOf(const model::JobInputs& c, const model::Content& content,
                               const model::Estimate& estimate, const model::Resources& resources,
                               const model::Plan& plan);

}  // namespace safety
