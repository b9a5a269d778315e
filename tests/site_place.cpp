// Zone, coordinates and region of a site against the tz database's zone.tab, as the system has it.
#include "schedule/plan.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

namespace {

struct Site {
  const char* country;  // 'en-NZ'
  const char* name;
  double north, east;
  std::string zone;
};

std::string saidOf(const Site& site) {
  model::Job job;
  job.start = *base::parseDate("2027-03-16");
  job.site.latitudeMicro = std::llround(site.north * 1e6);
  job.site.longitudeMicro = std::llround(site.east * 1e6);
  job.site.timezone = site.zone;
  job.places = {{"", {"job.yaml", 1, 1}},
                {"site.latitude", {"job.yaml", 4, 30}},
                {"site.timezone", {"job.yaml", 4, 67}}};
  model::Region region;
  region.language = site.country;
  region.name = site.name;
  base::Diagnostics messages;
  schedule::checkSite(job, region, messages);
  std::string said;
  for (const auto& d : messages.all()) said += base::format(d);
  return said;
}

const char *const nz = "en-NZ", *const us = "en-US", *const newZealand = "New Zealand",
                  *const unitedStates = "United States";
const std::string zoneOfUs =
    "in United States: America/New_York, America/Detroit, America/Chicago, America/Menominee, "
    "America/Denver, "
    "America/Boise, America/Phoenix, America/Los_Angeles, America/Anchorage, America/Juneau, America/Sitka, "
    "America/Metlakatla, America/Yakutat, America/Nome, America/Adak, Pacific/Honolulu\n";

}  // namespace

TEST_CASE("the towns of a country's zones lie in it") {
  std::ifstream in("/usr/share/zoneinfo/zone.tab");
  int checked = 0;
  for (std::string line; std::getline(in, line);) {
    for (const std::string country : {"AU", "GB", "IE", "NZ", "US"}) {
      if (!line.starts_with(country + "\t")) continue;
      std::istringstream row(line);
      std::string code, place, zone;
      row >> code >> place >> zone;
      const auto east = place.find_first_of("+-", 1);  // +DDMM[SS]+DDDMM[SS]
      const auto part = [](const std::string& s, std::size_t whole) {
        const double d = std::stod(s.substr(1, whole)) + std::stod(s.substr(1 + whole, 2)) / 60;
        return s[0] == '-' ? -d : d;
      };
      const std::string language = "en-" + country;
      CHECK(saidOf({language.c_str(), "there", part(place.substr(0, east), 2), part(place.substr(east), 3),
                    zone}) == "");
      ++checked;
    }
  }
  CHECK(checked > 40);  // 12 + 1 + 1 + 2 + 29 in 2024
}

TEST_CASE("far corners of a country are no mistake") {
  // Positions to a tenth of a degree, from memory.
  for (const Site& s : {Site{us, "", 24.6, -81.8, "America/New_York"},          // Key West
                        Site{us, "", 25.9, -97.5, "America/Chicago"},           // Brownsville
                        Site{us, "", 48.4, -124.7, "America/Los_Angeles"},      // Cape Flattery
                        Site{us, "", 53.9, -166.5, "America/Anchorage"},        // Unalaska
                        Site{"en-AU", "", -18.0, 122.2, "Australia/Perth"},     // Broome
                        Site{"en-AU", "", -16.9, 145.8, "Australia/Brisbane"},  // Cairns
                        Site{"en-GB", "", 60.2, -1.1, "Europe/London"},         // Lerwick
                        Site{nz, "", -46.9, 168.1, "Pacific/Auckland"},         // Stewart Island
                        Site{"en-IE", "", 53.3, -6.3, "Europe/London"}})        // the same clock
    CHECK(saidOf(s) == "");
}

TEST_CASE("a place left as in the sample is told when the region changes") {
  CHECK(
      saidOf({us, unitedStates, -45.0, 169.0, "Pacific/Auckland"}) ==
      "job.yaml:4:67: warning: site.timezone: 'Pacific/Auckland' is not the time of United States\n  hint: " +
          zoneOfUs +
          "job.yaml:4:30: warning: site.latitude: this place lies some 8100 km from United States\n"
          "  hint: check 'region', 'latitude' and 'longitude'; south and west are negative\n");
  CHECK(saidOf({nz, newZealand, -45.0, 169.0, "Etc/UTC"}) ==
        "job.yaml:4:67: warning: site.timezone: 'Etc/UTC' is not the time of New Zealand\n"
        "  hint: the nearest to the site is Pacific/Auckland\n");
}

TEST_CASE("a wrong sign and exchanged coordinates are seen") {
  CHECK(saidOf({nz, newZealand, 44.7, 169.13, "Pacific/Auckland"}) ==
        "job.yaml:4:30: warning: site.latitude: this place lies some 9100 km from New Zealand\n"
        "  hint: did you mean latitude: -44.7, longitude: 169.13?\n");
  CHECK(saidOf({us, unitedStates, 41.1, 73.4, "America/New_York"}) ==
        "job.yaml:4:30: warning: site.latitude: this place lies some 7200 km from United States\n"
        "  hint: did you mean latitude: 41.1, longitude: -73.4?\n");
  CHECK(saidOf({us, unitedStates, -73.4, 41.1, "America/New_York"}) ==
        "job.yaml:4:30: warning: site.latitude: this place lies some 14100 km from United States\n"
        "  hint: did you mean latitude: 41.1, longitude: -73.4?\n");
}

TEST_CASE("a zone of the other coast is seen") {
  CHECK(saidOf({us, unitedStates, 34.1, -118.2, "America/New_York"}) ==
        "job.yaml:4:67: warning: site.timezone: the site lies far from where 'America/New_York' holds\n"
        "  hint: the nearest is America/Los_Angeles\n");
}

TEST_CASE("an unknown time zone is refused with the one that is meant") {
  const auto said = [](const Site& site) {
    return saidOf(site).substr(std::string("job.yaml:4:67: ").size());
  };
  CHECK(said({us, unitedStates, 0, 0, "EST"}) ==
        "error: site.timezone: 'EST' is not a known time zone\n"
        "  hint: EST in United States: America/New_York, America/Detroit\n");
  CHECK(said({nz, newZealand, 0, 0, "NZDT"}) ==
        "error: site.timezone: 'NZDT' is not a known time zone\n  hint: NZDT in New Zealand: "
        "Pacific/Auckland\n");
  CHECK(said({us, unitedStates, 41.1, -73.4, "Eastern"}) ==
        "error: site.timezone: 'Eastern' is not a known time zone\n"
        "  hint: the nearest to the site is America/New_York\n");
  CHECK(said({nz, newZealand, 0, 0, "Pacific/Aukland"}) ==
        "error: site.timezone: 'Pacific/Aukland' is not a known time zone; did you mean 'Pacific/Auckland'?\n"
        "  hint: in New Zealand: Pacific/Auckland, Pacific/Chatham\n");
  CHECK(said({us, unitedStates, 0, 0, "NZST"}) ==
        "error: site.timezone: 'NZST' is not a known time zone\n  hint: " + zoneOfUs);
  CHECK(said({"en", "Nowhere", 0, 0, "../../etc/passwd"}) ==
        "error: site.timezone: '../../etc/passwd' is not a known time zone\n"
        "  hint: write it as in the tz database, like Pacific/Auckland\n");
}
