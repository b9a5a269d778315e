#include "safety/protector.h"

#include "model/lookup.h"
#include "safety/noise.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace safety {
namespace {

constexpr std::array leastSlc80 = {10, 14, 18, 22, 26};  // of classes 1 to 5
constexpr int highestNrr = 33;                           // of protectors that are sold: common practice

model::Protector byClass(const model::NoiseDay& day, int allowed) {
  model::Protector p{model::ProtectorRule::Class};
  const auto ofDay = classForDay(day.level);
  const int needed = day.loudest - allowed;
  const auto found =
      std::find_if(leastSlc80.begin(), leastSlc80.end(), [&](int slc80) { return slc80 >= needed; });
  p.isBeyond = !ofDay || found == leastSlc80.end();
  if (!p.isBeyond) p.least = std::max(*ofDay, static_cast<int>(found - leastSlc80.begin()) + 1);
  return p;
}

/// 70 to 80 dB(A) at the ear: less is too much, for nobody hears a warning then. EN 458 (secondary pages).
model::Protector bySnr(const model::NoiseDay& day, int realWorldLoss) {
  constexpr int quietest = 70, loudest = 80;
  model::Protector p{model::ProtectorRule::Snr};
  p.least = day.loudest - loudest + realWorldLoss;
  p.most = day.loudest - quietest + realWorldLoss;
  return p;
}

model::Protector byNrr(const model::NoiseDay& day, int allowed) {
  model::Protector p{model::ProtectorRule::Nrr};
  p.least = ratingFor(day.loudest - allowed);
  p.isBoth = p.least > highestNrr;
  if (p.isBoth) {
    p.least = highestNrr;
    p.isBeyond = attenuationOfBoth(highestNrr) < day.loudest - allowed;
  }
  return p;
}

}  // namespace

std::optional<int> classForDay(double level) {
  constexpr double firstEnds = 90, width = 5;
  if (level >= firstEnds + 4 * width) return {};
  return level < firstEnds ? 1 : 2 + static_cast<int>(std::floor((level - firstEnds) / width));
}

int classOfSlc80(int slc80) {
  return static_cast<int>(std::upper_bound(leastSlc80.begin(), leastSlc80.end(), slc80) - leastSlc80.begin());
}

double atEarSnr(double level, int snr, int realWorldLoss) { return level - snr + realWorldLoss; }

double attenuationOfBoth(double betterNrr) { return attenuation(betterNrr) + 5; }

model::Protector protectorFor(const model::NoiseDay& day, const model::NoiseLimits& limits) {
  const int upper = limits.rule == model::NoiseRule::Osha ? 85 : model::upperLevel(limits);
  if (day.loudest < model::lowerLevel(limits)) {
    model::Protector none{limits.protector};
    none.isNeeded = false;
    return none;
  }
  switch (limits.protector) {
    case model::ProtectorRule::Class:
      return byClass(day, upper);
    case model::ProtectorRule::Snr:
      return bySnr(day, limits.realWorldLoss);
    case model::ProtectorRule::Nrr:
      return byNrr(day, upper);
  }
  return {};
}

}  // namespace safety
