// What differs between a job and the one that follows it a year later.
#pragma once

#include "model/job_result.h"

namespace app {

/// What its coats take: as laid, else as planned with loss.
base::Volume litresOf(const model::JobResult& x);

/// A table of litres, hours, days, waits and price, only what differs. Both prices are by the firm's rates as
/// they are now; the litres are those laid, where they are recorded.
std::string yearChanges(const model::JobResult& last, const model::JobResult& next);

}  // namespace app
