// The dates that hang on the last coat.
#pragma once

#include "model/plan.h"
#include "plan/calendar.h"

namespace plan {

/// Adds walk, furniture, rugs, first_wash and maintenance, counted from the plan's last coat, all but the
/// last by the DryingClock; sorts all events by time and gives each its offset from UTC. Dates that were
/// there before are replaced.
void addDates(model::Plan& plan, const model::Case& c, const Calendar& calendar);

}  // namespace plan
