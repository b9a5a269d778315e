// What a calendar costs, and what else speaks for it.
#pragma once

#include "schedule/crew/schedule.h"

namespace schedule {

/// A calendar and what speaks for it.
struct Priced {
  Schedule schedule;
  std::int64_t personMinutes = 0;  // paid
  std::int64_t cost = 0;           // of the smallest unit of money
  int unfit = 0;                   // coats laid by the clock
  int unlicensed = 0;              // passes that the crew has no papers for
  int overworked = 0;              // people and days of more than six hours of work on end
  int leftAlone = 0;               // days that the site is left for, beyond a week at a time
  int outside = 0;                 // coats not in the product's ideal window
  base::LocalTime finish;          // the last coat's end, else the last work's

  bool isBetterThan(const Priced& other) const;
};

Priced priced(Schedule schedule, const Work& work, const Desk& desk);

/// Of one person's hour and of a visit's travel, in the smallest unit of money; the firm's, or where it gives
/// none of our own.
struct Rates {
  std::int64_t hour = 0, visit = 0;
};
Rates ratesOf(const model::Rates& rates);

}  // namespace schedule
