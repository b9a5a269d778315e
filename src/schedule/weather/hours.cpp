#include "schedule/weather/hours.h"

#include "base/units.h"
#include "model/lookup.h"
#include "schedule/weather/weather_limits.h"
#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

using std::chrono::days;
using std::chrono::hours;
using std::chrono::sys_seconds;

/// How far back a rain may lie from which boards are still wet.
constexpr days longestWet{14};

/// A full hour of the clock with the stretch of a coat laid from its first minute to its last.
struct ClockHour {
  base::LocalTime at;
  Stretch coat;
};

/// From where on the air has to be known for the hours from 't' on: a day for the wood, and the rain before.
sys_seconds historyOf(const model::JobInputs& c, sys_seconds t) {
  sys_seconds first = t - days{1};
  if (c.job.forecast.steps.empty()) return first;
  const sys_seconds known = c.job.forecast.from;
  while (first > known && first > t - longestWet) first -= days{1};
  return first;
}

/// The hours of a day that exist: on the day the clocks go forward one is missing; an hour that happens twice
/// counts once and is judged over both.
std::vector<ClockHour> hoursOf(base::Date day, const model::JobInputs& c,
                               const std::vector<WeatherSample>& moments) {
  const auto& zone = c.job.site.timezone;
  const auto& times = c.product->times;
  const auto index = [&](sys_seconds t) {
    return static_cast<std::size_t>((t - moments.front().at) / quarter);
  };
  std::vector<ClockHour> all;
  for (int hour = 0; hour < 24; ++hour) {
    const base::LocalTime at{day, hour * 60};
    const sys_seconds start = localToUtc(zone, at), end = localToUtc(zone, base::plusMinutes(at, 60));
    if (end <= start) continue;
    ClockHour h{at, {index(start), index(end), 0, 0}};
    h.coat.dry = driedBy(moments, h.coat.last, base::floating(times.touchDry));
    h.coat.rainSafe = driedBy(moments, h.coat.last, base::floating(std::max(times.touchDry, times.rainSafe)));
    all.push_back(h);
  }
  return all;
}

/// The hours of one deck; all that are like it share them.
std::vector<model::Hour> hoursFor(std::size_t deck, const model::JobInputs& c,
                                  const std::vector<ClockHour>& clock,
                                  const std::vector<WeatherSample>& moments) {
  const auto surfaces = surfacesOf(c.job.areas[deck], moments);
  std::vector<WeatherLimitSet> broken;
  broken.reserve(moments.size());
  for (std::size_t i = 0; i < moments.size(); ++i)
    broken.push_back(brokenAt(moments[i], surfaces[i], c.job.areas[deck], c.product->limits));
  std::vector<model::Hour> all;
  for (const auto& hour : clock) {
    const WeatherSample& first = moments[hour.coat.first];
    model::Hour h;
    h.at = hour.at;
    h.deck = deck;
    h.reasons = listed(brokenFor(hour.coat, broken));
    h.isFit = h.reasons.empty();
    h.source = first.source;
    h.air = first.air;
    h.air.rain = 0;
    for (std::size_t i = hour.coat.first; i < hour.coat.last; ++i) h.air.rain += moments[i].air.rain;
    h.dewPoint = first.dewPoint;
    h.surface = surfaces[hour.coat.first];
    h.woodMoisture = first.woodMoisture;
    h.sunlight = first.sunlight;
    h.skylight = first.sunlight * diffusePart(first.air.cloud);
    h.sunElevation = first.sunElevation;
    all.push_back(std::move(h));
  }
  return all;
}

/// The sun's time to the nearest minute.
std::optional<base::LocalTime> onClock(const std::string& zone, std::optional<sys_seconds> t) {
  if (!t) return {};
  return utcToLocal(zone, *t + std::chrono::seconds{30});
}

}  // namespace

std::vector<model::Hour> fitHours(const model::JobInputs& c, base::Date from, base::Date until) {
  WeatherSamples line(c);
  return fitHours(c, from, until, line);
}

std::vector<model::Hour> fitHours(const model::JobInputs& c, base::Date from, base::Date until,
                                  WeatherSamples& line) {
  const auto& zone = c.job.site.timezone;
  std::vector<model::Hour> all;
  if (!model::asksFor(c.job.work, model::Work::Oil) || until <= from) return all;
  const auto moments =
      momentsOf(c, historyOf(c, localToUtc(zone, {from, 0})), localToUtc(zone, {until, 0}), line);
  std::vector<ClockHour> clock;
  for (base::Date day = from; day < until; day += days{1}) {
    const auto hours = hoursOf(day, c, moments);
    clock.insert(clock.end(), hours.begin(), hours.end());
  }
  struct Row {
    std::size_t deck;
    std::vector<model::Hour> hours;  // of the first deck that is like this one
  };
  std::vector<Row> rows;
  for (std::size_t deck = 0; deck < c.job.areas.size(); ++deck) {
    const auto& area = c.job.areas[deck];
    if (area.coats == 0) continue;
    const auto like = std::find_if(rows.begin(), rows.end(),
                                   [&](const Row& row) { return areAlike(c.job.areas[row.deck], area); });
    rows.push_back({deck, like != rows.end() ? like->hours : hoursFor(deck, c, clock, moments)});
  }
  for (std::size_t i = 0; i < clock.size(); ++i) {
    for (auto& row : rows) {
      row.hours[i].deck = row.deck;
      all.push_back(std::move(row.hours[i]));
    }
  }
  return all;
}

std::vector<model::SunDay> daylightOf(const model::Site& site, base::Date from, base::Date until) {
  const auto place = placeOf(site);
  std::vector<model::SunDay> all;
  for (base::Date day = from; day < until; day += days{1}) {
    model::SunDay sun{day, {}, {}};
    if (place) {
      const Daylight light = daylight(*place, site.timezone, day);
      sun.sunrise = onClock(site.timezone, light.sunrise);
      sun.sunset = onClock(site.timezone, light.sunset);
    }
    all.push_back(sun);
  }
  return all;
}

}  // namespace schedule
