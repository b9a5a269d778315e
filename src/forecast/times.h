// Moments and spans as weather files write them: ISO 8601 (2019).
#pragma once

#include "forecast/series.h"

#include <string_view>

namespace forecast {

/// What a stamp says: a clock and, where it is written, how far that clock is ahead of UTC.
struct Stamp {
  Time clock;
  std::optional<std::chrono::minutes> offset;
};

/// '2027-07-12T06:00', a blank in place of the T, seconds of 00 and parts of them, 'Z' or an offset behind
/// it.
std::optional<Stamp> parseStamp(std::string_view s);

/// 'PT3H', 'P1DT6H'; nothing for months, years, seconds, and more than 31 days.
std::optional<std::chrono::minutes> parseDuration(std::string_view s);

/// '2 h', '90 min'.
std::string spanWords(std::chrono::seconds span);

}  // namespace forecast
