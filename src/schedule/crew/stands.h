// Where somebody stands to wipe a strip while others lie wet.
#pragma once

#include "schedule/crew/strips.h"

namespace schedule {

/// A strip that waits to be wiped.
struct Waiting {
  std::size_t strip = 0;
  std::size_t item = 0;
  int due = 0;  // minutes of the day
  Effort effort = 0;
  bool isReachedFromGround = false;
  std::vector<std::size_t> decks;  // from which a pole reaches it
};

/// A round on its way.
struct RoundSoFar {
  const std::vector<FlowItem>& items;
  const FlowRules& rules;
  const std::vector<FlowStrip>& strips;
  const std::vector<std::size_t>& firstStrips;  // of each item that is begun
};

/// A dry place from which a strip is wiped once so many of the round's are laid; nothing = there is none.
std::optional<model::Stand> standFor(const Waiting& strip, const RoundSoFar& round, std::size_t laid,
                                     int minute);

}  // namespace schedule
