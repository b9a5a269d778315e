// MET Norway, locationforecast 2.0, 'compact' and 'complete': moments, and rain of the hours after each.
#include "forecast/json_value.h"

namespace forecast {
namespace {

constexpr struct {
  Element element;
  const char* key;
} names[] = {{Element::Air, "air_temperature"},
             {Element::Humidity, "relative_humidity"},
             {Element::Cloud, "cloud_area_fraction"},
             {Element::Wind, "wind_speed"}};

/// Amounts of one and of six hours overlap: the shorter one counts, where it is given.
void addRain(const JsonValue& data, Time from, const std::string& unit, std::vector<Rain>& rain) {
  constexpr std::pair<const char*, int> spans[] = {{"next_1_hours", 1}, {"next_6_hours", 6}};
  for (const auto& [key, hours] : spans) {
    const auto mm = readElement(Element::Rain, data[key]["details"]["precipitation_amount"], unit);
    if (!mm) continue;
    if (rain.empty() || rain.back().until <= from)
      rain.push_back({from, from + std::chrono::hours{hours}, *mm});
    return;
  }
}

}  // namespace

Series readMetNorway(const JsonValue& root) {
  const JsonValue properties = root["properties"], units = properties["meta"]["units"];
  Series series{"MET Norway", "save the locationforecast 2.0, 'compact' or 'complete'", {}, {}, {}};
  series.place = readPoint(root["geometry"]["coordinates"]);
  for (const JsonValue& step : properties["timeseries"].items()) {
    const JsonValue data = step["data"], details = data["instant"]["details"];
    Instant instant{readTime(step["time"]), {}};
    for (const auto& [element, key] : names) {
      if (details[key].isGiven()) instant[element] = readElement(element, details[key], units[key].text());
    }
    series.instants.push_back(instant);
    if (units["precipitation_amount"].isGiven())
      addRain(data, instant.at, units["precipitation_amount"].text(), series.rain);
  }
  return series;
}

}  // namespace forecast
