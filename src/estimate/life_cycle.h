// What boards cost over ten years, by the method of NIST Handbook 135, Life-Cycle Costing Manual for the
// Federal Energy Management Program (1995): amounts fall at the end of their year and are discounted to
// today. Real rates go with prices that do not rise, nominal ones with prices that do.
#pragma once

#include "model/estimate.h"

namespace estimate {

inline constexpr int horizon = 10;  // years

/// A pure number in units of 1e-15.
struct Factor {
  std::int64_t value = 0;
  static constexpr std::int64_t one = 1'000'000'000'000'000;
};

/// Rates of a year. Each is above -100 %.
struct YearlyRates {
  base::Share discount, rise;
};

/// SPV, ((1 + e) / (1 + d))^n: what one unit at the end of year n is worth today.
Factor singlePresentValue(const YearlyRates& rates, int year);
/// UPV, and UPV* where prices rise: what one unit at the end of each of the years is worth today.
Factor uniformPresentValue(const YearlyRates& rates, int years);

/// An amount at the end of a year; below zero where it comes back.
struct Payment {
  base::Money amount;
  int year = 0;  // 0 = today
};
/// Sum of the payments times their SPV, rounded once.
base::Money presentValue(const std::vector<Payment>& payments, const YearlyRates& rates);
/// The same amount at the end of each year that is worth as much today: the value over its UPV.
base::Money equivalentAnnualCost(base::Money presentValue, base::Share discount, int years);

/// When coats come, and what they cost at today's prices, tax included.
struct Upkeep {
  base::Money today, visit, sanding;
  int visitMonths = 12;                   // from one coat to the next
  int firstSanding = 0, nextSanding = 0;  // years from today, and from a sanding to the next
};
/// Coats strictly before ten years are over. One falls into the year that its month ends or lies in. A visit
/// that meets a sanding is left out, and the time to the next one counts from there.
model::TenYears tenYears(const Upkeep& upkeep, const YearlyRates& rates);

}  // namespace estimate
