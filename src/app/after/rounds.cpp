#include "app/after/rounds.h"

#include "schedule/weather/distance.h"

#include <algorithm>

namespace app {
namespace {

double between(const Stop& a, const Stop& b) { return schedule::kilometres(*a.place, *b.place); }

bool isInReach(const Stop& first, const Stop& stop) {
  return stop.due - first.due <= std::chrono::days{roundDays} && between(first, stop) <= roundKilometres;
}

/// Puts them in the order they are driven, from the first on.
Round driven(const std::vector<Stop>& stops, std::vector<std::size_t> left) {
  Round round{{left.front()}, {0}};
  left.erase(left.begin());
  while (!left.empty()) {
    const Stop& here = stops[round.stops.back()];
    const auto nearest = std::min_element(left.begin(), left.end(), [&](std::size_t a, std::size_t b) {
      return between(here, stops[a]) < between(here, stops[b]);
    });
    round.kilometres.push_back(between(here, stops[*nearest]));
    round.stops.push_back(*nearest);
    left.erase(nearest);
  }
  return round;
}

}  // namespace

std::vector<Round> roundsOf(const std::vector<Stop>& stops) {
  std::vector<Round> rounds;
  std::vector<std::size_t> left;
  Round nowhere;
  nowhere.hasPlaces = false;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    if (stops[i].place) left.push_back(i);
    else nowhere.stops.push_back(i);
  }
  while (!left.empty()) {
    const Stop& first = stops[left.front()];
    const auto rest = std::stable_partition(left.begin(), left.end(),
                                            [&](std::size_t i) { return isInReach(first, stops[i]); });
    rounds.push_back(driven(stops, {left.begin(), rest}));
    left.erase(left.begin(), rest);
  }
  nowhere.kilometres.assign(nowhere.stops.size(), 0);
  if (!nowhere.stops.empty()) rounds.push_back(std::move(nowhere));
  return rounds;
}

}  // namespace app
