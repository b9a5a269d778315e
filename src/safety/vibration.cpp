#include "safety/vibration.h"

#include <cmath>

namespace safety {

double dailyVibration(const std::vector<VibrationPeriod>& day) {
  return std::sqrt(vibrationPoints(day) / 16);
}

double vibrationPoints(const std::vector<VibrationPeriod>& day) {
  double points = 0;
  for (const auto& period : day) points += 2 * period.acceleration * period.acceleration * period.hours;
  return points;
}

double minutesUntil(double acceleration, double dailyValue) {
  return 8 * 60 * dailyValue * dailyValue / (acceleration * acceleration);
}

double minutesLeft(double pointsUsed, double acceleration, double limitPoints) {
  return std::max(0.0, limitPoints - pointsUsed) / (2 * acceleration * acceleration) * 60;
}

int shareVibration(double daily, double wanted) {
  if (daily <= wanted) return 1;
  return static_cast<int>(std::ceil(daily * daily / (wanted * wanted) - 1e-9));
}

}  // namespace safety
