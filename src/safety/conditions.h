// Whether one condition of a hazard holds for a job, and what a person has to be told about it.
#pragma once

#include "model/exposure.h"
#include "model/plan.h"

#include <string>

namespace safety {

/// All that a condition can ask about.
struct Situation {
  const model::JobInputs& c;
  const model::Content& content;
  const model::Estimate& estimate;
  const model::Resources& resources;
  const model::CrewExposure& exposure;
};

struct Answer {
  bool holds = false;
  bool isKnown = true;       // false: it may hold, so it counts as if it did
  std::string value, limit;  // the job's own value in words, and what it is weighed against; may be empty
};

Answer answerTo(const model::Clause& clause, const Situation& s);

}  // namespace safety
