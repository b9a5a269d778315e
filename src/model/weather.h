// The weather a plan is made with: a forecast step by step, or what is usual for each month. Physics: doubles
// that never meet money.
#pragma once

#include "base/date.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace model {

/// The air at one moment.
struct Air {
  double celsius = 0;
  double humidity = 0;  // relative, %, above 0 and at most 100
  double cloud = 0;     // covered part of the sky, 0..1
  double wind = 0;      // m/s
  double rain = 0;      // mm in the step that begins here
};

/// Degrees; north and east are positive.
struct Coordinates {
  double latitude = 0, longitude = 0;
};

/// Steps of one length without a gap, 15 minutes to 3 hours each.
struct Forecast {
  std::string file;     // as the job names it; empty = no forecast
  std::string service;  // that made it, as it wants to be named; empty = a table of the firm's own
  std::optional<Coordinates> place = {};   // it was made for
  std::chrono::sys_seconds from{};         // where the first step begins
  std::optional<double> likelyCloud = {};  // %, of the job, where the file has none
  int stepMinutes = 60;
  std::vector<Air> steps;
  std::optional<std::chrono::sys_seconds> sharedFrom = {};  // from here on longer steps were shared out

  /// Where a step begins; of one behind the last, where that ends.
  std::chrono::sys_seconds at(std::size_t step) const {
    return from + std::chrono::minutes{stepMinutes} * static_cast<std::int64_t>(step);
  }
  std::chrono::sys_seconds until() const { return at(steps.size()); }
};

/// What is usual for a month. The coldest hour is at sunrise, the warmest at three in the afternoon.
struct MonthWeather {
  double coldest = 0, warmest = 0;  // C, of a usual day
  double humidity = 0;              // %, of a usual day at its coldest
  double cloud = 0;                 // 0..1
  double wind = 0;                  // m/s
  int rainDays = 0;                 // days of the month with rain
};

struct Normals {
  std::string source;                     // 'invented for the demo', printed
  std::vector<MonthWeather> months;       // twelve, January first; empty = not given
  std::optional<Coordinates> place = {};  // where they hold; nothing = at the site
};

}  // namespace model
