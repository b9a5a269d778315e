// How a round of coats is laid: strip after strip, cut in just ahead, laid, and wiped a while later by people
// who find a dry place to stand.
#pragma once

#include "schedule/crew/calendar.h"
#include "schedule/crew/work.h"

#include <array>
#include <functional>

namespace schedule {

/// Minutes of the day and who.
struct Slot {
  int start = 0, end = 0;
  std::vector<std::size_t> who;
  model::Stand from;
};

struct FlowStrip {
  std::size_t unit = 0;  // of the work's
  int coat = 1;
  int fromBoard = 0, boards = 0;
  base::Wide size = 1, unitSize = 1;  // of the unit's boards, for its area
  int openMinutes = 0;
  int segment = 0;  // of the unit: it begins anew at a joint of boards where the wet edge could not be met
  bool isTooLong = false, goesOn = false;
  std::optional<Slot> cutIn, wipe;
  Slot lay;
};

/// A unit to be coated in this round.
struct FlowItem {
  std::size_t index = 0;  // of the unit
  const Unit* unit = nullptr;
  int coat = 1;
  std::vector<Span> open;            // fit for its coat, in order
  int notBefore = 0;                 // the coat below has not dried before
  std::array<double, 24> surface{};  // C by the hour; 20 where nobody knows
};

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
  /// The boards of a deck that the units of later rounds and days still leave dry: its next unit, if any.
  std::function<std::optional<int>(std::size_t unit, int coat)> nextDryBoard;
};

struct Flow {
  std::vector<FlowStrip> strips;
  std::vector<std::pair<int, int>> rests;  // of everyone at once
  int firstStroke = 0, lastStroke = 0, end = 0;
  int joints = 0;     // where laying had to wait until what lay behind was wiped
  int late = 0;       // strips that waited twice as long as they should
  int unreached = 0;  // strips wiped from farther away than the pole reaches
};

/// The flow that is done soonest, by however many people lay while the others cut in and wipe; nothing where
/// no fit hours hold it from the first stroke to the last. The first stroke is not before 'start'.
std::optional<Flow> flowOf(const std::vector<FlowItem>& items, int start, const FlowRules& rules);

}  // namespace schedule
