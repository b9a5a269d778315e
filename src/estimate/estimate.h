// Sizes, litres, tins, hours, costs and price of a job. Exact; pure functions from value to value.
#pragma once

#include "estimate/coverage.h"
#include "estimate/labour.h"
#include "estimate/measure.h"
#include "estimate/tax.h"
#include "estimate/tins.h"
#include "model/estimate.h"

namespace estimate {

/// Sizes, coats and work, before there is a plan.
model::Estimate makeEstimate(const model::JobInputs& c, const model::Content& content);

/// Labour, tins and consumables of a job that takes so many days on site. 'late' are the coats that the plan
/// could not keep inside the product's longest wait.
model::Resources makeResources(const model::JobInputs& c, const model::Content& content,
                               const model::Estimate& e, int days,
                               const std::vector<model::ExtraPass>& late = {});

/// The quote's lines, discount, tax, total, deposit and stages, and the costs behind them.
model::Price makePrice(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
                       const model::Resources& r);

}  // namespace estimate
