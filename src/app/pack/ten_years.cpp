#include "app/pack/ten_years.h"

#include "estimate/estimate.h"
#include "estimate/life_cycle.h"
#include "model/lookup.h"
#include "schedule/plan.h"

#include <algorithm>

namespace app {
namespace {

/// Back on the same boards, with nothing of today's records, tins and terms.
model::JobInputs cameBack(const model::JobResult& x, base::Date start) {
  model::JobInputs c = x.c;
  auto& job = c.job;
  job.start = start;
  job.forecast = {};
  job.inStock.clear();
  job.done.clear();
  job.left.clear();
  job.price.discount = {};
  job.price.deposit = {};
  job.price.stages.clear();
  job.price.options.clear();
  const bool isStain = c.product->kind == model::ProductKind::FilmStain;
  for (auto& deck : job.areas) {
    deck.state = isStain ? model::State::Film : model::State::Oiled;
    deck.rates.clear();
    deck.testPatch.reset();
  }
  return c;
}

/// A wash and one coat.
model::JobInputs visitOf(const model::JobResult& x, base::Date start) {
  model::JobInputs c = cameBack(x, start);
  c.job.work = {model::Work::Wash, model::Work::Oil};
  c.job.sanding.clear();
  for (auto& deck : c.job.areas) deck.coats = 1;
  return c;
}

/// All areas together, as today where today's job sands them.
model::JobInputs sandingOf(const model::JobResult& x, base::Date start, const model::TenYearsBasis& basis) {
  model::JobInputs c = cameBack(x, start);
  if (model::asksFor(c.job.work, model::Work::Sand)) return c;
  c.job.work = {model::Work::Wash, model::Work::Sand, model::Work::Oil};
  c.job.sanding = basis.grits;
  for (auto& deck : c.job.areas) deck.coats = basis.coats;
  return c;
}

/// Tax included; nothing, and why, where it cannot be planned.
std::optional<base::Money> priceOf(const model::JobInputs& c, const model::Content& content,
                                   base::Diagnostics& why) {
  const auto estimate = estimate::makeEstimate(c, content);
  const auto plan = schedule::makePlan(c, content, estimate, why);
  if (!why.ok()) return {};
  const auto resources =
      estimate::makeResources(c, content, estimate, static_cast<int>(plan.days.size()), plan.extraPasses);
  return estimate::makePrice(c, content, estimate, resources).total;
}

/// Years until the first of the areas is due.
int firstSanding(const model::Job& job, const model::TenYearsBasis& basis) {
  if (model::asksFor(job.work, model::Work::Sand)) return basis.sandAfter.at(model::State::Sanded);
  int years = basis.sandAfter.at(job.areas.front().state);
  for (const auto& deck : job.areas) years = std::min(years, basis.sandAfter.at(deck.state));
  return years;
}

const model::Deck* forbiddenToSand(const model::JobResult& x) {
  if (model::maySandTreated(x.c.job)) return nullptr;
  for (const auto& deck : x.c.job.areas) {
    if (model::mayBeTreated(deck, x.content)) return &deck;
  }
  return nullptr;
}

}  // namespace

std::optional<model::TenYears> tenYearsOf(const model::JobResult& x, base::Diagnostics& messages) try {
  const auto& job = x.c.job;
  const auto refuse = [&](const std::string& what, const std::string& hint) {
    messages.error(job.price.tenYearsPos, "price.ten_years", what, hint);
    return std::nullopt;
  };
  if (!x.c.firm.tenYears)
    return refuse("'" + x.c.firm.name + "' does not say what it reckons with",
                  "write 'ten_years:' into 'firm.yaml'; 'planksheaf help method' tells its keys");
  const auto* visit = model::eventOf(x.plan, model::Moment::Maintenance);
  if (visit == nullptr)
    return refuse("the job lays no coat, so no later visit follows from it",
                  "add 'oil' to 'work', or leave 'ten_years' out");
  const auto& basis = *x.c.firm.tenYears;
  const int first = firstSanding(job, basis);
  const auto* forbidden = first < estimate::horizon ? forbiddenToSand(x) : nullptr;
  if (forbidden != nullptr)
    return refuse(
        "the boards of '" + forbidden->name + "' may hold arsenic, and within ten years they would be sanded",
        "leave 'ten_years' out, or write 'licensed_for: [treated]' where your papers allow it");
  const base::Date day = visit->at.day;
  base::Diagnostics why;
  const auto visitPrice = priceOf(visitOf(x, day), x.content, why);
  const auto sandingPrice =
      first < estimate::horizon ? priceOf(sandingOf(x, day, basis), x.content, why) : base::Money{};
  if (!visitPrice || !sandingPrice)
    return refuse(
        "no days are found for the visit due on " + base::isoDate(day) + ": " + why.all().front().message,
        "leave 'ten_years' out");
  return estimate::tenYears({.today = x.price.total,
                             .visit = *visitPrice,
                             .sanding = *sandingPrice,
                             .visitMonths = x.c.product->times.maintenanceMonths,
                             .firstSanding = first,
                             .nextSanding = basis.sandAfter.at(model::State::Sanded)},
                            {basis.discountRate, basis.priceRise});
} catch (const std::overflow_error&) {
  messages.error(x.c.job.price.tenYearsPos, "price.ten_years", "comes to figures too large to compute",
                 "check the sizes, rates and prices");
  return {};
}

}  // namespace app
