#include "safety/vapour.h"

namespace safety {

double molarVolume(double celsius) { return 8.314462618 * (celsius + 273.15) / 101325 * 1000; }

double vapourVolume(double gramsPerHour, double molarMass) {
  return gramsPerHour / molarMass * molarVolume(20) / 1000;
}

double milligramsPerCubicMetre(double ppm, double molarMass) { return ppm * molarMass / 24.45; }

double airUnderLimit(double vapourPerHour, double ppm, double mixing) {
  return mixing * vapourPerHour * 1e6 / ppm;
}

double airUnderMassLimit(double gramsPerHour, double milligrams, double mixing) {
  return mixing * gramsPerHour * 1000 / milligrams;
}

double airUnderLimitUs(double pintsPerMinute, double gravity, double molarMass, double ppm, double mixing) {
  return 403 * gravity * 1e6 * pintsPerMinute * mixing / (molarMass * ppm);
}

double airUnderExplosion(double vapourPerHour, double lowerLimit, double safetyFactor, double b) {
  return vapourPerHour * 100 * safetyFactor / (lowerLimit * b);
}

double airPerGallon(double vapourPerGallon, double lowerLimit) {
  return 4 * (100 - lowerLimit) * vapourPerGallon / lowerLimit;
}

double mixtureIndex(const std::vector<std::pair<double, double>>& pairs) {
  double sum = 0;
  for (const auto& [concentration, limit] : pairs) sum += concentration / limit;
  return sum;
}

}  // namespace safety
