// What a day with a coat begins with: when to start, the last stroke, home; and the measurements that say go.
#pragma once

#include "sheets/facts/day_parts.h"

namespace sheets {

/// 'answers': label, time and note of each; 'go': name, limit and forecast of each; 'go_count'.
void addAnswers(Facts& f, const Day& day, const model::JobResult& x, const Formatter& w);

/// The weather of a day while the crew is on site, as far as it is known.
struct SiteWeather {
  const model::Hour* coldest = nullptr;  // of the air
  const model::Hour* warmest = nullptr;
  model::WeatherSource source = model::WeatherSource::None;
};
SiteWeather weatherOn(const Day& day, const model::JobResult& x);

}  // namespace sheets
