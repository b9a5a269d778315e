// The firm's own calendar of a job, for the program where it keeps its days: no costs, no office notes.
#pragma once

#include "app/telling.h"

namespace app {

/// The bytes of job.ics: each day of the crew, when the furniture goes back, the first wash, and the visit
/// that comes back.
std::string jobCalendar(const Telling& told);

}  // namespace app
