// Finding things in the plain structs.
#pragma once

#include "model/job.h"

#include <algorithm>
#include <stdexcept>

namespace model {

/// True when a job's 'work:' names this kind.
inline bool asksFor(const std::vector<Work>& work, Work one) {
  return std::find(work.begin(), work.end(), one) != work.end();
}

/// The task of an id that a labour line or a shift carries; such ids always come from the content.
inline const Task& taskOf(const Content& content, const std::string& id) {
  for (const auto& task : content.tasks) {
    if (task.id == id) return task;
  }
  throw std::logic_error("internal error: no task '" + id + "'");
}

}  // namespace model
