// The days as they were: recorded coats take the place of planned ones.
#pragma once

#include "model/plan.h"

namespace schedule {

/// An error for each recorded time that the clocks skip; none where the time zone is not known.
void checkRecordedTimes(const model::Job& job, base::Diagnostics& messages);

/// Puts the recorded times of the coats into a plan, and the dates that hang on the last of them: walking,
/// furniture, rugs, first wash, yearly visit. Coats without a record stay as planned, with a warning where
/// the plan has one before the coat below it was finished. A warning too where the recorded air, humidity and
/// boards were within 3 K of dew, or what was measured lies outside the product's limits. Nobody is told any
/// more why a recorded coat was planned outside its window. The parts of a coat count from the first's start
/// to the last's end. Nothing changes where there are no records.
void applyRecords(model::Plan& plan, const model::JobInputs& c, base::Diagnostics& messages);

/// Of a job that only tells the day on which it was done: its dates, counted from the evening of that day.
/// Coats stay as planned.
void applyDayDone(model::Plan& plan, const model::JobInputs& c);

}  // namespace schedule
