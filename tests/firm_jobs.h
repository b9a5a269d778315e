// Jobs computed with the folder of their firm.
#pragma once

#include "app/pack/compute.h"

#include <string>

namespace firm_jobs {

/// What jobs are made from, read once for all tests.
inline const app::Firms& firms() {
  static const app::Firms all;
  return all;
}

/// What comes with the program, and no firm's.
inline const app::Shipped& shipped() {
  static const app::Shipped all = app::readShipped();
  return all;
}

inline std::optional<model::JobResult> compute(const app::JobText& job, const app::Choices& choices,
                                               base::Diagnostics& messages) {
  return app::compute(job, *firms().of(job), choices, messages);
}

inline std::optional<model::JobResult> compute(const std::string& file, const app::Choices& choices,
                                               base::Diagnostics& messages) {
  const auto job = app::readJobText(file, messages);
  return job ? compute(*job, choices, messages) : std::nullopt;
}

}  // namespace firm_jobs
