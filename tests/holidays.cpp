// Public holidays of the regions against dates seen elsewhere. Seen in: G = the United Kingdom government's
// list of bank holidays 2019 to 2028, as of August 2026; V = the Python library holidays, commit c382fde of
// 23 July 2026; C = the JavaScript library date-holidays, commit 9e1b5ad of 14 August 2026.
#include "app/pack/compute.h"
#include "input/read.h"
#include "model/lookup.h"
#include "safety_jobs.h"

#include <catch2/catch.hpp>

namespace {

const model::Content& content() {
  static const model::Content all = [] {
    base::Diagnostics messages;
    auto read = input::readContent(SOURCE_DIR "/content", messages);
    REQUIRE(messages.ok());
    return read;
  }();
  return all;
}

base::Date day(const char* iso) { return base::parseDate(iso).value(); }

/// Names of what a day is there, ' + ' between them; empty on other days.
std::string holidayAt(const std::string& region, const std::string& state, base::Date date) {
  std::string names;
  const model::Region& r = content().regions.at(region);
  const int year = int{std::chrono::year_month_day{date}.year()};
  for (const auto& h : base::holidaysOf({r.holidays, r.states}, state, year)) {
    if (h.date == date) names += (names.empty() ? "" : " + ") + h.rule->name;
  }
  return names;
}

struct Check {
  const char *date, *region, *state, *name;
};

}  // namespace

TEST_CASE("a holiday of each region falls on the dates that others publish", "[holidays]") {
  const Check checks[] = {
      {"2024-01-29", "nz", "AUK", "Auckland Anniversary"},          // V C
      {"2024-06-28", "nz", "", "Matariki"},                         // V C
      {"2025-04-22", "nz", "STL", "Southland Anniversary"},         // V C
      {"2025-11-14", "nz", "CAN", "Canterbury Show Day"},           // V C
      {"2026-04-27", "nz", "", "Anzac Day"},                        // V C; from Saturday
      {"2026-07-10", "nz", "", "Matariki"},                         // V C
      {"2026-12-28", "nz", "", "Boxing Day"},                       // V C; from Saturday
      {"2027-01-04", "nz", "", "Day after New Year's Day"},         // V C; from Saturday
      {"2027-01-25", "nz", "WGN", "Wellington Anniversary"},        // V C
      {"2027-02-01", "nz", "AUK", "Auckland Anniversary"},          // V C
      {"2027-02-08", "nz", "", "Waitangi Day"},                     // V C; from Saturday
      {"2027-04-26", "nz", "", "Anzac Day"},                        // V C; from Sunday
      {"2027-12-27", "nz", "", "Christmas Day"},                    // V C; from Saturday
      {"2027-12-28", "nz", "", "Boxing Day"},                       // V C; from Sunday
      {"2028-01-03", "nz", "", "New Year's Day"},                   // V C; from Saturday
      {"2028-01-04", "nz", "", "Day after New Year's Day"},         // V C; from Sunday
      {"2028-02-07", "nz", "", "Waitangi Day"},                     // V C; from Sunday
      {"2030-06-21", "nz", "", "Matariki"},                         // V
      {"2031-07-11", "nz", "", "Matariki"},                         // V
      {"2025-01-27", "au", "NSW", "Australia Day"},                 // V C; from Sunday
      {"2024-09-23", "au", "WA", "King's Birthday"},                // V C; proclaimed, not the last Monday
      {"2026-04-27", "au", "NSW", "additional day for Anzac Day"},  // V C
      {"2027-04-26", "au", "NSW", "additional day for Anzac Day"},  // V C
      {"2026-04-27", "au", "WA", "Anzac Day"},                      // V C
      {"2026-04-27", "au", "ACT", "additional day for Anzac Day"},  // V C
      {"2027-04-26", "au", "QLD", "Anzac Day"},                     // V C; from Sunday
      {"2026-09-25", "au", "VIC", "Grand Final Friday"},            // V C
      {"2026-11-03", "au", "VIC", "Melbourne Cup Day"},             // V C
      {"2026-05-04", "au", "QLD", "Labour Day"},                    // V C
      {"2026-10-05", "au", "QLD", "King's Birthday"},               // V C
      {"2026-08-12", "au", "QLD-BNE", "Royal Queensland Show"},     // V; in Brisbane
      {"2026-03-02", "au", "WA", "Labour Day"},                     // V C
      {"2026-06-01", "au", "WA", "Western Australia Day"},          // V C
      {"2026-09-28", "au", "WA", "King's Birthday"},                // V C
      {"2027-03-08", "au", "SA", "Adelaide Cup"},                   // V C
      {"2026-12-28", "au", "SA", "Boxing Day"},                     // V C; from Saturday
      {"2026-03-09", "au", "TAS", "Eight Hours Day"},               // V C
      {"2027-12-28", "au", "TAS", "Boxing Day"},                    // V C; from Sunday
      {"2027-05-31", "au", "ACT", "Reconciliation Day"},            // V C
      {"2026-08-03", "au", "NT", "Picnic Day"},                     // V C
      {"2028-01-03", "au", "NSW", "New Year's Day"},                // V C; from Saturday
      {"2026-08-31", "gb", "ENG", "Summer bank holiday"},           // G V
      {"2026-08-31", "gb", "WLS", "Summer bank holiday"},           // G V
      {"2026-12-28", "gb", "ENG", "Boxing Day"},                    // G V; substitute
      {"2027-12-27", "gb", "ENG", "Christmas Day"},                 // G V; substitute
      {"2027-12-28", "gb", "ENG", "Boxing Day"},                    // G V; substitute
      {"2028-01-03", "gb", "ENG", "New Year's Day"},                // G V; substitute
      {"2024-12-02", "gb", "SCT", "St Andrew's Day"},               // G V; substitute
      {"2026-06-15", "gb", "SCT", "World Cup bank holiday"},        // G V; proclaimed once
      {"2026-08-03", "gb", "SCT", "Summer bank holiday"},           // G V
      {"2027-01-04", "gb", "SCT", "2 January"},                     // G V; substitute
      {"2028-01-03", "gb", "SCT", "New Year's Day"},                // G V; substitute
      {"2028-01-04", "gb", "SCT", "2 January"},                     // G V; substitute
      {"2024-03-18", "gb", "NIR", "St Patrick's Day"},              // G V; substitute
      {"2025-07-14", "gb", "NIR", "Battle of the Boyne"},           // G V; substitute
      {"2024-02-05", "ie", "", "St Brigid's Day"},                  // V C; first Monday
      {"2027-02-01", "ie", "", "St Brigid's Day"},                  // V C; 1 February is the Monday
      {"2030-02-01", "ie", "", "St Brigid's Day"},                  // V; 1 February is a Friday
      {"2026-10-26", "ie", "", "October holiday"},                  // V C
      {"2028-10-30", "ie", "", "October holiday"},                  // V C
      {"2024-11-28", "us", "", "Thanksgiving"},                     // V C
      {"2026-07-03", "us", "", "Independence Day"},                 // V C; from Saturday
      {"2027-06-18", "us", "", "Juneteenth"},                       // V C; from Saturday
      {"2027-07-05", "us", "", "Independence Day"},                 // V C; from Sunday
      {"2027-12-24", "us", "", "Christmas Day"},                    // V C; from Saturday
      {"2027-12-31", "us", "", "New Year's Day"},                   // V C; of 2028, from Saturday
      {"2028-11-10", "us", "", "Veterans Day"},                     // V; from Saturday
      {"2029-11-12", "us", "", "Veterans Day"},                     // V; from Sunday
      {"2026-04-27", "au", "VIC", ""},                              // V C, as all below
      {"2026-04-27", "au", "TAS", ""},
      {"2026-04-27", "au", "SA", ""},
      {"2026-04-27", "au", "NT", ""},
      {"2026-04-27", "au", "QLD", ""},
      {"2027-04-26", "au", "VIC", ""},
      {"2027-04-26", "au", "SA", ""},
      {"2027-04-26", "au", "TAS", ""},
      {"2026-04-06", "gb", "SCT", ""},  // V G; no Easter Monday
      {"2027-12-27", "ie", "", ""},
      {"2026-04-03", "ie", "", ""},  // Good Friday
      {"2026-04-04", "au", "TAS", ""},
  };
  for (const Check& c : checks) {
    INFO(c.region << " " << c.state << " " << c.date);
    CHECK(holidayAt(c.region, c.state, day(c.date)) == c.name);
  }
}

TEST_CASE("Easter falls on the Sundays of the published tables", "[holidays]") {
  // 2024 to 2031 as in V above; the earliest and latest Easter since 1800 and the two exceptions of the Gauss
  // rule are from memory.
  for (const char* sunday :
       {"2024-03-31", "2025-04-20", "2026-04-05", "2027-03-28", "2028-04-16", "2029-04-01", "2030-04-21",
        "2031-04-13", "1818-03-22", "1943-04-25", "1954-04-18", "1981-04-19"}) {
    const base::Date date = day(sunday);
    CHECK(base::isoDate(base::easterSunday(int{std::chrono::year_month_day{date}.year()})) == sunday);
  }
}

TEST_CASE("an anniversary that falls on Easter Monday is kept on the Tuesday", "[holidays]") {
  // 23 March 2035 is a Friday, the Monday nearest it 26 March, and Easter Sunday is 25 March.
  CHECK(holidayAt("nz", "OTA", day("2035-03-26")) == "Easter Monday");
  CHECK(holidayAt("nz", "OTA", day("2035-03-27")) == "Otago Anniversary");
  CHECK(holidayAt("nz", "OTA", day("2027-03-22")) == "Otago Anniversary");
}

TEST_CASE("a holiday that is added leaves its weekend day one, a holiday that moves does not", "[holidays]") {
  CHECK(holidayAt("nz", "", day("2026-04-25")) == "Anzac Day");  // Saturday
  CHECK(holidayAt("gb", "ENG", day("2026-12-26")) == "");        // Saturday
  CHECK(holidayAt("gb", "ENG", day("2027-12-25")) == "Christmas Day");
  CHECK(holidayAt("us", "", day("2026-07-04")) == "Independence Day");
  CHECK(holidayAt("ie", "", day("2027-12-26")) == "St Stephen's Day");
  CHECK(holidayAt("au", "TAS", day("2028-01-01")) == "");
}

TEST_CASE("without a state only what all states keep is a holiday", "[holidays]") {
  CHECK(holidayAt("gb", "", day("2027-08-30")) == "");
  CHECK(holidayAt("gb", "", day("2027-12-27")) == "Christmas Day");
  CHECK(holidayAt("gb", "", day("2027-01-01")) == "New Year's Day");  // by two rules
  CHECK(holidayAt("au", "", day("2027-01-26")) == "Australia Day");
  CHECK(holidayAt("au", "", day("2027-06-14")) == "");  // not in QLD and WA
}

TEST_CASE("a town in a state keeps the state's holidays and its own", "[holidays]") {
  CHECK(holidayAt("au", "QLD-BNE", day("2026-05-04")) == "Labour Day");
  CHECK(holidayAt("au", "QLD", day("2026-08-12")) == "");
}

namespace {

struct Made {
  std::optional<model::JobResult> x;
  std::string said;
};

/// The plain job with some of its text replaced.
Made made(std::vector<std::pair<std::string, std::string>> edits) {
  std::string job = safety_jobs::plainJob;
  for (const auto& [from, to] : edits) job = safety_jobs::replaced(job, from, to);
  base::Diagnostics messages;
  Made m;
  if (auto x = firm_jobs::compute({"job.yaml", job}, {}, messages)) m.x.emplace(std::move(*x));
  for (const auto& d : messages.all()) m.said += base::format(d);
  return m;
}

bool worksOn(const Made& m, const char* date) {
  const auto& days = m.x.value().plan.days;
  return std::any_of(days.begin(), days.end(), [&](const auto& d) { return d.date == day(date); });
}

const std::pair<std::string, std::string> inWinter = {"quoted: 2027-03-02", "quoted: 2026-12-14"},
                                          onChristmas = {"start: 2027-03-16", "start: 2026-12-25"},
                                          inOtago = {"{region: nz,", "{region: nz, state: OTA,"};

}  // namespace

TEST_CASE("a crew works neither on 25 December nor on days off, unless the job says so", "[holidays]") {
  // 25 December 2026 is a Friday; Boxing Day moves to Monday the 28th.
  const Made home = made({inWinter, onChristmas, inOtago});
  CHECK(home.said ==
        "job.yaml:7:8: warning: start: 2026-12-25 is a public holiday, Christmas Day\n"
        "  hint: the crew starts on 2026-12-29; with 'works_on_holidays: true' under 'crew' it works that "
        "day\n");
  CHECK(base::isoDate(home.x->plan.days.front().date) == "2026-12-29");
  CHECK(worksOn(made({inWinter, onChristmas, inOtago, {"people: 2", "people: 2, works_on_holidays: true"}}),
                "2026-12-25"));
  const Made some =
      made({inWinter, onChristmas, inOtago, {"people: 2", "people: 2, works_on_holidays: [Boxing Day]"}});
  CHECK(base::isoDate(some.x->plan.days.front().date) == "2026-12-28");
  const Made off =
      made({inWinter, onChristmas, inOtago, {"people: 2", "people: 2, off: [2026-12-27 to 2026-12-31]"}});
  CHECK(base::isoDate(off.x->plan.days.front().date) ==
        "2027-01-05");  // 1 January, 2 January on Monday the 4th
}

TEST_CASE("a holiday to be worked on that the region does not know is refused", "[holidays]") {
  CHECK(made({{"people: 2", "people: 2, works_on_holidays: [Labor Day]"}})
            .said.starts_with(
                "job.yaml:18:39: error: crew.works_on_holidays[1]: 'Labor Day' is not a known public "
                "holiday; did you mean 'Labour Day'?\n"
                "  hint: known: Anzac Day, Auckland Anniversary, "));
}

TEST_CASE("a day on site that is a holiday in some states asks for the state", "[holidays]") {
  const std::pair<std::string, std::string> start = {"start: 2027-03-16", "start: 2027-03-22"};
  const Made unknown = made({start});
  CHECK(worksOn(unknown, "2027-03-22"));
  CHECK(unknown.said ==
        "job.yaml:4:7: warning: site: days on site are public holidays in some states: 2027-03-22 in "
        "Otago\n"
        "  hint: add the state to 'site:', like 'state: OTA'\n");
  CHECK(made({start, {"{region: nz,", "{region: nz, state: WGN,"}}).said.empty());
  CHECK_FALSE(worksOn(made({start, inOtago}), "2027-03-22"));
}

TEST_CASE("holidays that are not known for the year are named", "[holidays]") {
  CHECK(
      made(
          {{"quoted: 2027-03-02", "quoted: 2053-02-03"}, {"start: 2027-03-16", "start: 2053-02-11"}, inOtago})
          .said ==
      "job.yaml:7:8: warning: start: holidays of 2053 that are not known for certain: Matariki\n"
      "  hint: name the days under 'off:' in 'crew'; Te Kāhui o Matariki Public Holiday Act 2022 (NZ), "
      "schedule\n");
}

TEST_CASE("a site far from the place of the usual weather is warned", "[weather]") {
  const std::pair<std::string, std::string> far = {"latitude: -45.0, longitude: 168.7",
                                                   "latitude: -36.9, longitude: 174.8"};
  // Great circle from 45.0 S 169.0 E to 36.9 S 174.8 E: 8.1 degrees north and 5.8 east, 1,020 km.
  CHECK(made({far, {"{region: nz,", "{region: nz, state: AUK,"}}).said ==
        "job.yaml:4:70: warning: site.latitude: the usual weather of New Zealand is that of a place some "
        "1000 km "
        "from here, so days and waits may be wrong\n"
        "  hint: give the months of this place as 'normals' under 'weather:', or a forecast of all days on "
        "site\n");
}
