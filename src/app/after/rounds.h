// Visits close to each other, in place and time, become rounds.
#pragma once

#include "base/date.h"
#include "schedule/weather/sun.h"

#include <optional>
#include <vector>

namespace app {

struct Stop {
  base::Date due{};
  std::optional<schedule::Place> place;  // nothing = not known
};

struct Round {
  std::vector<std::size_t> stops;  // as they are driven: always to the nearest that is left
  std::vector<double> kilometres;  // to each from the one before it, by the great circle; 0 to the first
  bool hasPlaces = true;           // false for the one round of all stops whose place is not known
};

/// The longest way from the first stop of a round, and days from its due date: our choice.
constexpr double roundKilometres = 15;
constexpr int roundDays = 14;

/// The stop that falls due first, with all within reach of it, makes a round; then the first of those that
/// are left. Stops come by date, and stay so where two are as near.
std::vector<Round> roundsOf(const std::vector<Stop>& stops);

}  // namespace app
