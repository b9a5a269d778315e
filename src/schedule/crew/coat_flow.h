// How a round of coats is laid: strip after strip, cut in just ahead, laid, and wiped a while later by people
// who find a dry place to stand.
#pragma once

#include "schedule/crew/strips.h"

namespace schedule {

struct Flow {
  std::vector<FlowStrip> strips;
  std::vector<std::pair<int, int>> rests;  // of everyone at once
  int firstStroke = 0, lastStroke = 0, end = 0;
  int joints = 0;     // where laying had to wait until what lay behind was wiped
  int late = 0;       // strips that waited twice as long as they should
  int unreached = 0;  // strips that no dry place gives reach of, wiped as they are laid
};

/// The flow that is done soonest, by however many people lay while the others cut in and wipe; nothing where
/// no fit hours hold it from the first stroke to the last. The first stroke is not before 'start'.
std::optional<Flow> flowOf(const std::vector<FlowItem>& items, int start, const FlowRules& rules);

}  // namespace schedule
