// From the crew's way to the plan that is printed, and what has to be said about it.
#pragma once

#include "base/diagnostic.h"
#include "schedule/crew/crew.h"

namespace schedule {

/// Shifts, days, events, misses, hours and light; all but 'edges' and 'alternatives'.
model::Plan planOf(const Course& course, const SessionMaker& maker, base::LocalTime start);

/// Warnings: coats that the weather does not allow, and work that does not end by a day.
void warnOf(const model::Plan& plan, const model::JobInputs& c, std::optional<base::Date> by,
            base::Diagnostics& messages);

}  // namespace schedule
