// The hours of one deck as runs that look alike, cut at sunrise and sunset.
#pragma once

#include "drawings/pen/hatch.h"

namespace drawings {

/// Minutes of the clock.
struct Span {
  int from = 0, until = 0;
};

/// Hours in a row that are alike.
struct Run {
  Span at;
  bool isFit = false;
  std::optional<model::WeatherLimit> reason;  // nothing: an hour that the dark leaves only a part of
};

/// The runs of the hours shown. It is dark only up to the minute of sunrise and from that of sunset on; the
/// rest of such an hour has its own reason, or none.
std::vector<Run> runsOf(const std::vector<model::Hour>& hours, const HoursDay& day);

/// The longest part of a run that no coat is planned in: there words have room.
Span freePart(const Run& run, const std::vector<CoatSpan>& coats);

/// What is alike is hatched alike, what is not never: cold and dry hatches run straight, hot and wet ones
/// lean or are broken.
Hatch hatchOf(const Run& run);

}  // namespace drawings
