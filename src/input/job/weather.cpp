// The 'weather:' of a job or a region: a forecast file, or what is usual for each month.
#include "base/units.h"
#include "input/content/content_parts.h"
#include "input/job/job_parts.h"
#include "input/yaml/words.h"

namespace input {
namespace {

using base::Share;
using base::Temperature;

constexpr const char* monthNames[] = {"jan", "feb", "mar", "apr", "may", "jun",
                                      "jul", "aug", "sep", "oct", "nov", "dec"};

using base::floating;

constexpr const char* monthExample =
    "{coldest: 6 C, warmest: 16 C, humidity: 84 %, cloud: 65 %, wind: 3 m/s, rain_days: 8}";

model::MonthWeather readMonth(const Field& f) {
  constexpr Limits<Temperature> air = {Temperature::whole(-40), Temperature::whole(55), "from -40 C to 55 C"};
  model::MonthWeather m;
  if (!f.isGiven()) return m;
  Record r(f);
  m.coldest = floating(quantity(r.must("coldest", "6 C"), parseTemperature, air));
  m.warmest = floating(quantity(r.must("warmest", "30 C"), parseTemperature, air, air.most));
  m.humidity =
      floating(quantity(r.must("humidity", "84 %"), parseShare,
                        {Share::whole(1), Share::whole(100), "from 1 % to 100 %"}, Share::whole(80)));
  m.cloud = floating(quantity(r.must("cloud", "65 %"), parseShare, toWhole)) / 100;
  m.wind = floating(quantityWith(r.must("wind", "3 m/s"), "m/s",
                                 {base::Count{}, base::Count::whole(40), "from 0 m/s to 40 m/s"}));
  m.rainDays = whole(r.must("rain_days", "8"), {0, 31, "from 0 to 31"}, 0);
  r.finish();
  if (m.coldest > m.warmest)
    f.error("the coldest hour is warmer than the warmest", "give the one at sunrise as 'coldest'");
  return m;
}

std::vector<model::MonthWeather> readMonths(const Field& f) {
  std::vector<model::MonthWeather> months;
  if (!f.isGiven()) return months;
  Record r(f);
  for (const char* name : monthNames) months.push_back(readMonth(r.must(name, monthExample)));
  r.finish();
  return months;
}

}  // namespace

model::Normals readNormals(Record& r) {
  model::Normals n;
  const Field months = r.may("normals");
  const Field source =
      months.isGiven() ? r.must("source", "who measured them, where and when") : r.may("source");
  n.months = readMonths(months);
  if (source.isGiven()) n.source = text(source);
  if (source.isGiven() && !months.isGiven())
    source.error("there are no 'normals' that it could be of", "add 'normals', or leave it out");
  return n;
}

void readWeather(const Field& f, model::Job& job) {
  if (f.is(Node::Kind::Map)) {
    Record r(f);
    const Field file = r.may("forecast"), cloud = r.may("cloud");
    if (file.isGiven()) job.forecast.file = text(file);
    if (cloud.isGiven()) job.forecast.likelyCloud = floating(quantity(cloud, parseShare, toWhole));
    if (cloud.isGiven() && !file.isGiven())
      cloud.error("there is no 'forecast' that it could be of", "name its file, or leave it out");
    if (r.has("normals") || r.has("source")) job.normals = readNormals(r);
    r.finish();
    if (!r.has("forecast") && !r.has("normals"))
      f.error("neither 'forecast' nor 'normals' is given",
              "weather: forecast.csv names a file beside the job");
  } else {
    job.forecast.file = text(f);
  }
  if (job.site.latitudeMicro == 0 && job.site.longitudeMicro == 0)
    f.error("where the site lies is not known, and so neither sun nor night",
            "give 'latitude' and 'longitude' in 'site'");
}

}  // namespace input
