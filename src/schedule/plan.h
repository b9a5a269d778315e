// Places every task in the crew's calendar and works out the dates the customer waits for.
#pragma once

#include "base/diagnostic.h"
#include "model/plan.h"

namespace schedule {

/// An error where the tz database does not know the site's time zone. Warnings where no zone of the region's
/// country shows its time, where the coordinates lie over 2,000 km from all of them, or 20 degrees of
/// longitude from the town of the zone.
void checkSite(const model::Job& job, const model::Region& region, base::Diagnostics& messages);

/// Warnings where the start is a public holiday, a day on site is one in some states and the job names none,
/// or the region knows no holidays for the year.
void checkHolidays(const model::JobInputs& c, const model::Plan& plan, base::Diagnostics& messages);

/// The days a plan is asked for; nothing = the job's own start, and no end.
struct Bounds {
  std::optional<base::Date> from;  // no work before it
  std::optional<base::Date> by;    // the last day wanted with work on site
};

/// The cheapest calendar, in money, that obeys the rules: nobody walks over wet boards or is shut in, strips
/// are laid towards the way out and wiped from a dry place, no coat is begun that fit hours do not hold to
/// its last stroke, boards do not stand bare, nobody does two things at once. Days for the first coats are
/// tried one after another, and what comes before them is laid backwards from there. All waits are true hours
/// by the site's time zone, which is a known one. Errors: no time to work or to coat; work for over a year.
model::Plan makePlan(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
                     base::Diagnostics& messages, const Bounds& bounds = {});

}  // namespace schedule
