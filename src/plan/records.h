// The days as they were: recorded coats take the place of planned ones.
#pragma once

#include "model/plan.h"

namespace plan {

/// Puts the recorded times of the coats into a plan, and the dates that hang on the last of them: walking,
/// furniture, rugs, first wash, yearly visit. Coats without a record stay as planned, with a warning where
/// the plan has one before the coat below it was finished. A warning too where the recorded air, humidity and
/// boards were within 3 K of dew. Nobody is told any more why a recorded coat was
/// planned outside its window.
void applyRecords(model::Plan& plan, const model::Case& c, base::Diagnostics& messages);

}  // namespace plan
