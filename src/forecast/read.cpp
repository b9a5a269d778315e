#include "forecast/read.h"

#include "forecast/csv.h"
#include "forecast/json_value.h"
#include "forecast/steps.h"
#include "forecast/weather_data.h"

#include <algorithm>

namespace forecast {
namespace {

using nlohmann::json;

constexpr std::size_t mostBytes = 4 << 20;
constexpr int mostDepth = 40;

json parse(const std::string& text) {
  const auto isShallow = [](int depth, json::parse_event_t, json&) {
    if (depth > mostDepth)
      throw Refusal{"", "it is nested too deeply for a forecast",
                    "save the file again as the service gives it"};
    return true;
  };
  try {
    return json::parse(text, isShallow);
  } catch (const json::parse_error& e) {
    const auto before = std::string_view(text).substr(0, e.byte > 0 ? e.byte - 1 : 0);
    const int line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    const auto column = before.size() - (before.rfind('\n') + 1) + 1;
    throw Refusal{"", "it is no whole JSON file", "save it again, whole", line, static_cast<int>(column)};
  } catch (const json::exception&) {
    throw Refusal{"", "it has a number too large to read", "save the file again as the service gives it"};
  }
}

/// A service's own words about what it could not do.
void checkError(const JsonValue& root) {
  const bool isOpenMeteo = root["error"].isGiven() && root["reason"].isGiven();
  const bool isProblem = root["title"].isGiven() && root["detail"].isGiven() && root["status"].isGiven();
  if (!isOpenMeteo && !isProblem) return;
  const std::string words = (isOpenMeteo ? root["reason"] : root["detail"]).text();
  throw Refusal{"", "it holds an error message, not a forecast: '" + words + "'", "ask the service again"};
}

/// The text forecasts of the US National Weather Service.
void checkPeriods(const JsonValue& properties) {
  if (!properties["periods"].isGiven()) return;
  throw Refusal{
      "",
      "it is the text forecast of the US National Weather Service, with no cloud cover and no amount of rain",
      "save the gridpoint data: the address without what follows gridpoints/OFFICE/X,Y"};
}

Series readJson(const std::string& text) {
  const json document = parse(text);
  if (document.is_array()) throw Refusal{"", "it holds several places", "ask for one"};
  const JsonValue root(&document, "");
  checkError(root);
  const JsonValue properties = root["properties"];
  checkPeriods(properties);
  if (root["hourly"]["time"].isGiven()) return readOpenMeteo(root);
  if (properties["timeseries"].isGiven()) return readMetNorway(root);
  for (const JsonValue& layers : {properties, root}) {
    if (layers["temperature"]["values"].isGiven()) return readGridpoint(root);
  }
  if (root["features"].isGiven()) return readMetOffice(root);
  if (root["dimensions"].isGiven() && root["variables"].isGiven()) return readMetService(root);
  throw Refusal{"", "this JSON file is no forecast we know",
                "'planksheaf help weather' says which services there are"};
}

/// Without a byte order mark and the carriage returns of line ends.
std::string plainText(const std::string& bytes) {
  std::string text = bytes.starts_with("\xEF\xBB\xBF") ? bytes.substr(3) : bytes;
  std::erase(text, '\r');
  return text;
}

bool hasCloud(const Series& series) {
  return std::any_of(series.instants.begin(), series.instants.end(),
                     [](const Instant& i) { return i[Element::Cloud].has_value(); });
}

std::optional<Series> readAny(const std::string& text, const std::string& file, const Wanted& wanted,
                              base::Diagnostics& messages) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string::npos) throw Refusal{"", "it is empty", "save it again"};
  if (text[first] == '{' || text[first] == '[') return readJson(text);
  if (text[first] == '<') return readWeatherData(text);
  if (text.starts_with("PK")) throw Refusal{"", "it is a packed file or a spreadsheet", "save it as CSV"};
  return readCsv(text, file, wanted.zone, messages);
}

}  // namespace

model::Forecast readForecast(const std::string& bytes, const std::string& file, const Wanted& wanted,
                             base::Diagnostics& messages) {
  try {
    if (bytes.size() > mostBytes)
      throw Refusal{"", "it is larger than 4 MiB", "ask for fewer days or values"};
    std::vector<Note> notes;
    base::Diagnostics told;
    auto series = readAny(plainText(bytes), file, wanted, told);
    messages.add(told);
    if (!series) return {};
    if (wanted.cloud && hasCloud(*series))
      notes.push_back(
          {"it has its own cloud cover, which counts", "leave 'cloud' out of 'weather' in the job"});
    model::Forecast forecast = makeForecast(std::move(*series), wanted.cloud, wanted.zone, notes);
    for (const Note& n : notes) messages.warn({file, 1, 1}, "", n.message, n.hint);
    return forecast;
  } catch (const Refusal& r) {
    messages.error({file, r.line, r.column}, r.path, r.message, r.hint);
  }
  return {};
}

}  // namespace forecast
