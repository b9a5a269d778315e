// The hourly forecast of the UK Met Office, site specific: no cloud cover, and rain of the hour before its
// stamp.
#include "forecast/json_value.h"

namespace forecast {
namespace {

// The service writes these units whatever is asked, and may leave them out.
constexpr struct {
  Element element;
  const char *key, *unit;
} names[] = {{Element::Air, "screenTemperature", "celsius"},
             {Element::Humidity, "screenRelativeHumidity", "%"},
             {Element::Wind, "windSpeed10m", "m/s"}};

constexpr auto fetch = "save the hourly one, with screenTemperature and totalPrecipAmount";

}  // namespace

Series readMetOffice(const JsonValue& root) {
  const auto features = root["features"].items();
  if (features.size() != 1) root["features"].refuse("it does not hold one place", "ask for one");
  const JsonValue properties = features[0]["properties"];
  Series series{"UK Met Office", fetch, {}, {}, {}};
  series.place = readPoint(features[0]["geometry"]["coordinates"]);
  for (const JsonValue& step : properties["timeSeries"].items()) {
    if (!step["screenTemperature"].isGiven() && step["maxScreenAirTemp"].isGiven())
      step.refuse("this is the three-hourly or the daily forecast, which has no temperature of an hour",
                  fetch);
    Instant instant{readTime(step["time"]), {}};
    for (const auto& [element, key, unit] : names) instant[element] = readElement(element, step[key], unit);
    const auto mm = readElement(Element::Rain, step["totalPrecipAmount"], "mm");
    if (mm && !series.instants.empty() && series.instants.back().at < instant.at)
      series.rain.push_back({series.instants.back().at, instant.at, *mm});
    series.instants.push_back(instant);
  }
  return series;
}

}  // namespace forecast
