// Made-up weather for tests: days that are the same every hour, or warm up and cool down by a list.
#pragma once

#include "fixtures.h"
#include "schedule/weather/hours.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>

namespace weather {

using AirOfHour = std::function<model::Air(int hour)>;

/// A forecast of hourly steps over some days from the case's start; 'air' is asked for hours from its
/// midnight.
inline model::Forecast hourly(base::Date from, int days, const AirOfHour& air) {
  model::Forecast f;
  f.file = "forecast.csv";
  for (int hour = 0; hour < days * 24; ++hour)
    f.steps.push_back({base::plusMinutes({from, 0}, hour * 60), air(hour)});
  return f;
}

inline model::Air still(double celsius, double humidity, double cloud) {
  return {celsius, humidity, cloud, 2, 0};
}

/// A summer day at 44.70 south, 169.13 east.
inline base::Date summerDay() { return *base::parseDate("2027-01-12"); }

inline model::JobInputs summerCase(const AirOfHour& air, int days = 3) {
  model::JobInputs c = fixtures::sampleCase();
  c.job.start = summerDay();
  c.job.forecast = hourly(summerDay(), days, air);
  return c;
}

/// The first deck's hour of a day.
inline model::Hour hourAt(const model::JobInputs& c, base::Date day, int hour) {
  for (const auto& h : schedule::fitHours(c, day, day + std::chrono::days{1})) {
    if (h.at.minutes == hour * 60 && h.deck == 0) return h;
  }
  FAIL("no such hour");
  return {};
}

inline bool isFor(const model::Hour& h, model::WeatherLimit gate) {
  return std::find(h.reasons.begin(), h.reasons.end(), gate) != h.reasons.end();
}

}  // namespace weather
