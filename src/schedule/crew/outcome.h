// The calendar that was found, as the plan tells it.
#pragma once

#include "schedule/crew/search.h"

namespace schedule {

/// 'found.best' is not empty.
model::Plan planOf(const Found& found, const Desk& desk, const model::Content& content,
                   const model::Estimate& e, base::Date start);

/// The day plan's order of the boards of each deck and coat.
std::vector<model::WetEdge> wetEdgesOf(const Found& found, const Schedule& schedule, const Desk& desk,
                                       const model::Estimate& e);

/// Why nobody came on the working days before a day on site, the first counted from 'start'.
std::optional<model::DayHold> holdOf(const Schedule& schedule, std::size_t day, const Work& work,
                                     const Desk& desk, base::Date start);

/// What is wrong with coats: outside the ideal window, or in no fit hours.
std::vector<model::WindowViolation> missesOf(const Work& work, const Schedule& schedule, const Desk& desk);

/// Coats that no day of the coming weeks is fit for, and work after the day wanted.
void warnOf(const model::Plan& plan, const model::JobInputs& c, std::optional<base::Date> by,
            base::Diagnostics& messages);

}  // namespace schedule
