// Coats outside the product's ideal window or outside fit hours, with the reason.
#pragma once

#include "schedule/crew/coats.h"

namespace schedule {

/// What is wrong with a coat; 'before' is the same deck's coat before it, if any.
std::optional<model::WindowViolation> missOf(const Lay* before, const Lay& lay, const SessionMaker& maker);

}  // namespace schedule
