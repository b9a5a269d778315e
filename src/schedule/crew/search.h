// The cheapest calendar that obeys the rules: days for the first coats are tried one after another, and
// everything before them is laid backwards from there.
#pragma once

#include "schedule/crew/priced.h"

namespace schedule {

struct Found {
  Work work;
  std::vector<Priced> best;  // the cheapest first, then those with the first coat on other days
};

/// Deterministic and bounded. Empty 'best' where no calendar was found: then no day holds even a part of a
/// coat.
Found cheapest(const Desk& desk, const model::Content& content, const model::Estimate& e,
               const std::vector<std::optional<Row>>& rows, base::Date start);

}  // namespace schedule
