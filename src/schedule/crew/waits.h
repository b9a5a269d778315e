// How long boards wait between two coats, and how that suits the product.
#pragma once

#include "schedule/crew/session.h"

namespace schedule {

/// How long the boards of a deck wait between two coats. On a deck that takes days each part of it that is
/// laid in one go is counted by itself.
struct Waits {
  base::Hours least, most;
  bool tookDays = false;
};
Waits waitsBetween(const Lay& before, const Lay& after, const Calendar& calendar, const std::string& zone);

/// How far a wait lies from the product's window.
enum class Window { Ideal, Allowed, Missed };
Window windowOf(const Waits& waits, const model::ProductTimes& times);

}  // namespace schedule
