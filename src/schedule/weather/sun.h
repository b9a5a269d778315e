// Where the sun stands, and when it rises, crosses the meridian and sets on a local date. After Meeus,
// Astronomical Algorithms (2nd ed. 1998), chapters 12, 13, 16, 22, 25 and 40, formulas and their
// numbers from memory; good to 0.01 degrees for 1950-2100.
#pragma once

#include "base/date.h"

#include <chrono>
#include <optional>
#include <string>

namespace schedule {

/// Degrees; north and east are positive. Latitude -90..90, longitude -180..180.
struct Place {
  double latitude = 0, longitude = 0;
};

/// All in degrees. The centre of the sun, without refraction.
struct SunPosition {
  double elevation = 0;    // above the horizon, seen from the ground (parallax taken off)
  double azimuth = 0;      // from north through east, 0..360
  double hourAngle = 0;    // from the meridian, west positive, -180..180
  double declination = 0;  // north positive
};

/// Throws std::invalid_argument for a place off the globe.
SunPosition sunPosition(Place place, std::chrono::sys_seconds utc);

/// The sun as seen from the centre of the earth; degrees.
struct Sky {
  double rightAscension = 0, declination = 0;
  double obliquity = 0;
  double siderealTime = 0;  // apparent, at Greenwich
  double distance = 1;      // astronomical units
};

/// The sky of a day, worked out at its ends; in between it goes straight, which is good to 0.001 degrees.
class SkyOfDay {
 public:
  SkyOfDay() = default;
  explicit SkyOfDay(std::chrono::sys_seconds begin);
  bool holds(std::chrono::sys_seconds utc) const {
    return utc >= begin_ && utc < begin_ + std::chrono::days{1};
  }
  Sky at(std::chrono::sys_seconds utc) const;

 private:
  std::chrono::sys_seconds begin_ = std::chrono::sys_seconds::min();
  Sky first_, last_;
};

/// The sun's elevation at many moments of one place, as sunPosition() has it, good to 0.001 degrees of that.
class SunPath {
 public:
  explicit SunPath(Place place);
  double elevation(std::chrono::sys_seconds utc);

 private:
  Place place_;
  SkyOfDay sky_;
};

/// The elevation at which the air's refraction shows the sun: degrees in, degrees out. Below the horizon's
/// -0.8333 nothing is added. Meeus (1998), eq. 16.4; the same in NREL/TP-560-34302 (2008).
double apparentElevation(double elevation, double pressureHectopascals = 1010, double airCelsius = 10);

/// Days since noon of 1 January 4713 BC. Meeus (1998), ch. 7.
double julianDay(std::chrono::sys_seconds utc);

/// Tilt of the equator against the ecliptic, with nutation, in degrees. Meeus (1998), ch. 22.
double obliquity(std::chrono::sys_seconds utc);

/// One day of the sun: from midnight to midnight by the sun, so a summer sunset far north may fall after
/// midnight by the clock. At the edge of a polar day only one of sunrise and sunset may exist.
struct Daylight {
  enum class Kind { RisesOrSets, UpAllDay, DownAllDay };
  Kind kind = Kind::RisesOrSets;
  std::chrono::sys_seconds transit;  // highest, due north or south
  std::optional<std::chrono::sys_seconds> sunrise, sunset;
};

/// The day whose transit is nearest to 'noon'. Rise and set are the upper limb at a level horizon at the
/// place's own height, zenith 90.8333 degrees: 34' of refraction and 16' of radius, the convention of
/// almanacs.
Daylight daylight(Place place, std::chrono::sys_seconds noon);

/// The day around the clock's noon: the date is the local one wherever the place lies, also beyond the date
/// line.
Daylight daylight(Place place, const std::string& zone, base::Date day);

}  // namespace schedule
