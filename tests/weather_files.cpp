// Files of the public weather services become the steps of a forecast. The forms are those of the services'
// own documents and programs: Open-Meteo, documentation and JSON and CSV writers (2026); MET Norway,
// locationforecast 2.0 data model (2023); US National Weather Service, gridpoint documentation (2024); Met
// Éireann, a captured answer (2026); UK Met Office, captured answers of its hourly site specific forecast
// (2025); MetService, examples of its point forecast. The values are invented.
#include "weather_files.h"

using namespace weather_files;

namespace {

using Catch::Matchers::WithinAbs;

/// How far the rounding of a file's units may carry a value.
struct Rounding {
  double celsius = 1e-9, humidity = 1e-9, wind = 1e-9, rain = 1e-9;
};

model::Forecast expected() {
  const Answer answer = readText(bytesOf("expected.csv"));
  CHECK(answer.said == "");
  REQUIRE(answer.forecast.steps.size() == 24);
  return answer.forecast;
}

/// Compares the hours of the day that both have; 'isWhole' where rain and cloud are told by the hour.
void compare(const model::Forecast& f, const Rounding& by, bool hasCloud = true, bool hasRain = true) {
  const auto day = expected();
  CHECK(iso(f.from) == "2027-07-12T06:00");
  CHECK(f.stepMinutes == 60);
  for (std::size_t i = 0; i < std::min(day.steps.size(), f.steps.size()); ++i) {
    INFO("hour " << i);
    const auto &a = f.steps[i], &b = day.steps[i];
    CHECK_THAT(a.celsius, WithinAbs(b.celsius, by.celsius));
    CHECK_THAT(a.humidity, WithinAbs(b.humidity, by.humidity));
    CHECK_THAT(a.wind, WithinAbs(b.wind, by.wind));
    if (hasCloud) CHECK_THAT(a.cloud, WithinAbs(b.cloud, 1e-9));
    if (hasRain) CHECK_THAT(a.rain, WithinAbs(b.rain, by.rain));
  }
}

Answer readSample(const std::string& name, const std::string& said = "", std::optional<double> cloud = {}) {
  Answer answer = readText(bytesOf(name), {"Etc/UTC", cloud});
  CHECK(answer.said == said);
  return answer;
}

}  // namespace

TEST_CASE("Open-Meteo's JSON and CSV, whose rain is that of the hour before, come to the day",
          "[weather files]") {
  const auto json = readSample("open-meteo.json").forecast;
  CHECK(json.service == "Open-Meteo");
  REQUIRE(json.place);
  CHECK(json.place->latitude == -41.25);
  CHECK(json.place->longitude == 174.75);
  CHECK(json.steps.size() == 24);  // the 25th row only carries the last rain
  CHECK_FALSE(json.sharedFrom);
  compare(json, {.wind = 0.05 / 3.6 + 1e-9});  // km/h to a tenth
  const auto csv = readSample("open-meteo.csv").forecast;
  CHECK(csv.service == "Open-Meteo");
  CHECK(csv.place->latitude == -41.25);
  CHECK(csv.steps.size() == 24);
  compare(csv, {});
}

TEST_CASE("Open-Meteo's American units are read and two missing hours bridged", "[weather files]") {
  const auto f =
      readSample("open-meteo-us-holes.csv",
                 "weather.txt:1:1: warning: missing values of air temperature are filled in between those "
                 "beside them\n"
                 "  hint: save a new one where these hours matter\n")
          .forecast;
  auto whole = f;
  // 13.39 C at 10:00 and 16.78 C at 13:00, a third of the way each hour.
  CHECK_THAT(f.steps[5].celsius, WithinAbs((56.1 + (62.2 - 56.1) / 3 - 32) / 1.8, 1e-9));
  CHECK_THAT(f.steps[6].celsius, WithinAbs((56.1 + (62.2 - 56.1) * 2 / 3 - 32) / 1.8, 1e-9));
  whole.steps[5].celsius = 14.8;
  whole.steps[6].celsius = 15.9;
  compare(whole, {.celsius = 0.05 / 1.8 + 1e-9, .wind = 0.05 * 0.44704 + 1e-9, .rain = 0.0005 * 25.4 + 1e-9});
}

TEST_CASE("Open-Meteo keeps one offset through a change of the clocks", "[weather files]") {
  const auto f = readText(bytesOf("open-meteo-clocks-back.json"), {"Europe/London", {}}).forecast;
  CHECK(iso(f.from) == "2027-10-30T19:00");
  REQUIRE(f.steps.size() == 23);
  // Rain of 22:00 to 23:00 UTC, 23:00 to 24:00 by the summer clock; the clocks go back at 01:00 UTC.
  for (std::size_t i = 0; i < f.steps.size(); ++i) CHECK(f.steps[i].rain == (i == 3 ? 0.5 : 0));
}

TEST_CASE("MET Norway's steps of six hours are shared out, and its last, bare moment is none",
          "[weather files]") {
  const auto f = readSample("met-norway-compact.json").forecast;
  CHECK(f.service == "MET Norway");
  CHECK(f.place->latitude == 60.0);
  CHECK(f.place->longitude == 10.5);
  compare(f, {});
  REQUIRE(f.steps.size() == 36);  // 24 of an hour, two of six hours
  REQUIRE(f.sharedFrom);
  CHECK(iso(*f.sharedFrom) == "2027-07-13T06:00");
  CHECK_THAT(f.steps[24].rain, WithinAbs(2.4 / 6, 1e-9));
  CHECK_THAT(f.steps[27].celsius, WithinAbs((8.1 + 15.9) / 2, 1e-9));  // half way from 06:00 to 12:00
  CHECK(f.steps[35].rain == 0);
  const auto complete = readSample("met-norway-complete.json").forecast;
  CHECK(complete.steps.size() == 24);
  compare(complete, {});
}

TEST_CASE("the gridpoint data of the US service spread rain over their intervals", "[weather files]") {
  const auto f = readSample("nws-gridpoint.json").forecast;
  CHECK(f.service == "US National Weather Service");
  CHECK_THAT(f.place->latitude, WithinAbs(40, 1e-9));
  CHECK_THAT(f.place->longitude, WithinAbs(-74.995, 1e-9));
  REQUIRE(f.steps.size() == 24);
  compare(f, {}, true, false);
  double rain = 0;
  for (const auto& step : f.steps) rain += step.rain;
  CHECK_THAT(rain, WithinAbs(2.8, 1e-9));
  CHECK(f.sharedFrom);
}

TEST_CASE("the same layers are read at the top of a JSON-LD file", "[weather files]") {
  std::string text = bytesOf("nws-gridpoint.json");
  const auto from = text.find("\"properties\"");
  text = "{" + text.substr(text.find('{', from) + 1);
  text.erase(text.rfind('}'));
  CHECK(readText(text).forecast.steps.size() == 24);
}

TEST_CASE("the UK's hourly forecast takes its cloud from the job, and its last hour has no rain",
          "[weather files]") {
  const auto f = readSample("uk-met-office-hourly.json", "", 60).forecast;
  CHECK(f.service == "UK Met Office");
  CHECK(f.place->latitude == 52);
  CHECK(f.place->longitude == -1.5);
  REQUIRE(f.steps.size() == 23);
  compare(f, {}, false);
  CHECK(f.steps[0].cloud == 0.6);
  readSample("uk-met-office-hourly.json",
             "weather.txt: error: it has no cloud cover\n"
             "  hint: give what is likely in the job, like weather: {forecast: FILE, cloud: 60 %}\n");
}

TEST_CASE("Met Éireann's windows of rain end at their moments, and grow", "[weather files]") {
  const auto f = readSample("met-eireann.xml").forecast;
  CHECK(f.service == "Met Éireann");
  CHECK(f.place->latitude == 52);
  CHECK(f.place->longitude == -8.5);
  compare(f, {});
  REQUIRE(f.steps.size() == 36);  // to 18:00 on the 13th
  CHECK(iso(*f.sharedFrom) == "2027-07-13T06:00");
  CHECK_THAT(f.steps[27].rain, WithinAbs(1.2 / 3, 1e-9));  // 09:00 to 12:00
}

TEST_CASE("MetService's kelvins and rates come to the day", "[weather files]") {
  const auto f = readSample("metservice-point.json").forecast;
  CHECK(f.service == "MetService");
  CHECK(f.place->longitude == 174.75);
  CHECK(f.steps.size() == 24);
  compare(f, {});
}

TEST_CASE("a file is told by its content, whatever its first bytes and line ends", "[weather files]") {
  for (const char* name : {"open-meteo.json", "open-meteo.csv", "met-eireann.xml"}) {
    INFO(name);
    std::string text = "\xEF\xBB\xBF";
    for (const char c : bytesOf(name)) text += c == '\n' ? "\r\n" : std::string(1, c);
    const auto f = readText(text).forecast;
    CHECK(f.steps.size() >= 24);
  }
  std::string oneLine = bytesOf("open-meteo.json");
  std::erase(oneLine, '\n');
  CHECK(readText("  " + oneLine).forecast.steps.size() == 24);
}
