#include "estimate/life_cycle.h"

namespace estimate {
namespace {

using base::Round;
using base::Wide;

constexpr std::int64_t wholeShare = 100'000'000;  // 100 % in millionths

Factor oneYearOn(Factor f, const YearlyRates& rates) {
  return {base::mulDiv(f.value, wholeShare + rates.rise.millionths, wholeShare + rates.discount.millionths,
                       Round::HalfUp)};
}

}  // namespace

Factor singlePresentValue(const YearlyRates& rates, int year) {
  Factor f{Factor::one};
  for (int n = 0; n < year; ++n) f = oneYearOn(f, rates);
  return f;
}

Factor uniformPresentValue(const YearlyRates& rates, int years) {
  Factor sum, f{Factor::one};
  for (int n = 0; n < years; ++n) {
    f = oneYearOn(f, rates);
    sum.value += f.value;
  }
  return sum;
}

base::Money presentValue(const std::vector<Payment>& payments, const YearlyRates& rates) {
  Wide sum = 0;
  for (const auto& p : payments) sum += Wide{p.amount.minor} * singlePresentValue(rates, p.year).value;
  return {base::divide(sum, Factor::one, Round::HalfUp)};
}

base::Money equivalentAnnualCost(base::Money presentValue, base::Share discount, int years) {
  return {base::mulDiv(presentValue.minor, Factor::one, uniformPresentValue({discount, {}}, years).value,
                       Round::HalfUp)};
}

model::TenYears tenYears(const Upkeep& upkeep, const YearlyRates& rates) {
  using Kind = model::TenYears::Kind;
  model::TenYears all;
  all.outlays.push_back({Kind::Today, 0, upkeep.today});
  int last = 0, sanding = upkeep.firstSanding * 12;
  for (;;) {
    const int visit = last + upkeep.visitMonths;
    const bool isSanding = sanding <= visit;
    last = isSanding ? sanding : visit;
    if (last >= horizon * 12) break;
    if (isSanding) sanding += upkeep.nextSanding * 12;
    all.outlays.push_back({isSanding ? Kind::Sanding : Kind::Visit, (last + 11) / 12,
                           isSanding ? upkeep.sanding : upkeep.visit});
  }
  std::vector<Payment> payments;
  for (const auto& outlay : all.outlays) {
    all.sum += outlay.amount;
    payments.push_back({outlay.amount, outlay.year});
  }
  all.presentValue = presentValue(payments, rates);
  all.perYear = equivalentAnnualCost(all.presentValue, rates.discount, horizon);
  return all;
}

}  // namespace estimate
