// Coats outside the product's ideal window or outside fit hours, with the reason.
#pragma once

#include "plan/coats.h"

namespace plan {

/// What is wrong with a coat; 'before' is the same deck's coat before it, if any.
std::optional<model::Miss> missOf(const Lay* before, const Lay& lay, const SessionMaker& maker);

}  // namespace plan
