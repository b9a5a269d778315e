// The gates of a coat: what has to hold while it is laid, until it is touch dry and until it is rain safe.
#pragma once

#include "schedule/weather/boards.h"
#include "schedule/weather/weather_samples.h"

#include <bitset>

namespace schedule {

/// Gates that do not hold, by the enumeration's order.
using WeatherLimitSet = std::bitset<static_cast<std::size_t>(model::WeatherLimit::Unknown) + 1>;

/// What lies above the deck at a clock time, by its 'covered' and 'sun'.
Cover coverOf(const model::Deck& deck, int clockMinutes);

/// Share of sunlight the boards take up at the darkest that a coat meets them: oiled from the second coat on.
double absorptanceOf(const model::Deck& deck);

/// The deck's surface at each moment, C; 0 where the weather is not known.
std::vector<double> surfacesOf(const model::Deck& deck, const std::vector<WeatherSample>& moments);

/// Whether the hours of two decks are the same.
bool areAlike(const model::Deck& a, const model::Deck& b);

/// What does not hold at a moment: all but the two gates that look ahead. A covered deck is not rained on.
WeatherLimitSet brokenAt(const WeatherSample& m, double surface, const model::Deck& deck,
                         const model::ProductLimits& limits);

/// A coat laid from moment 'first' to 'last', both judged; touch dry at 'dry', rain safe at 'rainSafe'.
struct Stretch {
  std::size_t first = 0, last = 0, dry = 0, rainSafe = 0;
};

/// What does not hold for the coat, from what is broken at each moment. Until touch dry the air stays in the
/// product's range (Wood Handbook, FPL-GTR-282 (2021), ch. 16, wants it for cold and a day long; for heat it
/// is our own choice) and no dew falls; hot boards count while the coat is laid.
WeatherLimitSet brokenFor(const Stretch& coat, const std::vector<WeatherLimitSet>& brokenAtMoments);

std::vector<model::WeatherLimit> listed(const WeatherLimitSet& gates);

}  // namespace schedule
