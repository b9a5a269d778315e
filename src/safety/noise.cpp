#include "safety/noise.h"

#include <algorithm>
#include <cmath>

namespace safety {
namespace {

constexpr double known = 0.05;  // dB: levels are known no finer

double dose(const std::vector<NoisePeriod>& day, double (*allowed)(double)) {
  double sum = 0;
  for (const auto& period : day) sum += period.hours / allowed(period.level);
  return 100 * sum;
}

}  // namespace

double nioshHours(double level) { return 8 / std::exp2((level - 85) / 3); }

double oshaHours(double level) { return 8 / std::exp2((level - 90) / 5); }

double nioshDose(const std::vector<NoisePeriod>& day) { return dose(day, nioshHours); }

double oshaDose(const std::vector<NoisePeriod>& day) { return dose(day, oshaHours); }

double oshaAverage(double dose) { return 16.61 * std::log10(dose / 100) + 90; }

double average8h(const std::vector<NoisePeriod>& day) {
  double energy = 0;
  for (const auto& period : day) energy += period.hours * std::pow(10, period.level / 10);
  return energy > 0 ? std::max(0.0, 10 * std::log10(energy / 8)) : 0;
}

int shareAmong(double level, double wanted) {
  if (level <= wanted + known) return 1;
  return static_cast<int>(std::ceil(std::pow(10, (level - wanted - known) / 10)));
}

int shareAmongOsha(double average, double wanted) {
  if (average <= wanted + known) return 1;
  return static_cast<int>(std::ceil(std::exp2((average - wanted - known) / 5)));
}

double attenuation(double nrr) { return (nrr - 7) / 2; }

int ratingFor(double attenuation) { return static_cast<int>(std::ceil(2 * attenuation + 7 - 1e-9)); }

}  // namespace safety
