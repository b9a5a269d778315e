#include "schedule/weather/sun.h"

#include "schedule/weather/zone.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace schedule {
namespace {

using std::chrono::seconds;
using std::chrono::sys_seconds;

constexpr double degree = std::numbers::pi / 180;
constexpr double arcsecond = 1.0 / 3600;  // in degrees
constexpr double riseElevation = -0.8333;
constexpr double secondsPerDegree = 240;  // of hour angle: 86400 / 360

double sine(double degrees) { return std::sin(degrees * degree); }
double cosine(double degrees) { return std::cos(degrees * degree); }

/// The same angle within -180..180.
double wrapped(double degrees) { return std::remainder(degrees, 360.0); }

/// What Venus, Jupiter and the moon add to the sun's longitude, in degrees: the five largest terms. Meeus,
/// Astronomical Formulae for Calculators (1979), ch. 18, from memory. Without them the sun is up to 0.01
/// degrees off.
double perturbations(double dynamicalDays) {
  const double t = (dynamicalDays + 36525) / 36525;  // centuries since 1900 January 0.5
  return 0.00134 * cosine(153.23 + 22518.7541 * t) + 0.00154 * cosine(216.57 + 45037.5082 * t) +
         0.00200 * cosine(312.69 + 32964.3577 * t) + 0.00179 * sine(350.74 + 445267.1142 * t) +
         0.00178 * sine(231.19 + 20.20 * t);
}

Sky skyAt(sys_seconds utc) {
  const double days = julianDay(utc) - 2451545.0;  // since 2000 January 1, noon
  // The earth's spin lags behind uniform time: 69 s since 2017, 29 s in 1950. 40 s move the sun 0.0005
  // degrees.
  constexpr double lag = 69.0 / 86400;
  const double t = (days + lag) / 36525;  // Julian centuries

  // Mean longitude, anomaly and the equation of the centre: Meeus (1998), eq. 25.2-25.5.
  const double meanLongitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const double anomaly = 357.52911 + t * (35999.05029 - t * 0.0001537);
  const double eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
  const double centre = (1.914602 - t * (0.004817 + t * 0.000014)) * sine(anomaly) +
                        (0.019993 - t * 0.000101) * sine(2 * anomaly) + 0.000289 * sine(3 * anomaly);

  Sky sky;
  sky.distance =
      1.000001018 * (1 - eccentricity * eccentricity) / (1 + eccentricity * cosine(anomaly + centre));

  // Nutation, the four largest terms, good to 0.5": Meeus (1998), ch. 22.
  const double node = 125.04452 - t * (1934.136261 - t * 0.0020708);
  const double moonLongitude = 218.3165 + t * 481267.8813;
  const double inLongitude = arcsecond * (-17.20 * sine(node) - 1.32 * sine(2 * meanLongitude) -
                                          0.23 * sine(2 * moonLongitude) + 0.21 * sine(2 * node));
  const double inObliquity = arcsecond * (9.20 * cosine(node) + 0.57 * cosine(2 * meanLongitude) +
                                          0.10 * cosine(2 * moonLongitude) - 0.09 * cosine(2 * node));
  sky.obliquity = 23.4392911 - arcsecond * t * (46.8150 + t * (0.00059 - t * 0.001813)) + inObliquity;

  // Aberration -20.4898"/R and nutation: Meeus (1998), ch. 25.
  const double longitude =
      meanLongitude + centre + perturbations(days + lag) - 20.4898 * arcsecond / sky.distance + inLongitude;
  sky.rightAscension = std::atan2(cosine(sky.obliquity) * sine(longitude), cosine(longitude)) / degree;
  sky.declination = std::asin(sine(sky.obliquity) * sine(longitude)) / degree;

  // Meeus (1998), eq. 12.4. Takes UTC for UT1: they differ by 0.9 s at most, 0.004 degrees.
  const double centuries = days / 36525;
  sky.siderealTime = 280.46061837 + 360.98564736629 * days + 0.000387933 * centuries * centuries +
                     inLongitude * cosine(sky.obliquity);
  return sky;
}

double hourAngle(const Sky& sky, Place place) {
  return wrapped(sky.siderealTime + place.longitude - sky.rightAscension);
}

/// Seen from the centre of the earth: Meeus (1998), eq. 13.6.
double elevation(const Sky& sky, Place place) {
  const double height = sine(place.latitude) * sine(sky.declination) +
                        cosine(place.latitude) * cosine(sky.declination) * cosine(hourAngle(sky, place));
  return std::asin(std::fmin(1, std::fmax(-1, height))) / degree;
}

/// Seen from the ground. Parallax 8.794"/R at the horizon: Meeus (1998), ch. 40.
double elevationOnGround(const Sky& sky, Place place) {
  const double centred = elevation(sky, place);
  return centred - 8.794 * arcsecond / sky.distance * cosine(centred);
}

void check(Place place) {
  const bool isOnGlobe = std::abs(place.latitude) <= 90 && std::abs(place.longitude) <= 180;
  if (!isOnGlobe) throw std::invalid_argument("latitude must be -90 to 90, longitude -180 to 180");
}

bool isUp(Place place, const Sky& sky) { return elevation(sky, place) > riseElevation; }

/// The moment the sun passes the horizon between two moments of a day, by halving; it does so once.
sys_seconds crossing(Place place, const SkyOfDay& day, sys_seconds down, sys_seconds up) {
  while (std::chrono::abs(up - down) > seconds{1}) {
    const sys_seconds middle = down + (up - down) / 2;
    (isUp(place, day.at(middle)) ? up : down) = middle;
  }
  return up;
}

}  // namespace

double julianDay(sys_seconds utc) {
  return 2440587.5 + static_cast<double>(utc.time_since_epoch().count()) / 86400;  // 1970-01-01T00:00
}

double obliquity(sys_seconds utc) { return skyAt(utc).obliquity; }

SunPosition sunPosition(Place place, sys_seconds utc) {
  check(place);
  const Sky sky = skyAt(utc);
  SunPosition position;
  position.declination = sky.declination;
  position.hourAngle = hourAngle(sky, place);
  position.elevation = elevationOnGround(sky, place);
  // Meeus (1998), eq. 13.5, turned to count from north; both parts times cos(declination).
  const double west = sine(position.hourAngle) * cosine(sky.declination);
  const double south = cosine(position.hourAngle) * sine(place.latitude) * cosine(sky.declination) -
                       sine(sky.declination) * cosine(place.latitude);
  position.azimuth = std::atan2(west, south) / degree + 180;
  return position;
}

SkyOfDay::SkyOfDay(sys_seconds begin)
    : begin_(begin), first_(skyAt(begin)), last_(skyAt(begin + std::chrono::days{1})) {
  last_.rightAscension = first_.rightAscension + wrapped(last_.rightAscension - first_.rightAscension);
}

Sky SkyOfDay::at(sys_seconds utc) const {
  const double part = static_cast<double>((utc - begin_).count()) / 86400;
  return {std::lerp(first_.rightAscension, last_.rightAscension, part),
          std::lerp(first_.declination, last_.declination, part),
          std::lerp(first_.obliquity, last_.obliquity, part),
          std::lerp(first_.siderealTime, last_.siderealTime, part),
          std::lerp(first_.distance, last_.distance, part)};
}

SunPath::SunPath(Place place) : place_(place) { check(place); }

double SunPath::elevation(sys_seconds utc) {
  if (!sky_.holds(utc)) sky_ = SkyOfDay(std::chrono::floor<std::chrono::days>(utc));
  return elevationOnGround(sky_.at(utc), place_);
}

double apparentElevation(double elevation, double pressureHectopascals, double airCelsius) {
  if (elevation < riseElevation) return elevation;
  const double minutes = 1.02 / std::tan((elevation + 10.3 / (elevation + 5.11)) * degree);
  return elevation + minutes / 60 * (pressureHectopascals / 1010) * (283 / (273 + airCelsius));
}

Daylight daylight(Place place, sys_seconds noon) {
  check(place);
  Daylight day;
  day.transit = noon;
  for (int step = 0; step < 3; ++step) {  // each step is 300 times nearer
    const double past = hourAngle(skyAt(day.transit), place) * secondsPerDegree;
    day.transit -= seconds{std::llround(past)};
  }
  if (!isUp(place, skyAt(day.transit))) {
    day.kind = Daylight::Kind::DownAllDay;
    return day;
  }
  const sys_seconds before = day.transit - std::chrono::hours{12};
  const sys_seconds after = day.transit + std::chrono::hours{12};
  const SkyOfDay sky(before);
  if (!isUp(place, sky.at(before))) day.sunrise = crossing(place, sky, before, day.transit);
  if (!isUp(place, sky.at(after))) day.sunset = crossing(place, sky, after, day.transit);
  if (!day.sunrise && !day.sunset) day.kind = Daylight::Kind::UpAllDay;
  return day;
}

Daylight daylight(Place place, const std::string& zone, base::Date day) {
  return daylight(place, localToUtc(zone, {day, 12 * 60}));
}

}  // namespace schedule
