// The XML of Met Éireann, which is the older one of MET Norway too: moments, and windows of rain that end at
// them.
#include "forecast/weather_data.h"

#include "forecast/steps.h"
#include "forecast/times.h"
#include "forecast/units.h"

#include <pugixml.hpp>

#include <algorithm>
#include <charconv>

namespace forecast {
namespace {

constexpr auto saveAgain = "save the file again as the service gives it";

constexpr struct {
  Element element;
  const char *name, *value, *unit;  // of the XML element, and our word for its unit
} names[] = {{Element::Air, "temperature", "value", "celsius"},
             {Element::Humidity, "humidity", "value", "percent"},
             {Element::Cloud, "cloudiness", "percent", "percent"},
             {Element::Wind, "windSpeed", "mps", "mps"}};

[[noreturn]] void refuse(const pugi::xml_node& node, const char* attribute, std::string message) {
  throw Refusal{std::string(node.name()) + "." + attribute, std::move(message), saveAgain};
}

std::optional<double> number(const pugi::xml_node& node, const char* name) {
  const std::string_view s = node.attribute(name).value();
  if (s.empty()) return {};
  double value = 0;
  const auto [end, problem] = std::from_chars(s.data(), s.data() + s.size(), value, std::chars_format::fixed);
  if (problem != std::errc{} || end != s.data() + s.size())
    refuse(node, name, "'" + std::string(s) + "' is not a number");
  return value;
}

std::optional<double> element(Element e, const pugi::xml_node& node, const char* attribute,
                              std::string unit) {
  const auto raw = number(node, attribute);
  if (!raw) return {};
  if (const auto written = node.attribute("unit")) unit = written.value();
  const auto known = unitOf(e, unit);
  if (!known) refuse(node, "unit", "'" + unit + "' is not a unit we know for " + nameOf(e));
  const double value = known->of(*raw);
  if (const auto range = rangeMissed(e, value))
    throw Refusal{std::string(node.name()) + "." + attribute,
                  "'" + std::string(node.attribute(attribute).value()) + "' " + unit + " is out of range",
                  "allowed: " + *range};
  return value;
}

Time time(const pugi::xml_node& node, const char* attribute) {
  const std::string text = node.attribute(attribute).value();
  const auto stamp = parseStamp(text);
  if (!stamp || !stamp->offset) refuse(node, attribute, "'" + text + "' is not a time with its zone");
  return stamp->clock - *stamp->offset;
}

/// Several windows may end at one moment: the shortest counts. None lies over another then.
std::vector<Rain> withoutOverlaps(std::vector<Rain> rain) {
  std::sort(rain.begin(), rain.end(), [](const Rain& a, const Rain& b) {
    return std::pair(a.until, a.until - a.from) < std::pair(b.until, b.until - b.from);
  });
  std::vector<Rain> kept;
  for (const Rain& r : rain) {
    if (kept.empty() || r.from >= kept.back().until) kept.push_back(r);
  }
  return kept;
}

std::string serviceOf(const pugi::xml_node& root) {
  for (const auto& model : root.child("meta").children("model")) {
    const std::string_view name = model.attribute("name").value();
    if (name == "harmonie" || name.starts_with("ec_")) return "Met Éireann";
  }
  return "MET Norway";
}

}  // namespace

Series readWeatherData(const std::string& bytes) {
  pugi::xml_document document;
  const auto read = document.load_buffer(bytes.data(), bytes.size());
  if (!read) {
    const auto before = std::string_view(bytes).substr(0, static_cast<std::size_t>(read.offset));
    const int line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    throw Refusal{"", "it is no whole XML file: " + std::string(read.description()), "save it again, whole",
                  line, 0};
  }
  const pugi::xml_node root = document.child("weatherdata"), product = root.child("product");
  if (std::string_view(product.attribute("class").value()) != "pointData")
    throw Refusal{"", "this XML file is no forecast for a place", "save the locationforecast of the site"};
  Series series{serviceOf(root), "save the whole locationforecast of the site", {}, {}, {}};
  for (const auto& step : product.children("time")) {
    const pugi::xml_node place = step.child("location");
    const Time from = time(step, "from"), until = time(step, "to");
    if (!series.place) series.place = placeAt(number(place, "latitude"), number(place, "longitude"));
    if (from < until) {
      const auto mm = element(Element::Rain, place.child("precipitation"), "value", "mm");
      if (mm) series.rain.push_back({from, until, *mm});
    } else if (place.child("temperature")) {
      Instant instant{from, {}};
      for (const auto& [e, name, attribute, unit] : names)
        instant[e] = element(e, place.child(name), attribute, unit);
      series.instants.push_back(instant);
    }
  }
  std::stable_sort(series.instants.begin(), series.instants.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  series.rain = withoutOverlaps(std::move(series.rain));
  return series;
}

}  // namespace forecast
