// Times by the clock of a place become moments.
#pragma once

#include "base/diagnostic.h"
#include "forecast/series.h"

namespace forecast {

/// A time of a line, by the clock on site.
struct ClockTime {
  int line = 0;
  Time clock;
};

/// An hour that comes twice is its second one where the first is over, or where only the second keeps the
/// steps equal. Errors, with the line, for a time that the clocks leave out.
std::vector<Time> momentsOf(const std::vector<ClockTime>& times, const std::string& zone,
                            const std::string& file, base::Diagnostics& messages);

}  // namespace forecast
