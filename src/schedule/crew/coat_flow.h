// How a round of coats is laid: strip after strip, cut in just ahead, laid, and wiped a while later by people
// who find a dry place to stand.
#pragma once

#include "schedule/crew/strips.h"

#include <functional>

namespace schedule {

/// What a flow keeps to.
struct FlowRules {
  int people = 1;
  double openAt20 = 20;  // minutes
  int wipeWait = 0;      // minutes after the last stroke on a strip; 0 = not wiped
  int rest = 0;          // minutes of everybody's break
  int arrive = 0;        // whoever is on site for longer than longestSpell rests before
  int until = 24 * 60;   // last wipe
  int leastOpen = 5;     // minutes; on hotter boards no coat is begun
  const AccessGraph* graph = nullptr;
  /// Whether nobody may stand on a deck at this minute, because of a coat of an earlier day or round.
  std::function<bool(std::size_t deck, int minute)> isWet;
  /// The boards of a unit's deck that lead to the way out and are dry at this minute, those of this round
  /// left out.
  std::function<std::optional<BoardSpan>(std::size_t unit, int minute)> dryBoardsBeside;
};

struct Flow {
  std::vector<FlowStrip> strips;
  std::vector<std::pair<int, int>> rests;  // of everyone at once
  int firstStroke = 0, lastStroke = 0, end = 0;
  int joints = 0;     // where laying had to wait until what lay behind was wiped
  int late = 0;       // strips that waited twice as long as they should
  int unreached = 0;  // strips that no dry place gives reach of
};

/// The flow that is done soonest, by however many people lay while the others cut in and wipe; nothing where
/// no fit hours hold it from the first stroke to the last. The first stroke is not before 'start'.
std::optional<Flow> flowOf(const std::vector<FlowItem>& items, int start, const FlowRules& rules);

}  // namespace schedule
