// What one day comes to, in words; these physics never meet money.
#pragma once

#include "model/lookup.h"
#include "sheets/words/formatter.h"

#include <algorithm>
#include <cmath>

namespace sheets {

/// Null where the day has no value: lists leave such days out.
template <class Day>
const Day* on(const std::vector<Day>& days, base::Date date) {
  const auto found = std::find_if(days.begin(), days.end(), [&](const Day& day) { return day.date == date; });
  return found == days.end() ? nullptr : &*found;
}

/// Null where there are none.
template <class Day, class Value>
const Day* hardest(const std::vector<Day>& days, Value value) {
  const auto most = std::max_element(days.begin(), days.end(),
                                     [&](const Day& a, const Day& b) { return value(a) < value(b); });
  return most == days.end() ? nullptr : &*most;
}

inline std::string rounded(const Formatter& w, double value, int places = 0) {
  return w.number({std::llround(value * 1e6)}, places);
}

/// In the region's degrees.
inline double inDegrees(const Formatter& w, double celsius) {
  return w.isMetric() ? celsius : celsius * 1.8 + 32;
}
inline std::string degreeSign(const Formatter& w) {
  return w(w.isMetric() ? "units.celsius" : "units.fahrenheit");
}

/// Whether a number may be printed: its source is named, and not from memory.
inline bool isTold(const std::string& source) { return !source.empty() && !model::isFromMemory(source); }

}  // namespace sheets
