// The dates that hang on the last coat.
#pragma once

#include "model/plan.h"
#include "schedule/crew/calendar.h"

namespace schedule {

/// Adds walk, furniture, rugs, first_wash and maintenance, counted from the plan's last coat, all but the
/// last by the DryingClock; sorts all events by time and gives each its offset from UTC. Dates that were
/// there before are replaced.
void addDates(model::Plan& plan, const model::JobInputs& c, const Calendar& calendar);

}  // namespace schedule
