// Noise at the ear over a working day, in the forms that places count it in. Levels are A-weighted, dB.
#pragma once

#include <vector>

namespace safety {

struct NoisePeriod {
  double level = 0;  // dB(A)
  double hours = 0;
};

/// Hours a level may last before the day is used up: 8 / 2^((level - 85) / 3). NIOSH 98-126, Criteria for a
/// Recommended Standard: Occupational Noise Exposure (1998), table 1-1.
double nioshHours(double level);
/// The same with OSHA's 5 dB: 8 / 2^((level - 90) / 5). 29 CFR 1910.95, appendix A.
double oshaHours(double level);

/// Dose of a day in %, 100 = used up. Every period counts, also the quiet ones.
double nioshDose(const std::vector<NoisePeriod>& day);
double oshaDose(const std::vector<NoisePeriod>& day);

/// OSHA's average: the steady level of 8 hours with the same dose, dB(A); the dose in %, above 0.
double oshaAverage(double dose);

/// L_EX,8h in dB(A): the energy of the day as if spread over 8 hours. Directive 2003/10/EC, art. 2, and ISO
/// 1999. 0 for a day without noise. Half the energy is 3.01 dB less here and 3 dB in NIOSH's form: never mix
/// the two.
double average8h(const std::vector<NoisePeriod>& day);

/// Among how many people the noisy work has to be shared so that each stays at or under a level (all in
/// dB(A)); 1 = it is under already.
int shareAmong(double level, double wanted);
/// The same for OSHA's averages, which fall by 5 dB for half the time.
int shareAmongOsha(double average, double wanted);

/// dB(A) that a protector of a noise reduction rating takes off as worn: (NRR - 7) / 2. 29 CFR 1910.95,
/// appendix B, for a level in dB(A), and half of it by OSHA's Technical Manual (chapter on noise).
double attenuation(double nrr);
/// The least rating that takes off so many dB(A).
int ratingFor(double attenuation);

}  // namespace safety
