// What the law of a place says about deposits and about the days in which a customer may cancel.
#pragma once

#include "model/job.h"

namespace estimate {

/// The cap for a total with tax, in a state or, with an empty id, a region as a whole; null where none is
/// known.
const model::DepositCap* depositCapFor(const model::Region& region, const std::string& state,
                                       base::Money total);

/// The most a deposit may be, rounded down to a coin. 'specialOrders' is the cost of materials made to order.
base::Money mostDeposit(const model::DepositCap& cap, base::Money total, base::Money specialOrders);

/// The last day on which a customer may cancel who agrees on this day (and has the papers by then).
base::Date lastDayToCancel(const model::Cancellation& rule, base::Date agreed, bool isUninvited,
                           const std::vector<base::Date>& holidays);

}  // namespace estimate
