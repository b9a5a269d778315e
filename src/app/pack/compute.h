// A job file becomes everything that is computed from it.
#pragma once

#include "app/pack/shipped.h"
#include "model/job_result.h"

namespace app {

struct JobText {
  std::string name;  // its file, for messages and for what it names beside itself
  std::string text;
};

/// Reads a job's file ('-' is standard input); nothing, and an error, when it cannot be read.
std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages);

/// Reads a job ('-' is standard input) and computes it; nothing when there were errors. Must not outlive what
/// is shipped.
std::optional<model::JobResult> compute(const std::string& file, const Shipped& shipped,
                                        const Choices& choices, base::Diagnostics& messages);
std::optional<model::JobResult> compute(const JobText& job, const Shipped& shipped, const Choices& choices,
                                        base::Diagnostics& messages);

}  // namespace app
