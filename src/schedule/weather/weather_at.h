// The air at any moment of a job: from the forecast where it reaches, else from what is usual for the month.
#pragma once

#include "schedule/weather/hours.h"
#include "schedule/weather/sun.h"
#include "schedule/weather/zone.h"

#include <chrono>
#include <map>

namespace schedule {

/// Nothing where the job does not say where it lies: latitude and longitude both zero.
std::optional<Place> placeOf(const model::Site& site);

/// Made once for many moments. Between two steps of a forecast temperature, vapour pressure, cloud and wind
/// go straight; the last step holds for its own length. Rain is that of the step. A usual day is coldest at
/// sunrise (at six where the sun or the place is not known) and warmest at three by the clock, with half a
/// cosine between; its vapour pressure stays; it has no rain.
class Weather {
 public:
  /// 'c' outlives this.
  explicit Weather(const model::JobInputs& c);
  AirAt at(std::chrono::sys_seconds t);
  /// False when neither a forecast nor anything usual is given.
  bool isGiven() const { return !moments_.empty() || !c_.job.normals.months.empty(); }

 private:
  model::Air forecastAt(std::chrono::sys_seconds t) const;
  model::Air usualAt(base::LocalTime t);
  const model::MonthWeather& month(base::Date day) const;
  int coldestAt(base::Date day);

  const model::JobInputs& c_;
  std::vector<std::chrono::sys_seconds> moments_;  // of the forecast's steps
  ZoneClock clock_;
  std::map<base::Date, int> coldest_;  // clock minutes, as asked for so far
};

}  // namespace schedule
