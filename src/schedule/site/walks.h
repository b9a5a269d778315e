// Who walks where: from one place of work to the next, and over what.
#pragma once

#include "schedule/site/site.h"

namespace schedule {

/// Taken to last no time.
struct Walk {
  std::size_t person = 0;
  base::LocalTime start;
  Where from, to;                 // nothing = the ground
  std::vector<std::size_t> over;  // both ends left out; a walk over the ground is two
};

/// Of everyone on all days, by start, then person. Whoever waits stays where they are if they go on there;
/// whoever rests, sets up or packs down is on the ground. Where wet boards lie in between, whoever waits goes
/// along with those who lay.
std::vector<Walk> walksOf(const model::Plan& plan, const AccessGraph& graph);

/// Whether nobody may step on a deck at a moment: a coat has begun and is not open to walk on yet; what is
/// coated once more later that day bears a step as soon as that coat may follow.
bool isShut(const model::Plan& plan, std::size_t deck, base::LocalTime at);

}  // namespace schedule
