// What one day comes to, of lists that leave out the days without a value.
#pragma once

#include "sheets/words/formatter.h"

#include <algorithm>
#include <cmath>

namespace sheets {

/// Null where the day has no value.
template <class Day>
const Day* on(const std::vector<Day>& days, base::Date date) {
  const auto found = std::find_if(days.begin(), days.end(), [&](const Day& day) { return day.date == date; });
  return found == days.end() ? nullptr : &*found;
}

inline std::string number(const Formatter& w, double value, int places) {
  return w.number({std::llround(value * 1e6)}, places);
}

}  // namespace sheets
