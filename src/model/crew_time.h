// The crew: its hours as clock time, its names.
#pragma once

#include "model/job.h"

namespace model {

inline constexpr int clockStep = 5;  // minutes: nobody plans finer

inline int upToStep(int minutes) { return (minutes + clockStep - 1) / clockStep * clockStep; }

/// Clock minutes that so many people need for some person-hours, rounded up to the step.
inline std::int64_t crewMinutes(base::Hours hours, int people) {
  const base::Wide wanted = base::Wide{hours.millionths} * 60;
  return clockStep * base::divide(wanted, base::Wide{1'000'000} * people * clockStep, base::Round::Up);
}

/// 'Mara Quill'; 'Person 2' where the job gives no name, in the words of 'someone'.
inline std::string personName(const Crew& crew, std::size_t person, const std::string& someone = "Person") {
  return person < crew.names.size() ? crew.names[person] : someone + " " + std::to_string(person + 1);
}

}  // namespace model
