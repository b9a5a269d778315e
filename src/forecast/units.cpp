#include "forecast/units.h"

#include "base/letters.h"

#include <cmath>

namespace forecast {
namespace {

struct Name {
  Element element;
  const char* name;
  Unit unit;
};

// NIST Special Publication 811 (2008), Appendix B.8: mile per hour, knot, inch, degree Fahrenheit, kelvin.
constexpr Unit same{}, fahrenheit{1 / 1.8, -32 / 1.8}, kelvin{1, -273.15}, kmh{1 / 3.6, 0}, mph{0.44704, 0},
    knot{1852.0 / 3600, 0}, inch{25.4, 0};

constexpr Name names[] = {{Element::Air, "c", same},
                          {Element::Air, "degc", same},
                          {Element::Air, "celsius", same},
                          {Element::Air, "cel", same},
                          {Element::Air, "f", fahrenheit},
                          {Element::Air, "degf", fahrenheit},
                          {Element::Air, "fahrenheit", fahrenheit},
                          {Element::Air, "k", kelvin},
                          {Element::Air, "kelvin", kelvin},
                          {Element::Air, "degreek", kelvin},
                          {Element::Humidity, "%", same},
                          {Element::Humidity, "percent", same},
                          {Element::Humidity, "pct", same},
                          {Element::Cloud, "%", same},
                          {Element::Cloud, "percent", same},
                          {Element::Cloud, "pct", same},
                          {Element::Wind, "m/s", same},
                          {Element::Wind, "ms", same},
                          {Element::Wind, "mps", same},
                          {Element::Wind, "m_s-1", same},
                          {Element::Wind, "meterpersecond", same},
                          {Element::Wind, "km/h", kmh},
                          {Element::Wind, "kmh", kmh},
                          {Element::Wind, "kph", kmh},
                          {Element::Wind, "km_h-1", kmh},
                          {Element::Wind, "mph", mph},
                          {Element::Wind, "mp/h", mph},
                          {Element::Wind, "kn", knot},
                          {Element::Wind, "kt", knot},
                          {Element::Wind, "knots", knot},
                          {Element::Rain, "mm", same},
                          {Element::Rain, "inch", inch},
                          {Element::Rain, "in", inch}};

}  // namespace

std::optional<Unit> unitOf(Element element, const std::string& text) {
  std::string unit;
  for (const char c : text.substr(text.rfind(':') + 1)) {
    if (c > ' ' && c < 0x7F) unit += base::lowered(c);
  }
  for (const Name& n : names) {
    if (n.element == element && unit == n.name) return n.unit;
  }
  return {};
}

std::string nameOf(Element element) {
  switch (element) {
    case Element::Air:
      return "air temperature";
    case Element::Humidity:
      return "humidity";
    case Element::Cloud:
      return "cloud cover";
    case Element::Wind:
      return "wind";
    case Element::Rain:
      return "rain";
  }
  return {};
}

std::optional<model::Coordinates> placeAt(std::optional<double> north, std::optional<double> east) {
  if (!north || !east || !(std::abs(*north) <= 90) || !(std::abs(*east) <= 180)) return {};
  return model::Coordinates{*north, *east};
}

}  // namespace forecast
