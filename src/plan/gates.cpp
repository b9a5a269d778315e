#include "plan/gates.h"

#include "model/lookup.h"
#include "plan/air.h"

namespace plan {
namespace {

using model::Gate;

constexpr std::size_t bit(Gate gate) { return static_cast<std::size_t>(gate); }

/// In its own unit: C, %, m/s.
template <class Unit>
double number(base::Quantity<Unit> limit) {
  return static_cast<double>(limit.millionths) / 1e6;
}

}  // namespace

Cover coverOf(const model::Deck& deck, int clockMinutes) {
  if (deck.isCovered) return Cover::Roof;
  return model::isSunlit(deck, {clockMinutes, clockMinutes + 1}) ? Cover::Sun : Cover::Shade;
}

double absorptanceOf(const model::Deck& deck) {
  const bool isBare = deck.state != model::State::Oiled && deck.state != model::State::Film;
  return isBare && deck.coats < 2 ? absorptanceWeathered : absorptanceOiled;
}

std::vector<double> surfacesOf(const model::Deck& deck, const std::vector<Moment>& moments) {
  const double absorptance = absorptanceOf(deck);
  std::vector<double> surfaces;
  surfaces.reserve(moments.size());
  for (const auto& m : moments) {
    surfaces.push_back(
        m.source == model::WeatherSource::None
            ? 0
            : boardTemperature(m.air.celsius, absorptance, coverOf(deck, m.clock), m.sunlight, m.air.cloud));
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

GateSet brokenAt(const Moment& m, double surface, const model::Deck& deck,
                 const model::ProductLimits& limits) {
  GateSet broken;
  broken[bit(Gate::Dark)] = !m.isLight;
  broken[bit(Gate::Unknown)] = m.isBeyondForecast;
  broken[bit(Gate::Wet)] = m.isWetFromRain && !deck.isCovered;
  if (m.source == model::WeatherSource::None) return broken;
  const model::Air& air = m.air;
  broken[bit(Gate::AirCold)] = air.celsius < number(limits.airMin);
  broken[bit(Gate::AirHot)] = air.celsius > number(limits.airMax);
  broken[bit(Gate::BoardsHot)] = surface > number(limits.surfaceMax);
  broken[bit(Gate::Dew)] = surface - m.dewPoint < leastDewMargin;
  broken[bit(Gate::Damp)] = air.humidity > number(limits.humidityMax);
  broken[bit(Gate::Rain)] = air.rain > 0 && !deck.isCovered;
  broken[bit(Gate::Wind)] = limits.windMax && !deck.isEnclosed && air.wind > number(*limits.windMax);
  broken[bit(Gate::Moisture)] = m.moistureOfDay > number(limits.moistureMax);
  return broken;
}

GateSet brokenFor(const Stretch& coat, const std::vector<GateSet>& brokenAtMoments) {
  GateSet broken;
  for (std::size_t i = coat.first; i <= coat.last; ++i) {
    GateSet now = brokenAtMoments[i];
    // The last moment is the coat's end: rain that begins there falls on a coat that is done.
    if (i == coat.last && i > coat.first) now.reset(bit(Gate::Rain)).reset(bit(Gate::Wet));
    broken |= now;
  }
  GateSet drying, untilRainSafe;
  for (std::size_t i = coat.last; i <= coat.dry; ++i) drying |= brokenAtMoments[i];
  for (std::size_t i = coat.last; i < coat.rainSafe; ++i) untilRainSafe |= brokenAtMoments[i];
  for (const Gate gate : {Gate::AirCold, Gate::AirHot, Gate::Unknown}) {
    if (drying[bit(gate)]) broken.set(bit(gate));
  }
  if (drying[bit(Gate::Dew)]) broken.set(bit(Gate::DewBefore));
  if (untilRainSafe[bit(Gate::Rain)]) broken.set(bit(Gate::RainBefore));
  return broken;
}

std::vector<Gate> listed(const GateSet& gates) {
  std::vector<Gate> all;
  for (std::size_t i = 0; i < gates.size(); ++i) {
    if (gates[i]) all.push_back(static_cast<Gate>(i));
  }
  return all;
}

}  // namespace plan
