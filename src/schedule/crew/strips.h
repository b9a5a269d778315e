// The strips that a coat is laid in: as many whole boards as are laid while the edge stays open.
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

  bool operator==(const Slot&) const = default;
};

/// Size of a unit that has no boards to count.
inline constexpr base::Wide wholeUnit = 1'000'000;

struct FlowStrip {
  std::size_t unit = 0;  // of the work's
  int coat = 1;
  int fromBoard = 0, boards = 0;      // 0: nothing to count
  BoardSpan dry;                      // of the unit, before this strip is laid
  base::Wide size = 0, unitSize = 1;  // of the unit's boards, for its area
  int minutes = 0;                    // of laying
  int openMinutes = 0;
  bool isTooLong = false;
  bool goesOn = false;  // from the wet edge of the strip before; else it begins at a joint of boards
  std::optional<Slot> cutIn, wipe;
  Slot lay;

  int firstStroke() const { return cutIn ? cutIn->start : lay.start; }
};

/// A unit to be coated in this round.
struct FlowItem {
  std::size_t index = 0;  // of the unit
  const Unit* unit = nullptr;
  int coat = 1;
  std::vector<Span> open;            // fit for its coat, in order
  int notBefore = 0;                 // the coat below has not dried before
  std::array<double, 24> surface{};  // C by the hour; 20 where nobody knows

  const CoatWork& work() const { return unit->coats[static_cast<std::size_t>(coat - 1)]; }
};

/// What a flow keeps to.
struct FlowRules {
  int people = 1;
  double openAt20 = 20;  // minutes
  int wipeWait = 0;      // minutes after the last stroke on a strip; 0 = not wiped
  int rest = 0;          // minutes of everybody's break
  int arrive = 0;        // on site
  int spell = 6 * 60;    // whoever would be on site for longer rests before
  int until = 24 * 60;   // last wipe
  int leastOpen = 5;     // minutes; on hotter boards no coat is begun
  const AccessGraph* graph = nullptr;
  /// Whether nobody may stand on a deck at this minute, because of a coat of an earlier day or round.
  std::function<bool(std::size_t deck, int minute)> isWet;
  /// The boards of a unit's deck that lead to the way out and are dry at this minute, those of this round
  /// left out.
  std::function<std::optional<BoardSpan>(std::size_t unit, int minute)> dryBoardsBeside;
};

struct StripLimits {
  int layers = 1;
  int open = 20;    // minutes
  int besides = 0;  // of them, in which those who lay cut in or wipe
  int spread = 1;   // so many times narrower than the open time allows: whoever wipes then keeps up
};

/// In the order they are laid, on a grid of five minutes; nothing but their boards and minutes is filled in.
std::vector<FlowStrip> stripsOf(const FlowItem& item, const StripLimits& limits);

/// The part of some effort on a unit that falls on a strip.
Effort shareOf(Effort all, const FlowStrip& strip);

}  // namespace schedule
