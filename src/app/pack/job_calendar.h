// The firm's own calendar of a job, for the program where it keeps its days: no costs, no office notes.
#pragma once

#include "model/job_result.h"

#include <string>

namespace app {

/// The bytes of job.ics: each day of the crew, when the furniture goes back, the first wash, and the visit
/// that comes back; none of a job that was declined. 'before' are the bytes of the job.ics that it replaces,
/// or empty: what the plan no longer holds is cancelled.
std::string jobCalendar(const model::JobResult& x, const std::string& before);

}  // namespace app
