// The gridpoint data of the US National Weather Service: each layer has intervals of its own, through which
// its value holds; rain is the sum of its interval.
#include "forecast/json_value.h"
#include "forecast/times.h"
#include "forecast/units.h"

#include <map>

namespace forecast {
namespace {

constexpr struct {
  Element element;
  const char* key;
} names[] = {{Element::Air, "temperature"},
             {Element::Humidity, "relativeHumidity"},
             {Element::Cloud, "skyCover"},
             {Element::Wind, "windSpeed"},
             {Element::Rain, "quantitativePrecipitation"}};

struct Interval {
  Time from, until;
};

/// '2027-07-12T18:00:00+00:00/PT3H'.
Interval readInterval(const JsonValue& f) {
  const std::string text = f.text();
  const auto slash = text.find('/');
  const auto stamp = parseStamp(std::string_view(text).substr(0, slash));
  const auto span =
      slash == std::string::npos ? std::nullopt : parseDuration(std::string_view(text).substr(slash + 1));
  if (!stamp || !stamp->offset || !span) f.refuse("'" + text + "' is not a time and the span that follows");
  const Time from = stamp->clock - *stamp->offset;
  return {from, from + *span};
}

/// The middle of the grid's cell.
std::optional<model::Coordinates> placeOf(const JsonValue& ring) {
  if (!ring.isGiven()) return {};
  model::Coordinates least{90, 180}, most{-90, -180};
  for (const JsonValue& corner : ring.items()) {
    const auto at = readPoint(corner);
    if (!at) return {};
    least = {std::min(least.latitude, at->latitude), std::min(least.longitude, at->longitude)};
    most = {std::max(most.latitude, at->latitude), std::max(most.longitude, at->longitude)};
  }
  return placeAt((least.latitude + most.latitude) / 2, (least.longitude + most.longitude) / 2);
}

}  // namespace

Series readGridpoint(const JsonValue& root) {
  const JsonValue layers = root["properties"].isObject() ? root["properties"] : root;
  Series series{"US National Weather Service",
                "save the gridpoint data, whose address ends in gridpoints/OFFICE/X,Y",
                {},
                {},
                {}};
  if (const JsonValue rings = root["geometry"]["coordinates"]; rings.isGiven()) {
    const auto all = rings.items();
    if (!all.empty()) series.place = placeOf(all[0]);
  }
  constexpr int mostHours = 100'000;  // of all layers
  int count = 0;
  std::map<Time, Instant> hours;
  for (const auto& [element, key] : names) {
    const JsonValue layer = layers[key], values = layer["values"];
    if (!values.isGiven()) continue;
    for (const JsonValue& each : values.items()) {
      if (!each["value"].isGiven()) continue;  // nothing applies there
      const Interval span = readInterval(each["validTime"]);
      const auto value = readElement(element, each["value"], layer["uom"].text());
      if (element == Element::Rain) {
        if (series.rain.empty() || series.rain.back().until <= span.from)
          series.rain.push_back({span.from, span.until, *value});
        continue;
      }
      for (Time t = span.from; t < span.until; t += std::chrono::hours{1}) {
        if (++count > mostHours) values.refuse("it has more hours than a forecast");
        Instant& hour = hours[t];
        hour.at = t;
        hour[element] = value;
      }
    }
  }
  for (const auto& [at, hour] : hours) series.instants.push_back(hour);
  return series;
}

}  // namespace forecast
