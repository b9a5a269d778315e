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

/// When everybody rests: half way through the working time, from a quarter of an hour on.
inline ClockSpan breakOf(const Crew& crew) {
  const int middle = crew.startMinutes + (crew.endMinutes - crew.startMinutes - crew.breakMinutes) / 2;
  return {middle / 15 * 15, middle / 15 * 15 + crew.breakMinutes};
}

/// Minutes worked between two clock times of a day, the break taken off.
inline int workedMinutes(int from, int until, const Crew& crew) {
  const ClockSpan pause = breakOf(crew);
  return until - from - std::max(0, std::min(until, pause.until) - std::max(from, pause.from));
}

/// A task of a coat lays product when it is measured along the edges or over the surface that takes product;
/// blowing the boards clean before a coat does not.
inline bool laysProduct(const Task& task) {
  return task.isPerCoat && (task.measure == Measure::Wetted || task.measure == Measure::CutIn);
}

}  // namespace model
