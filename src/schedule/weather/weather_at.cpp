#include "schedule/weather/weather_at.h"

#include "schedule/weather/air.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace schedule {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::sys_seconds;

constexpr int warmestAt = 15 * 60;  // clock minutes

double vapourPressure(double celsius, double humidity) {
  return saturationPressure(celsius) * humidity / 100;
}

/// Relative humidity of air that holds so much vapour; never above 100 %.
double humidityOf(double vapour, double celsius) {
  return std::min(100.0, 100 * vapour / saturationPressure(celsius));
}

/// 0 to 1 along half a cosine: slow at both ends.
double eased(double part) { return (1 - std::cos(part * std::numbers::pi)) / 2; }

/// The moments of local times that follow each other: in an hour that happens twice a time is its second one
/// where the first is over, or where only the second keeps the steps equal.
std::vector<sys_seconds> momentsOf(const model::Forecast& forecast, const std::string& zone) {
  std::vector<sys_seconds> moments;
  for (const auto& step : forecast.steps) {
    sys_seconds t = localToUtc(zone, step.at);
    if (!moments.empty()) {
      const sys_seconds last = moments.back(), second = lastLocalToUtc(zone, step.at);
      if (t <= last || second - last == minutes{forecast.stepMinutes}) t = second;
    }
    moments.push_back(t);
  }
  return moments;
}

}  // namespace

std::optional<Place> placeOf(const model::Site& site) {
  if (site.latitudeMicro == 0 && site.longitudeMicro == 0) return {};
  return Place{static_cast<double>(site.latitudeMicro) / 1e6, static_cast<double>(site.longitudeMicro) / 1e6};
}

Weather::Weather(const model::JobInputs& c)
    : c_(c), moments_(momentsOf(c.job.forecast, c.job.site.timezone)), clock_(c.job.site.timezone) {}

AirAt Weather::at(sys_seconds t) {
  if (!moments_.empty() && t >= moments_.front() &&
      t < moments_.back() + minutes{c_.job.forecast.stepMinutes})
    return {forecastAt(t), model::WeatherSource::Forecast};
  if (c_.job.normals.months.empty()) return {};
  return {usualAt(clock_.at(t)), model::WeatherSource::Normals};
}

model::Air Weather::forecastAt(sys_seconds t) const {
  const auto& steps = c_.job.forecast.steps;
  const auto after = std::upper_bound(moments_.begin(), moments_.end(), t) - moments_.begin();
  const auto i = static_cast<std::size_t>(after) - 1;
  model::Air air = steps[i].air;
  if (i + 1 == steps.size() || t == moments_[i]) return air;
  const model::Air& next = steps[i + 1].air;
  const auto seconds = [](auto span) { return static_cast<double>(span.count()); };
  const double part = seconds(t - moments_[i]) / seconds(moments_[i + 1] - moments_[i]);
  const double vapour =
      std::lerp(vapourPressure(air.celsius, air.humidity), vapourPressure(next.celsius, next.humidity), part);
  air.celsius = std::lerp(air.celsius, next.celsius, part);
  air.humidity = humidityOf(vapour, air.celsius);
  air.cloud = std::lerp(air.cloud, next.cloud, part);
  air.wind = std::lerp(air.wind, next.wind, part);
  return air;
}

const model::MonthWeather& Weather::month(base::Date day) const {
  return c_.job.normals.months[unsigned{std::chrono::year_month_day{day}.month()} - 1];
}

int Weather::coldestAt(base::Date day) {
  constexpr int whereUnknown = 6 * 60;
  const auto [found, isNew] = coldest_.try_emplace(day, whereUnknown);
  const auto place = placeOf(c_.job.site);
  if (!isNew || !place) return found->second;
  const auto& zone = c_.job.site.timezone;
  if (const auto rise = daylight(*place, zone, day).sunrise) {
    const base::LocalTime local = utcToLocal(zone, *rise);
    if (local.day == day && local.minutes < warmestAt) found->second = local.minutes;
  }
  return found->second;
}

model::Air Weather::usualAt(base::LocalTime t) {
  const model::MonthWeather& today = month(t.day);
  const int coldest = coldestAt(t.day);
  model::Air air;
  if (t.minutes < coldest) {
    const double night = 24 * 60 - warmestAt + coldest;
    const double part = (24 * 60 - warmestAt + t.minutes) / night;
    air.celsius = std::lerp(month(t.day - days{1}).warmest, today.coldest, eased(part));
  } else if (t.minutes < warmestAt) {
    const double part = static_cast<double>(t.minutes - coldest) / (warmestAt - coldest);
    air.celsius = std::lerp(today.coldest, today.warmest, eased(part));
  } else {
    const double night = 24 * 60 - warmestAt + coldestAt(t.day + days{1});
    const double part = (t.minutes - warmestAt) / night;
    air.celsius = std::lerp(today.warmest, month(t.day + days{1}).coldest, eased(part));
  }
  air.humidity = humidityOf(vapourPressure(today.coldest, today.humidity), air.celsius);
  air.cloud = today.cloud;
  air.wind = today.wind;
  return air;
}

void checkForecast(const model::Job& job, const std::string& file, base::Diagnostics& messages) {
  const auto& zone = job.site.timezone;
  const auto& steps = job.forecast.steps;
  if (steps.empty() || !isZone(zone)) return;
  const auto moments = momentsOf(job.forecast, zone);
  const minutes step{job.forecast.stepMinutes};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const base::SourcePos pos{file, static_cast<int>(i) + 2, 1};
    if (utcToLocal(zone, moments[i]) != steps[i].at) {
      messages.error(pos, "time", "'" + base::isoTime(steps[i].at) + "' is left out by the clocks in " + zone,
                     "leave the line out");
      continue;
    }
    if (i == 0 || base::plusMinutes(steps[i - 1].at, step.count()) == steps[i].at) continue;
    if (moments[i] - moments[i - 1] != step)
      messages.error(
          pos, "time",
          "the step before is not " + std::to_string(step.count()) + " min long, as the others are",
          "no step may be missing or shorter");
  }
}

void checkForecastDays(const model::Job& job, const model::Plan& plan, const std::string& file,
                       base::Diagnostics& messages) {
  const auto& steps = job.forecast.steps;
  if (steps.empty() || plan.days.empty()) return;
  const base::Date first = steps.front().at.day, last = steps.back().at.day;
  const auto hint = "save a new one; till then the usual weather of the month counts";
  if (last < plan.days.front())
    messages.warn({file, static_cast<int>(steps.size()) + 1, 1}, "time",
                  "the forecast ends on " + base::isoDate(last) + ", before the first day on site, " +
                      base::isoDate(plan.days.front()),
                  hint);
  else if (first > plan.days.back())
    messages.warn({file, 2, 1}, "time",
                  "the forecast begins on " + base::isoDate(first) + ", after the last day on site, " +
                      base::isoDate(plan.days.back()),
                  hint);
}

AirAt airAt(const model::JobInputs& c, base::LocalTime at) {
  return Weather(c).at(localToUtc(c.job.site.timezone, at));
}

}  // namespace schedule
