// Everything that is computed of one job.
#pragma once

#include "base/language.h"
#include "model/exposure.h"
#include "model/plan.h"

namespace model {

/// What a customer is told of the yearly visit after a job.
struct VisitOffer {
  base::Money guidePrice;  // with tax, rounded up
  base::Date due{};
  base::Date from{};  // the first week to choose from holds this day
};

/// In the language that its content is in, which 'c' points into. All else is the same in every language.
struct JobResult {
  JobInputs c;
  const Content& content;
  const base::Language& language;
  Estimate estimate;
  Plan plan;
  Resources resources;
  Enough enough;
  AsLaid laid;
  Price price;
  CrewExposure exposure;
  std::vector<HazardChoice> hazards;     // every one of the content, in its order
  std::optional<VisitOffer> offer = {};  // nothing where none is made
};

}  // namespace model
