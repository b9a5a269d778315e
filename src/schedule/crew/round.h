// Coats laid one after another without going home, with what is done before the first of them.
#pragma once

#include "schedule/crew/schedule.h"

namespace schedule {

struct Round {
  std::vector<FlowItem> items;
  std::vector<Piece> before;  // taping, sanding once more, clearing dust
  std::vector<SharedPiece> shared;
  Flow flow;
  int people = 1;
  int start = 0;  // of 'before'
  /// Or of the rest before it.
  int begun() const;
  int end() const;  // of the last of it
  std::vector<bool> isExtra, isLate;
};

/// A day with what is begun of it, null for nothing, and a round: its work, strips and times. Those who lay
/// go from strip to strip, and several strips wiped in one go are one duty. 'last' minutes of work may follow
/// the coats.
DayPlan withRound(const DayPlan* begun, base::Date day, const Round& round, const Work& work,
                  const Calendar& calendar, int last);

}  // namespace schedule
