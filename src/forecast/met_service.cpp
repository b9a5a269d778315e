// The point forecast of New Zealand's MetService: a list for each variable, with a code where a value is
// missing.
#include "forecast/json_value.h"
#include "forecast/units.h"

namespace forecast {
namespace {

constexpr struct {
  Element element;
  const char* key;
} names[] = {{Element::Air, "air.temperature.at-2m"},
             {Element::Humidity, "air.humidity.at-2m"},
             {Element::Cloud, "cloud.cover"},
             {Element::Wind, "wind.speed.at-10m"},
             {Element::Rain, "precipitation.rate"}};

/// A rate of rain at a stamp is taken as that of the step it begins; 'mm' of an hour.
std::string unitTextOf(const JsonValue& variable, Element element) {
  const std::string unit = variable["units"].text();
  if (element != Element::Rain) return unit;
  if (unit != "millimeterPerHour") variable["units"].refuse("'" + unit + "' is not a unit we know for rain");
  return "mm";
}

/// The last step is as long as the one before it.
void addRain(Series& series, std::size_t i, double mmPerHour) {
  const auto& steps = series.instants;
  const auto span = i + 1 < steps.size() ? steps[i + 1].at - steps[i].at : steps[i].at - steps[i - 1].at;
  series.rain.push_back(
      {steps[i].at, steps[i].at + span, mmPerHour * static_cast<double>(span.count()) / 3600});
}

}  // namespace

Series readMetService(const JsonValue& root) {
  Series series{"MetService",
                "ask for these variables: air.temperature.at-2m, air.humidity.at-2m, cloud.cover, "
                "wind.speed.at-10m, precipitation.rate",
                {},
                {},
                {}};
  const JsonValue points = root["dimensions"]["point"]["data"];
  if (const auto all = points.items(); all.size() == 1) {
    series.place = placeAt(all[0]["lat"].number(), all[0]["lon"].number());
  } else {
    points.refuse("it holds several places", "ask for one");
  }
  for (const JsonValue& stamp : root["dimensions"]["time"]["data"].items())
    series.instants.push_back({readTime(stamp), {}});
  for (const auto& [element, key] : names) {
    const JsonValue variable = root["variables"][key];
    if (!variable.isGiven()) continue;
    const auto values = variable["data"].items(), codes = variable["noData"].items();
    if (values.size() != series.instants.size() || codes.size() != values.size())
      variable.refuse("it has not as many values as there are times");
    const std::string unit = unitTextOf(variable, element);
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (codes[i].number() != 0) continue;
      const auto value = readElement(element, values[i], unit);
      if (element != Element::Rain) series.instants[i][element] = value;
      else if (value && values.size() > 1) addRain(series, i, *value);
    }
  }
  return series;
}

}  // namespace forecast
