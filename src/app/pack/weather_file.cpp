#include "app/pack/weather_file.h"

#include "base/quantity_words.h"
#include "forecast/read.h"
#include "forecast/times.h"
#include "input/read.h"
#include "schedule/weather/distance.h"
#include "schedule/weather/weather_at.h"

#include <cmath>
#include <filesystem>

namespace app {
namespace {

std::string twoDecimals(double degrees) {
  // A plain hyphen for the minus: these words are typed into the job.
  return (degrees < 0 ? "-" : "") + base::decimal(std::llround(std::abs(degrees) * 100) * 10'000, 2, ".", "");
}

std::string placeWords(model::Coordinates place) {
  return twoDecimals(place.latitude) + ", " + twoDecimals(place.longitude);
}

std::optional<long> kilometresFromSite(const model::Job& job) {
  const auto site = schedule::placeOf(job.site);
  const auto& place = job.forecast.place;
  if (!site || !place) return {};
  return std::lround(schedule::kilometres(*site, {place->latitude, place->longitude}));
}

std::string clockWords(const model::Job& job, std::chrono::sys_seconds t) {
  std::string s = base::isoTime(schedule::utcToLocal(job.site.timezone, t));
  s[10] = ' ';
  return s;
}

}  // namespace

std::string weatherPath(const model::Job& job, const std::string& jobFile) {
  return (std::filesystem::path(jobFile).parent_path() / job.forecast.file).lexically_normal().string();
}

void readWeatherFile(model::Job& job, const std::string& jobFile, base::Diagnostics& messages) {
  if (job.forecast.file.empty() || !schedule::isZone(job.site.timezone)) return;
  constexpr long far = 50;  // km, own choice: services name the middle of their grid's cell
  const char* key = job.places.contains("weather.forecast") ? "weather.forecast" : "weather";
  const auto at = base::placeOf(job.places, key);
  const std::string path = weatherPath(job, jobFile);
  const auto bytes = input::readFile(path);
  if (!bytes) {
    messages.error(at, key, "'" + job.forecast.file + "' cannot be read: " + input::whyUnreadable(path),
                   "the path starts at this file's folder");
    return;
  }
  model::Forecast read =
      forecast::readForecast(*bytes, path, {job.site.timezone, job.forecast.likelyCloud}, messages);
  read.file = job.forecast.file;
  read.likelyCloud = job.forecast.likelyCloud;
  job.forecast = std::move(read);
  const auto away = kilometresFromSite(job);
  if (!away || *away <= far) return;
  messages.warn(at, key,
                "'" + job.forecast.file + "' is for " + placeWords(*job.forecast.place) + ", " +
                    std::to_string(*away) + " km from the site",
                "save the one for " + placeWords({static_cast<double>(job.site.latitudeMicro) / 1e6,
                                                  static_cast<double>(job.site.longitudeMicro) / 1e6}));
}

std::string weatherWords(const model::Job& job) {
  const model::Forecast& f = job.forecast;
  std::string s = f.file;
  if (!f.service.empty()) s += ", " + f.service;
  if (f.place) s += ", for " + placeWords(*f.place);
  if (const auto away = kilometresFromSite(job)) s += ", " + std::to_string(*away) + " km from the site";
  s += ", " + clockWords(job, f.from) + " to " + clockWords(job, f.until()) + ", steps of " +
       forecast::spanWords(std::chrono::minutes{f.stepMinutes});
  if (f.sharedFrom) s += ", longer ones shared out from " + clockWords(job, *f.sharedFrom) + " on";
  return s;
}

}  // namespace app
