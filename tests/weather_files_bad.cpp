// Weather files that cannot be used: what is missing by its name, and nothing that harms.
#include "weather_files.h"

#include <random>

using namespace weather_files;

namespace {

std::string saidOf(const std::string& text) { return readText(text).said; }

const std::vector<std::string> samples = {"expected.csv",
                                          "open-meteo.json",
                                          "open-meteo.csv",
                                          "open-meteo-us-holes.csv",
                                          "met-norway-compact.json",
                                          "nws-gridpoint.json",
                                          "met-eireann.xml",
                                          "metservice-point.json",
                                          "nws-hourly.json",
                                          "uk-met-office-hourly.json"};

/// What a reader of any file promises: usable steps or an error, and air that may be on earth.
void checkPromise(const std::string& text) {
  const Answer answer = readText(text, {"Pacific/Auckland", 50.0});
  CHECK((answer.forecast.steps.empty() || answer.forecast.steps.size() >= 2));
  CHECK(answer.forecast.steps.size() <= 10'001);
  for (const auto& air : answer.forecast.steps) {
    const bool isAir = air.celsius >= -40 && air.celsius <= 55 && air.humidity >= 1 && air.humidity <= 100 &&
                       air.cloud >= 0 && air.cloud <= 1 && air.wind >= 0 && air.wind <= 80 && air.rain >= 0;
    if (!isAir) FAIL_CHECK("no such air");
  }
}

}  // namespace

TEST_CASE("a file that lacks an element is refused by its name, with the file to fetch", "[weather files]") {
  const std::string openMeteo = bytesOf("open-meteo.json");
  const std::string fetch =
      "  hint: save it again with these hourly variables: temperature_2m, relative_humidity_2m, cloud_cover, "
      "wind_speed_10m, precipitation\n";
  CHECK(saidOf(edited(openMeteo, "\"precipitation\": [", "\"rain\": [")) ==
        "weather.txt: error: it has no rain\n" + fetch);
  CHECK(saidOf(edited(edited(openMeteo, "\"cloud_cover\": [", "\"cloud_cover_low\": ["),
                      "\"wind_speed_10m\": [", "\"wind_gusts_10m\": [")) ==
        "weather.txt: error: it has no cloud cover and no wind\n" + fetch);
  CHECK(saidOf(edited(bytesOf("open-meteo.csv"), "precipitation (mm)", "rain (mm)")) ==
        "weather.txt: error: it has no rain\n" + fetch);
  CHECK(saidOf(bytesOf("nws-hourly.json")) ==
        "weather.txt: error: it is the text forecast of the US National Weather Service, with no cloud cover "
        "and no "
        "amount of rain\n"
        "  hint: save the gridpoint data: the address without what follows gridpoints/OFFICE/X,Y\n");
  CHECK(
      saidOf(edited(bytesOf("nws-gridpoint.json"), "\"quantitativePrecipitation\"", "\"snowfallAmount\"")) ==
      "weather.txt: error: it has no rain\n"
      "  hint: save the gridpoint data, whose address ends in gridpoints/OFFICE/X,Y\n");
  CHECK(saidOf("time,air_c,rh_pct,wind_ms\n2027-07-12T06:00,9,92,1\n2027-07-12T07:00,9,92,1\n") ==
        "weather.txt: error: it has no cloud cover and no rain\n"
        "  hint: its first line is like time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm; the columns stand in "
        "any order\n");
}

TEST_CASE("missing rain ends a forecast and is never taken as none", "[weather files]") {
  const std::string text = edited(bytesOf("open-meteo.csv"), "2027-07-13T05:00,16.8,61,90,1.10,1.40",
                                  "2027-07-13T05:00,16.8,61,90,1.10,NaN");
  const Answer answer = readText(text, {"Pacific/Auckland", {}});
  // The row of 05:00 holds the rain of 04:00 to 05:00, ten hours after the first.
  CHECK(answer.forecast.steps.size() == 10);
  CHECK(answer.said ==
        "weather.txt:1:1: warning: values are missing at 2027-07-13T04:00, so it counts to there\n"
        "  hint: save a new one; behind it the usual weather of the month counts\n");
}

TEST_CASE("three missing hours are too many to bridge", "[weather files]") {
  std::string text = bytesOf("open-meteo-us-holes.csv");
  text = edited(text, "2027-07-12T09:00,62.2", "2027-07-12T09:00,NaN");
  const Answer answer = readText(text);
  CHECK(answer.forecast.steps.size() == 5);
  CHECK(answer.said.starts_with("weather.txt:1:1: warning: values are missing at 2027-07-12T11:00, "));
}

TEST_CASE("wrong units, numbers and times of a service's file are told with their path", "[weather files]") {
  const std::string openMeteo = bytesOf("open-meteo.json"), norway = bytesOf("met-norway-compact.json");
  const std::string again = "  hint: save the file again as the service gives it\n";
  CHECK(saidOf(edited(openMeteo, "\"km/h\"", "\"furlong\"")) ==
        "weather.txt: error: hourly.wind_speed_10m[1]: 'furlong' is not a unit we know for wind\n" + again);
  CHECK(saidOf(edited(openMeteo, "      8.1, 9.2", "      \"warm\", 9.2")) ==
        "weather.txt: error: hourly.temperature_2m[1]: '\"warm\"' is not a number\n" + again);
  CHECK(saidOf(edited(openMeteo, "      8.1, 9.2", "      81, 9.2")) ==
        "weather.txt: error: hourly.temperature_2m[1]: '81.0' °C is out of range\n"
        "  hint: allowed: from -40 to 55 C\n");
  CHECK(saidOf(edited(openMeteo, "      8.1, 9.2", "      9.2")) ==
        "weather.txt: error: hourly.temperature_2m: it has 24 values for 25 times\n" + again);
  CHECK(saidOf(edited(openMeteo, "\"utc_offset_seconds\": 43200", "\"utc_offset\": 43200")) ==
        "weather.txt: error: utc_offset_seconds: is missing\n" + again);
  CHECK(saidOf(edited(norway, "\"time\": \"2027-07-12T06:00:00Z\"", "\"time\": \"2027-07-12T06:00:00\"")) ==
        "weather.txt: error: properties.timeseries[1].time: '2027-07-12T06:00:00' is not a time with its "
        "zone\n" +
            again);
  CHECK(saidOf(edited(norway, "\"time\": \"2027-07-12T06:00:00Z\"", "\"time\": \"2027-07-12T08:00:00Z\"")) ==
        "weather.txt: error: its times are not in order\n"
        "  hint: save the locationforecast 2.0, 'compact' or 'complete'\n");
  CHECK(saidOf(edited(bytesOf("nws-gridpoint.json"), "PT1H", "P1M")) ==
        "weather.txt: error: properties.temperature.values[1].validTime: '2027-07-12T06:00:00+00:00/P1M' is "
        "not a time "
        "and the span that follows\n" +
            again);
  CHECK(saidOf(edited(bytesOf("met-eireann.xml"), "value=\"8.1\"", "value=\"warm\"")) ==
        "weather.txt: error: temperature.value: 'warm' is not a number\n" + again);
  CHECK(saidOf(edited(bytesOf("met-eireann.xml"), "mps=\"2.5\"", "mps=\"nan\"")) ==
        "weather.txt: error: windSpeed.mps: 'nan' mps is out of range\n  hint: allowed: from 0 to 80 m/s\n");
}

TEST_CASE("files of several places, several models, other kinds and errors are refused", "[weather files]") {
  const std::string openMeteo = bytesOf("open-meteo.json");
  CHECK(saidOf("[" + openMeteo + "," + openMeteo + "]") ==
        "weather.txt: error: it holds several places\n  hint: ask for one\n");
  CHECK(saidOf(edited(openMeteo, "\"temperature_2m\": [", "\"temperature_2m_icon\": [")) ==
        "weather.txt: error: hourly.temperature_2m_icon: it holds the forecasts of several models\n"
        "  hint: ask for one model\n");
  CHECK(saidOf("{\"error\": true, \"reason\": \"Latitude must be in range\"}") ==
        "weather.txt: error: it holds an error message, not a forecast: 'Latitude must be in range'\n"
        "  hint: ask the service again\n");
  CHECK(saidOf("{\"title\": \"Not Found\", \"status\": 404, \"detail\": \"no such point\"}") ==
        "weather.txt: error: it holds an error message, not a forecast: 'no such point'\n"
        "  hint: ask the service again\n");
  CHECK(saidOf("{}") ==
        "weather.txt: error: this JSON file is no forecast we know\n"
        "  hint: 'planksheaf help weather' says which services there are\n");
  CHECK(saidOf("<html><body>Sign in</body></html>") ==
        "weather.txt: error: this XML file is no forecast for a place\n"
        "  hint: save the locationforecast of the site\n");
  CHECK(saidOf("PK\x03\x04") ==
        "weather.txt: error: it is a packed file or a spreadsheet\n  hint: save it as CSV\n");
  CHECK(saidOf(" \n") == "weather.txt: error: it is empty\n  hint: save it again\n");
  std::string uk = bytesOf("uk-met-office-hourly.json");
  for (auto at = uk.find("\"screenTemperature\": 8.1, "); at != std::string::npos;)
    at = uk.erase(at, 26).find("\"screenTemperature\": 8.1, ");
  CHECK(saidOf(uk) ==
        "weather.txt: error: features[1].properties.timeSeries[1]: this is the three-hourly or the daily "
        "forecast, which "
        "has no temperature of an hour\n"
        "  hint: save the hourly one, with screenTemperature and totalPrecipAmount\n");
}

TEST_CASE("a file cut off anywhere is refused or read to where it holds", "[weather files]") {
  CHECK(saidOf("{\"hourly\": {\"time\":\n [1,") ==
        "weather.txt:2:5: error: it is no whole JSON file\n  hint: save it again, whole\n");
  CHECK(
      saidOf("<weatherdata><product>\n<time").starts_with("weather.txt:2: error: it is no whole XML file: "));
  for (const std::string& name : samples) {
    INFO(name);
    const std::string text = bytesOf(name);
    for (std::size_t part = 0; part < 40; ++part) checkPromise(text.substr(0, text.size() * part / 40));
  }
}

TEST_CASE("deep nesting, huge files and huge numbers are refused at once", "[weather files]") {
  CHECK(saidOf(std::string(1'000'000, '[')) ==
        "weather.txt: error: it is nested too deeply for a forecast\n"
        "  hint: save the file again as the service gives it\n");
  CHECK(saidOf("{\"hourly\": {\"time\": [1e999]}}") ==
        "weather.txt: error: it has a number too large to read\n"
        "  hint: save the file again as the service gives it\n");
  CHECK(saidOf(std::string((4 << 20) + 1, ' ')) ==
        "weather.txt: error: it is larger than 4 MiB\n  hint: ask for fewer days or values\n");
  std::string xml;
  for (int i = 0; i < 300'000; ++i) xml += "<a>";
  checkPromise(xml);
  checkPromise(
      "<!DOCTYPE w [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><weatherdata><product "
      "class=\"&b;\"/></weatherdata>");
}

TEST_CASE("a gridpoint file of endless hours is refused", "[weather files]") {
  std::string values;
  for (int i = 0; i < 1000; ++i)
    values +=
        (i > 0 ? "," : "") + std::string(R"({"validTime": "2027-07-12T06:00:00+00:00/P14D", "value": 8})");
  CHECK(saidOf(R"({"temperature": {"uom": "wmoUnit:degC", "values": [)" + values + "]}}") ==
        "weather.txt: error: temperature.values: it has more hours than a forecast\n"
        "  hint: save the file again as the service gives it\n");
}

TEST_CASE("bytes spoilt at random end in steps or in an error", "[weather files]") {
  std::mt19937 random(7);
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
  const std::string letters = "0123456789-+.,:;\"'{}[]<>&TZe/ \n\t\0\xFF\xC3naN";
  for (const std::string& name : samples) {
    INFO(name);
    const std::string whole = bytesOf(name);
    for (int round = 0; round < 200; ++round) {
      std::string text = whole;
      for (std::size_t n = 1 + below(6); n > 0; --n) {
        const std::size_t at = below(text.size()), length = std::min(below(40), text.size() - at);
        if (below(3) == 0) text.erase(at, length);
        else if (below(2) == 0) text.insert(at, text.substr(below(text.size()), length));
        else text[at] = letters[below(letters.size())];
        if (text.empty()) text = " ";
      }
      checkPromise(text);
    }
  }
  for (int round = 0; round < 200; ++round) {
    std::string text(below(300), ' ');
    for (char& c : text) c = static_cast<char>(below(256));
    checkPromise(text);
  }
}
