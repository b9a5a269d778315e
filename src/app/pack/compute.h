// A job file becomes everything that is computed from it.
#pragma once

#include "app/pack/firms.h"
#include "model/job_result.h"

namespace app {

/// Reads a job's file ('-' is standard input); nothing, and an error, when it cannot be read.
std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages);

/// A job that is computed, and what it was made from; nothing where there were errors.
struct ComputedJob {
  std::shared_ptr<const Shipped> shipped;
  std::optional<model::JobResult> result;
};
/// Reads a job ('-' is standard input) and computes it.
ComputedJob computeFile(const std::string& file, const Choices& choices, base::Diagnostics& messages);
/// The same of its text; nothing when there were errors. Must not outlive what is shipped.
std::optional<model::JobResult> compute(const JobText& job, const Shipped& shipped, const Choices& choices,
                                        base::Diagnostics& messages);

/// The look of a firm that has chosen none.
model::Theme usualTheme(const Shipped& shipped, base::Diagnostics& messages);

}  // namespace app
