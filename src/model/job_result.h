// Everything that is computed of one job.
#pragma once

#include "base/language.h"
#include "model/exposure.h"
#include "model/plan.h"

#include <memory>

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
  std::optional<TenYears> tenYears = {};
  std::vector<std::shared_ptr<const JobResult>> others = {};  // the job's other choices, in their order
};

/// The job by one of its choices: itself, or one of the others.
inline const JobResult& choiceOf(const JobResult& x, std::size_t choice) {
  const std::size_t own = x.c.job.choice;
  return choice == own ? x : *x.others.at(choice < own ? choice : choice - 1);
}

}  // namespace model
