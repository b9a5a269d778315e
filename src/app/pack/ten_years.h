// The price of a job becomes what its boards cost over ten years.
#pragma once

#include "model/job_result.h"

namespace app {

/// Visits and sandings as the firm reckons, each planned and priced like a job of its own, at today's rates
/// and without discount. Nothing, and an error, where the firm has not said what it reckons with, no coat is
/// laid, the boards may not be sanded, or no days can be found for a visit.
std::optional<model::TenYears> tenYearsOf(const model::JobResult& x, base::Diagnostics& messages);

}  // namespace app
