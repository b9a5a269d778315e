// Which ear protector a place asks for. Ratings of labels (SLC80, SNR, NRR) are three different numbers and
// are never compared with one another. Levels are in dB(A).
#pragma once

#include "model/exposure.h"

#include <optional>

namespace safety {

/// Class 1 to 5 by the day's L_Aeq,8h, nothing from 110 dB(A) on, where a specialist is asked. AS/NZS
/// 1269.3:2005, appendix A (trade copies).
std::optional<int> classForDay(double level);

/// The class of a protector by its SLC80 in dB; 0 below the first. AS/NZS 1270:2002.
int classOfSlc80(int slc80);

/// dB(A) at the ear under a protector of so many dB SNR, with what it takes off less in use than its label
/// says. EN 458; HSE L108 takes 4 dB (secondary pages).
double atEarSnr(double level, int snr, int realWorldLoss);

/// dB(A) that plugs and muffs together take off by the better rating: (NRR - 7) / 2 + 5. OSHA Technical
/// Manual, chapter on noise, from memory.
double attenuationOfBoth(double betterNrr);

/// Chosen for the loudest tool, so that the ear gets no more than the level from which ears are looked after;
/// a class also by the day's average.
model::Protector protectorFor(const model::NoiseDay& day, const model::NoiseLimits& limits);

}  // namespace safety
