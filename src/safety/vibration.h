// Vibration of hands and arms over a working day. Accelerations are three-axis totals in m/s2.
#pragma once

#include <vector>

namespace safety {

struct VibrationPeriod {
  double acceleration = 0;  // m/s2
  double hours = 0;         // with the trigger pulled
};

/// A(8) in m/s2: the root of the sum of a^2 t / 8 h. Directive 2002/44/EC, annex A.1.
double dailyVibration(const std::vector<VibrationPeriod>& day);

/// Exposure points of HSE's ready-reckoner: 2 a^2 t, 100 = 2.5 m/s2 and 400 = 5 m/s2 over 8 hours.
double vibrationPoints(const std::vector<VibrationPeriod>& day);

/// Minutes with a tool until A(8) reaches a value in m/s2. More than a day's minutes is no permission.
double minutesUntil(double acceleration, double dailyValue);

/// Minutes that a person may still use a tool after so many points of the day, to the limit in points; never
/// below 0. HSE's ready-reckoner.
double minutesLeft(double pointsUsed, double acceleration, double limitPoints);

/// Among how many people the work has to be shared so that A(8) of each stays at or under a value.
int shareVibration(double daily, double wanted);

}  // namespace safety
