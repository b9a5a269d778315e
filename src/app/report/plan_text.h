// The plan of a job as text and as JSON.
#pragma once

#include "app/pack/compute.h"

namespace app {

/// A computed plan with every hour of the days it was asked for.
struct PlanReport {
  const model::JobResult& x;
  const model::Content& content;
  base::Date from, until;  // 'until' not included
  std::vector<model::Hour> hours;
  std::vector<model::SunDay> light;
};

/// The days from the plan's first to its last, or as far as the bounds go.
PlanReport reportPlan(const model::JobResult& x, const model::Content& content,
                      const schedule::Bounds& bounds);

/// Day by day: light, work, hours fit for coating and why the others are not; then misses and alternatives.
std::string planText(const PlanReport& report);

/// By the names of content/schemas/plan.schema.json. Times are local ISO 8601 with their offset from UTC.
std::string planJson(const PlanReport& report);

}  // namespace app
