// The 'weather:' of a job or a region: a forecast file, or what is usual for each month.
#include "input/content/content_parts.h"
#include "input/job/job_parts.h"
#include "input/read.h"
#include "input/yaml/words.h"

#include <filesystem>

namespace input {
namespace {

using base::Share;
using base::Temperature;

constexpr const char* monthNames[] = {"jan", "feb", "mar", "apr", "may", "jun",
                                      "jul", "aug", "sep", "oct", "nov", "dec"};

double number(base::Count c) { return static_cast<double>(c.millionths) / 1e6; }
double number(Temperature t) { return static_cast<double>(t.millionths) / 1e6; }
double number(Share s) { return static_cast<double>(s.millionths) / 1e6; }

model::MonthWeather readMonth(const Field& f) {
  constexpr Limits<Temperature> air = {Temperature::whole(-40), Temperature::whole(55), "from -40 C to 55 C"};
  model::MonthWeather m;
  if (!f.isGiven()) return m;
  Record r(f);
  m.coldest = number(quantity(r.must("coldest"), parseTemperature, air));
  m.warmest = number(quantity(r.must("warmest"), parseTemperature, air, air.most));
  m.humidity = number(quantity(r.must("humidity"), parseShare,
                               {Share::whole(1), Share::whole(100), "from 1 % to 100 %"}, Share::whole(80)));
  m.cloud = number(quantity(r.must("cloud"), parseShare, toWhole)) / 100;
  m.wind = number(
      quantityWith(r.must("wind"), "m/s", {base::Count{}, base::Count::whole(40), "from 0 m/s to 40 m/s"}));
  m.rainDays = whole(r.must("rain_days"), {0, 31, "from 0 to 31"}, 0);
  r.finish();
  if (m.coldest > m.warmest)
    f.error("the coldest hour is warmer than the warmest", "give the one at sunrise as 'coldest'");
  return m;
}

std::vector<model::MonthWeather> readMonths(const Field& f) {
  std::vector<model::MonthWeather> months;
  if (!f.isGiven()) return months;
  Record r(f);
  for (const char* name : monthNames) months.push_back(readMonth(r.must(name)));
  r.finish();
  return months;
}

void readForecastBeside(const Field& f, const std::string& jobFile, model::Forecast& forecast,
                        base::Diagnostics& messages) {
  const std::string name = text(f);
  if (name.empty()) return;
  const auto path = (std::filesystem::path(jobFile).parent_path() / name).lexically_normal().string();
  const auto bytes = readFile(path);
  if (!bytes) {
    f.error(inQuotes(name) + " cannot be read: " + whyUnreadable(path),
            "the path starts at this file's folder");
    return;
  }
  forecast = readForecast(*bytes, path, messages);
  forecast.file = name;
}

}  // namespace

model::Normals readNormals(Record& r) {
  model::Normals n;
  const Field months = r.may("normals"), source = r.may("source");
  n.months = readMonths(months);
  if (source.isGiven()) n.source = text(source);
  if (months.isGiven() && !source.isGiven())
    r.field().error("'source' is missing", "say where the normals come from; it is printed");
  if (source.isGiven() && !months.isGiven())
    source.error("there are no 'normals' that it could be of", "add 'normals', or leave it out");
  return n;
}

void readWeather(const Field& f, const std::string& jobFile, model::Job& job,
                 base::Diagnostics& forecastMessages) {
  if (f.is(Node::Kind::Map)) {
    Record r(f);
    if (const Field file = r.may("forecast"); file.isGiven())
      readForecastBeside(file, jobFile, job.forecast, forecastMessages);
    if (r.has("normals") || r.has("source")) job.normals = readNormals(r);
    r.finish();
    if (!r.has("forecast") && !r.has("normals"))
      f.error("neither 'forecast' nor 'normals' is given",
              "weather: forecast.csv names a file beside the job");
  } else {
    readForecastBeside(f, jobFile, job.forecast, forecastMessages);
  }
  if (job.site.latitudeMicro == 0 && job.site.longitudeMicro == 0)
    f.error("where the site lies is not known, and so neither sun nor night",
            "give 'latitude' and 'longitude' in 'site'");
}

}  // namespace input
