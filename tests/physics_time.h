// Reads the moments of the tables against which the sun is checked.
#pragma once

#include "base/date.h"

#include <chrono>
#include <string>

/// Seconds since midnight of '06:36:10'.
inline std::chrono::seconds secondsOf(const std::string& clock) {
  return std::chrono::minutes{base::parseClock(clock.substr(0, 5)).value()} +
         std::chrono::seconds{std::stoi(clock.substr(6))};
}

/// The moment '2016-04-02T18:36:10'.
inline std::chrono::sys_seconds momentOf(const std::string& iso) {
  return base::parseDate(iso.substr(0, 10)).value() + secondsOf(iso.substr(11));
}
