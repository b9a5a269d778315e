// Open-Meteo's JSON: 'hourly' holds a list for each variable; clocks are by one offset for the whole file,
// and rain is that of the hour before its stamp.
#include "forecast/open_meteo.h"
#include "forecast/json_value.h"
#include "forecast/times.h"
#include "forecast/units.h"

#include <cmath>

namespace forecast {
namespace {

/// The key of an element, or its name until 2023.
JsonValue variable(const JsonValue& hourly, const OpenMeteoName& name) {
  const JsonValue now = hourly[name.key];
  return now.isGiven() || name.oldKey == nullptr ? now : hourly[name.oldKey];
}

void checkOneModel(const JsonValue& hourly) {
  for (const std::string& key : hourly.keys()) {
    if (key.starts_with("temperature_2m_"))
      hourly[key].refuse("it holds the forecasts of several models", "ask for one model");
  }
}

std::vector<Time> readTimes(const JsonValue& root) {
  const bool isUnix =
      root["hourly_units"]["time"].isGiven() && root["hourly_units"]["time"].text() == "unixtime";
  std::vector<Time> times;
  const auto offset = root["utc_offset_seconds"].number();
  if (!isUnix && (!offset || std::abs(*offset) > 14 * 3600)) root["utc_offset_seconds"].refuse("is missing");
  for (const JsonValue& each : root["hourly"]["time"].items()) {
    if (isUnix) {
      const auto seconds = each.number();
      if (!seconds || std::abs(*seconds) > 1e11) each.refuse("is not a time");
      times.push_back(Time{std::chrono::seconds{std::llround(*seconds)}});
    } else {
      const auto stamp = parseStamp(each.text());
      if (!stamp) each.refuse("'" + each.text() + "' is not a time");
      times.push_back(stamp->clock - std::chrono::seconds{std::llround(*offset)});
    }
  }
  return times;
}

}  // namespace

Series readOpenMeteo(const JsonValue& root) {
  const JsonValue hourly = root["hourly"];
  checkOneModel(hourly);
  Series series{"Open-Meteo", openMeteoFetch, {}, {}, {}};
  series.place = placeAt(root["latitude"].number(), root["longitude"].number());
  const auto times = readTimes(root);
  for (const Time t : times) series.instants.push_back({t, {}});
  for (const OpenMeteoName& name : openMeteoNames) {
    const JsonValue list = variable(hourly, name);
    if (!list.isGiven()) continue;
    const auto values = list.items();
    if (values.size() != times.size())
      list.refuse("it has " + std::to_string(values.size()) + " values for " + std::to_string(times.size()) +
                  " times");
    const JsonValue units = root["hourly_units"];
    const std::string unit =
        (units[name.key].isGiven() ? units[name.key] : units[name.oldKey ? name.oldKey : name.key]).text();
    for (std::size_t i = 0; i < values.size(); ++i) {
      const auto value = readElement(name.element, values[i], unit);
      if (name.element != Element::Rain) series.instants[i][name.element] = value;
      else if (value && i > 0) series.rain.push_back({times[i - 1], times[i], *value});
    }
  }
  return series;
}

}  // namespace forecast
