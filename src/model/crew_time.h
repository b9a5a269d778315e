// Person-hours as clock time of the whole crew.
#pragma once

#include "model/job.h"

namespace model {

/// Clock minutes the whole crew needs for some person-hours, rounded up to five: nobody plans finer.
inline std::int64_t crewMinutes(base::Hours hours, const Crew& crew) {
  constexpr std::int64_t step = 5;
  const base::Wide wanted = base::Wide{hours.millionths} * 60;
  return step * base::divide(wanted, base::Wide{1'000'000} * crew.people * step, base::Round::Up);
}

}  // namespace model
