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

/// The work of a round told on its day, and its strips. Those who lay go from strip to strip, and several
/// strips wiped in one go are one duty.
void addDuties(DayPlan& plan, const Round& round, const Work& work);

}  // namespace schedule
