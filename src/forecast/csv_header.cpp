#include "forecast/csv_header.h"

#include "base/letters.h"
#include "forecast/open_meteo.h"

#include <algorithm>
#include <map>

namespace forecast {
namespace {

const std::map<std::string, Element> commonNames = {
    {"air", Element::Air},           {"air temperature", Element::Air},
    {"temperature", Element::Air},   {"air temp", Element::Air},
    {"temp", Element::Air},          {"rh", Element::Humidity},
    {"humidity", Element::Humidity}, {"relative humidity", Element::Humidity},
    {"cloud", Element::Cloud},       {"clouds", Element::Cloud},
    {"cloud cover", Element::Cloud}, {"cloudiness", Element::Cloud},
    {"wind", Element::Wind},         {"wind speed", Element::Wind},
    {"windspeed", Element::Wind},    {"rain", Element::Rain},
    {"rainfall", Element::Rain},     {"precipitation", Element::Rain},
    {"rain before", Element::Rain},  {"precipitation before", Element::Rain}};

bool isTimeName(const std::string& name) {
  return name == "time" || name == "date time" || name == "datetime" || name == "timestamp";
}

/// 'Wind_Speed' as 'wind speed'.
std::string plain(std::string s) {
  for (char& c : s) c = c == '_' ? ' ' : base::lowered(c);
  const auto last = s.find_last_not_of(' ');
  return last == std::string::npos ? "" : s.substr(0, last + 1);
}

/// 'wind (km/h)' and 'wind_kmh' as name and unit.
std::pair<std::string, std::string> nameAndUnit(const std::string& text) {
  const char last = text.empty() ? ' ' : text.back();
  if (last == ')' || last == ']') {
    const auto open = text.rfind(last == ')' ? '(' : '[');
    if (open != std::string::npos)
      return {text.substr(0, open), text.substr(open + 1, text.size() - open - 2)};
  }
  if (commonNames.contains(plain(text))) return {text, ""};
  const auto gap = text.find_last_of("_ ");
  return gap == std::string::npos ? std::pair{text, std::string()}
                                  : std::pair{text.substr(0, gap), text.substr(gap + 1)};
}

std::optional<Element> elementOf(const std::string& name, bool isOpenMeteo) {
  if (isOpenMeteo) {
    for (const OpenMeteoName& known : openMeteoNames) {
      if (name == plain(known.key) || (known.oldKey != nullptr && name == plain(known.oldKey)))
        return known.element;
    }
    return {};
  }
  const auto found = commonNames.find(name);
  return found == commonNames.end() ? std::nullopt : std::optional(found->second);
}

}  // namespace

Header readHeader(const Row& row, bool isOpenMeteo, const std::string& file, base::Diagnostics& messages) {
  Header header;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const Cell& cell = row.cells[i];
    const auto error = [&](const std::string& message, const std::string& hint) {
      messages.error({file, row.line, cell.column}, "", message, hint);
    };
    if (isTimeName(plain(cell.text)) && !header.time) {
      header.time = i;
      continue;
    }
    const auto [name, unitText] = nameAndUnit(cell.text);
    const auto element = elementOf(plain(name), isOpenMeteo);
    if (!element) continue;
    const bool isThere = std::any_of(header.columns.begin(), header.columns.end(),
                                     [&](const Column& c) { return c.element == *element; });
    const auto unit = unitOf(*element, unitText);
    if (isThere) error("a second column of " + nameOf(*element), "leave one out");
    else if (unitText.empty())
      error(
          "'" + cell.text + "' has no unit",
          "write it behind the name, like 'air (C)', 'humidity (%)', 'cloud (%)', 'wind (m/s)', 'rain (mm)'");
    else if (!unit)
      error("'" + unitText + "' is not a unit we know for " + nameOf(*element),
            "known: C, F, K; %; m/s, km/h, mph, kn; mm, inch");
    else header.columns.push_back({i, *element, *unit, plain(name).ends_with(" before")});
  }
  return header;
}

}  // namespace forecast
