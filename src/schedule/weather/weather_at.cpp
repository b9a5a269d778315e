#include "schedule/weather/weather_at.h"

#include "schedule/weather/air.h"
#include "schedule/weather/distance.h"

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

}  // namespace

std::optional<Place> placeOf(const model::Site& site) {
  if (site.latitudeMicro == 0 && site.longitudeMicro == 0) return {};
  return Place{static_cast<double>(site.latitudeMicro) / 1e6, static_cast<double>(site.longitudeMicro) / 1e6};
}

Weather::Weather(const model::JobInputs& c) : c_(c), clock_(c.job.site.timezone) {}

AirAt Weather::at(sys_seconds t) {
  const auto& forecast = c_.job.forecast;
  if (!forecast.steps.empty() && t >= forecast.from && t < forecast.until())
    return {forecastAt(t), model::WeatherSource::Forecast};
  if (c_.job.normals.months.empty()) return {};
  return {usualAt(clock_.at(t)), model::WeatherSource::Normals};
}

model::Air Weather::forecastAt(sys_seconds t) const {
  const auto& f = c_.job.forecast;
  const minutes step{f.stepMinutes};
  const auto i = static_cast<std::size_t>((t - f.from) / step);
  model::Air air = f.steps[i];
  if (i + 1 == f.steps.size() || t == f.at(i)) return air;
  const model::Air& next = f.steps[i + 1];
  const auto seconds = [](auto span) { return static_cast<double>(std::chrono::seconds{span}.count()); };
  const double part = seconds(t - f.at(i)) / seconds(step);
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

void checkForecastDays(const model::Job& job, const model::Plan& plan, const std::string& file,
                       base::Diagnostics& messages) {
  const auto& forecast = job.forecast;
  if (forecast.steps.empty() || plan.days.empty()) return;
  const auto dayOf = [&](std::size_t step) { return utcToLocal(job.site.timezone, forecast.at(step)).day; };
  const base::Date first = dayOf(0), last = dayOf(forecast.steps.size() - 1);
  const auto hint = "save a new one; till then the usual weather of the month counts";
  if (last < plan.days.front().date)
    messages.warn({file}, "",
                  "the forecast ends on " + base::isoDate(last) + ", before the first day on site, " +
                      base::isoDate(plan.days.front().date),
                  hint);
  else if (first > plan.days.back().date)
    messages.warn({file}, "",
                  "the forecast begins on " + base::isoDate(first) + ", after the last day on site, " +
                      base::isoDate(plan.days.back().date),
                  hint);
}

void checkUsualWeather(const model::JobInputs& c, const model::Plan& plan, base::Diagnostics& messages) {
  constexpr double far = 300;  // km, own choice: beyond it lie other climates
  const auto& normals = c.job.normals;
  const auto site = placeOf(c.job.site);
  const auto& forecast = c.job.forecast;
  if (!site || !normals.place || normals.months.empty() || plan.days.empty()) return;
  const auto& zone = c.job.site.timezone;
  if (!forecast.steps.empty() && forecast.from <= localToUtc(zone, {plan.days.front().date, 8 * 60}) &&
      forecast.until() >= localToUtc(zone, {plan.days.back().date + days{1}, 0}))
    return;
  const double away = kilometres(*site, {normals.place->latitude, normals.place->longitude});
  if (away <= far) return;
  messages.warn(
      base::placeOf(c.job.places, "site.latitude"), "site.latitude",
      "the usual weather of " + c.region->name + " is that of a place some " +
          std::to_string(std::lround(away / 100) * 100) + " km from here, so days and waits may be wrong",
      "give the months of this place as 'normals' under 'weather:', or a forecast of all days on site");
}

AirAt airAt(const model::JobInputs& c, base::LocalTime at) {
  return Weather(c).at(localToUtc(c.job.site.timezone, at));
}

}  // namespace schedule
