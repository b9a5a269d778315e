// How long a coat really takes to dry: the hours of the data sheet, slowed by cold and damp air.
#pragma once

#include "schedule/weather/weather_at.h"

#include <unordered_map>

namespace schedule {

/// Made once for many coats of a job.
class DryingClock {
 public:
  /// 'c' outlives this.
  explicit DryingClock(const model::JobInputs& c);
  /// True hours from 'end' until a coat is as dry as the data sheet promises after 'sheet' hours at 20 C: by
  /// dryingHours(), hour after hour, never fewer than 'sheet'. What the air adds is rounded up to a quarter
  /// of an hour. Where the air is not known it adds nothing.
  base::Hours elapsed(base::LocalTime end, base::Hours sheet);
  /// Hours of the data sheet that a coat dries in the hour from then on; 1 at 20 C, and where the air is not
  /// known.
  double dries(base::LocalTime hour);
  /// The clock at that moment.
  base::LocalTime dryAt(base::LocalTime end, base::Hours sheet);

 private:
  double slownessAt(std::chrono::sys_seconds hour);

  const model::JobInputs& c_;
  Weather weather_;
  bool isKnown_;
  std::unordered_map<std::int64_t, double> slowness_;  // by the hour since 1970
};

}  // namespace schedule
