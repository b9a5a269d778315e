// Which way through the work is the best one, and which other days the coats could start on.
#pragma once

#include "schedule/crew/crew.h"

namespace schedule {

/// The best of the policies.
Course bestCourse(const Work& work, const SessionMaker& maker, const model::Estimate& e,
                  base::LocalTime start);

/// The same job with its first coat on each of the next days, the best three first.
std::vector<model::Alternative> alternativesTo(const Course& course, const Work& work,
                                               const SessionMaker& maker, const model::Estimate& e,
                                               base::LocalTime start);

/// The last coat's end, or that of the last work where nothing is coated.
base::LocalTime finishedOf(const Course& course, base::LocalTime start);

}  // namespace schedule
