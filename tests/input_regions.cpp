// Regions: their digits of money, and the usual weather of their months.
#include "content_folder.h"
#include "near.h"

using fixture::Folder;

TEST_CASE("a region that does not say its digits has those of its currency") {
  fixture::Folder folder;
  folder.edit("regions/us.yaml", "code: USD", "code: JPY");
  CHECK(folder.content().regions.at("us").currencyDigits == 0);
}

TEST_CASE("a region's usual weather is read month by month, and its mistakes are told") {
  const std::string months =
      "weather:\n"
      "  source: invented\n"
      "  normals:\n"
      "    jan: {coldest: 46.4 F, warmest: 20 C, humidity: 85 %, cloud: 60 %, wind: 3.5 m/s, rain_days: 9}\n";
  std::string all = months;
  for (const char* name : {"feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"})
    all += std::string("    ") + name +
           ": {coldest: 1 C, warmest: 2 C, humidity: 80 %, cloud: 50 %, wind: 2 m/s, rain_days: 3}\n";
  all += "  latitude: 35.5\n  longitude: -82.5\n";
  const auto withWeather = [](const std::string& weather) { return "emergency: '911'\n" + weather; };
  {
    Folder folder;
    folder.edit("regions/us.yaml", "emergency: '911'\n", withWeather(all).c_str());
    const model::Normals n = folder.content().regions.at("us").normals;
    CHECK(folder.said() == "");
    CHECK(n.source == "invented");
    REQUIRE(n.months.size() == 12);
    CHECK(n.months[0].coldest == near(8));
    CHECK(n.months[0].warmest == 20);
    CHECK(n.months[0].humidity == 85);
    CHECK(n.months[0].cloud == near(0.6));
    CHECK(n.months[0].wind == 3.5);
    CHECK(n.months[0].rainDays == 9);
    CHECK(n.months[11].warmest == 2);
    REQUIRE(n.place);
    CHECK(n.place->latitude == 35.5);
    CHECK(n.place->longitude == -82.5);
  }
  Folder folder;
  std::string bad = all;
  bad.replace(bad.find("  source: invented\n"), 19, "");
  bad.replace(bad.find("warmest: 20 C"), 13, "warmest: 2 C");
  bad.replace(bad.find("wind: 2 m/s"), 11, "wind: 2 km/h");
  bad.replace(bad.find("    dec:"), 8, "    dez:");
  folder.edit("regions/us.yaml", "emergency: '911'\n", withWeather(bad).c_str());
  folder.content();
  CHECK(folder.said() ==
        "regions/us.yaml:11:3: error: weather: 'source' is missing\n"
        "  hint: write it like source: who measured them, where and when\n"
        "regions/us.yaml:12:5: error: weather.normals: 'dec' is missing\n"
        "  hint: write it like dec: {coldest: 6 C, warmest: 16 C, humidity: 84 %, cloud: 65 %, wind: 3 m/s, "
        "rain_days: 8}\n"
        "regions/us.yaml:12:10: error: weather.normals.jan: the coldest hour is warmer than the warmest\n"
        "  hint: give the one at sunrise as 'coldest'\n"
        "regions/us.yaml:13:74: error: weather.normals.feb.wind: '2 km/h' is not a value in m/s\n"
        "  hint: it is given like '12 m/s'\n"
        "regions/us.yaml:23:5: error: weather.normals: 'dez' is not a known key here; did you mean 'dec'?\n"
        "  hint: known: jan, feb, mar, apr, may, jun, jul, aug, sep, oct, nov or dec\n");
}
