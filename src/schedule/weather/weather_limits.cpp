#include "schedule/weather/weather_limits.h"

#include "base/units.h"
#include "model/lookup.h"
#include "schedule/weather/air.h"

namespace schedule {
namespace {

using model::WeatherLimit;

constexpr std::size_t bit(WeatherLimit gate) { return static_cast<std::size_t>(gate); }

using base::floating;

}  // namespace

Cover coverOf(const model::Deck& deck, int clockMinutes) {
  if (deck.isCovered) return Cover::Roof;
  return model::isSunlit(deck, {clockMinutes, clockMinutes + 1}) ? Cover::Sun : Cover::Shade;
}

double absorptanceOf(const model::Deck& deck) {
  const bool isBare = deck.state != model::State::Oiled && deck.state != model::State::Film;
  return isBare && deck.coats < 2 ? absorptanceWeathered : absorptanceOiled;
}

std::vector<double> surfacesOf(const model::Deck& deck, const std::vector<WeatherSample>& moments) {
  const double absorptance = absorptanceOf(deck);
  std::vector<double> surfaces;
  surfaces.reserve(moments.size());
  for (const auto& m : moments) {
    const Cover cover = coverOf(deck, m.clock);
    switch (m.source) {
      case model::WeatherSource::None:
        surfaces.push_back(0);
        break;
      case model::WeatherSource::Forecast:
        surfaces.push_back(boardTemperature(m.air.celsius, absorptance, cover, m.sunlight, m.air.cloud));
        break;
      case model::WeatherSource::Normals:
        surfaces.push_back(likelyBoardTemperature(m.air.celsius, absorptance, cover,
                                                  clearSkyIrradiance(m.sunElevation), m.air.cloud));
        break;
    }
  }
  return surfaces;
}

bool areAlike(const model::Deck& a, const model::Deck& b) {
  const auto sunOf = [](const model::Deck& deck) {
    return deck.sun ? std::pair{deck.sun->from, deck.sun->until} : std::pair{0, 24 * 60};
  };
  return a.isCovered == b.isCovered && a.isEnclosed == b.isEnclosed && sunOf(a) == sunOf(b) &&
         absorptanceOf(a) == absorptanceOf(b);
}

WeatherLimitSet brokenAt(const WeatherSample& m, double surface, const model::Deck& deck,
                         const model::ProductLimits& limits) {
  WeatherLimitSet broken;
  broken[bit(WeatherLimit::Dark)] = !m.isLight;
  broken[bit(WeatherLimit::Unknown)] = m.isBeyondForecast;
  broken[bit(WeatherLimit::Wet)] = m.isWetFromRain && !deck.isCovered;
  if (m.source == model::WeatherSource::None) return broken;
  const model::Air& air = m.air;
  broken[bit(WeatherLimit::AirCold)] = air.celsius < floating(limits.airMin);
  broken[bit(WeatherLimit::AirHot)] = air.celsius > floating(limits.airMax);
  broken[bit(WeatherLimit::BoardsHot)] = surface > floating(limits.surfaceMax);
  broken[bit(WeatherLimit::Dew)] = surface - m.dewPoint < leastDewMargin;
  broken[bit(WeatherLimit::Damp)] = air.humidity > floating(limits.humidityMax);
  broken[bit(WeatherLimit::Rain)] = air.rain > 0 && !deck.isCovered;
  broken[bit(WeatherLimit::Wind)] =
      limits.windMax && !deck.isEnclosed && air.wind > floating(*limits.windMax);
  broken[bit(WeatherLimit::Moisture)] = m.moistureOfDay > floating(limits.moistureMax);
  return broken;
}

WeatherLimitSet brokenFor(const Stretch& coat, const std::vector<WeatherLimitSet>& brokenAtMoments) {
  WeatherLimitSet broken;
  for (std::size_t i = coat.first; i <= coat.last; ++i) {
    WeatherLimitSet now = brokenAtMoments[i];
    // The last moment is the coat's end: rain that begins there falls on a coat that is done.
    if (i == coat.last && i > coat.first) now.reset(bit(WeatherLimit::Rain)).reset(bit(WeatherLimit::Wet));
    broken |= now;
  }
  WeatherLimitSet drying, untilRainSafe;
  for (std::size_t i = coat.last; i <= coat.dry; ++i) drying |= brokenAtMoments[i];
  for (std::size_t i = coat.last; i < coat.rainSafe; ++i) untilRainSafe |= brokenAtMoments[i];
  for (const WeatherLimit gate : {WeatherLimit::AirCold, WeatherLimit::AirHot, WeatherLimit::Unknown}) {
    if (drying[bit(gate)]) broken.set(bit(gate));
  }
  if (drying[bit(WeatherLimit::Dew)]) broken.set(bit(WeatherLimit::DewBefore));
  if (untilRainSafe[bit(WeatherLimit::Rain)]) broken.set(bit(WeatherLimit::RainBefore));
  return broken;
}

std::vector<WeatherLimit> listed(const WeatherLimitSet& gates) {
  std::vector<WeatherLimit> all;
  for (std::size_t i = 0; i < gates.size(); ++i) {
    if (gates[i]) all.push_back(static_cast<WeatherLimit>(i));
  }
  return all;
}

}  // namespace schedule
