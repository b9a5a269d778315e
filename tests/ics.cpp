// Calendar files against RFC 5545, and against libical, which reads them as calendar programs do.
#include "app/commands/commands.h"
#include "app/pack/job_calendar.h"
#include "firm_jobs.h"
#include "ics/calendar.h"
#include "random_cases.h"
#include "schedule/weather/zone.h"

#include <libical/ical.h>
#include <catch2/catch.hpp>
#include <memory>
#include <set>

namespace {

base::Date day(const char* iso) { return *base::parseDate(iso); }

std::vector<std::string> linesOf(const std::string& bytes) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < bytes.size();) {
    const auto end = bytes.find("\r\n", from);
    REQUIRE(end != std::string::npos);
    lines.push_back(bytes.substr(from, end - from));
    from = end + 2;
  }
  return lines;
}

std::vector<std::size_t> octets(const std::string& bytes) {
  std::vector<std::size_t> all;
  for (const auto& line : linesOf(bytes)) all.push_back(line.size());
  return all;
}

/// Section 3.1: take out each CR LF with the white space after it.
std::string unfolded(std::string bytes) {
  for (auto at = bytes.find("\r\n "); at != std::string::npos; at = bytes.find("\r\n ", at))
    bytes.erase(at, 3);
  return bytes;
}

struct Read {
  std::string uid, summary, description, location, rule;
  icaltimetype start, end, stamp;
};

/// The events as libical understands them.
std::vector<Read> readBack(const std::string& bytes) {
  const std::unique_ptr<icalcomponent, void (*)(icalcomponent*)> root(icalparser_parse_string(bytes.c_str()),
                                                                      icalcomponent_free);
  REQUIRE(root);
  CHECK(icalcomponent_count_errors(root.get()) == 0);
  CHECK(icalrestriction_check(root.get()) == 1);
  std::vector<Read> all;
  for (auto* c = icalcomponent_get_first_component(root.get(), ICAL_VEVENT_COMPONENT); c != nullptr;
       c = icalcomponent_get_next_component(root.get(), ICAL_VEVENT_COMPONENT)) {
    const auto text = [](const char* s) { return std::string(s == nullptr ? "" : s); };
    Read r{text(icalcomponent_get_uid(c)),
           text(icalcomponent_get_summary(c)),
           text(icalcomponent_get_description(c)),
           text(icalcomponent_get_location(c)),
           {},
           icalcomponent_get_dtstart(c),
           icalcomponent_get_dtend(c),
           icalcomponent_get_dtstamp(c)};
    if (auto* p = icalcomponent_get_first_property(c, ICAL_RRULE_PROPERTY)) {
      auto rule = icalproperty_get_rrule(p);
      char* words = icalrecurrencetype_as_string_r(&rule);
      r.rule = words;
      icalmemory_free_buffer(words);
    }
    all.push_back(r);
  }
  return all;
}

/// The first dates a rule gives.
std::vector<std::string> dates(const std::string& rule, const char* start, int count) {
  auto* iterator =
      icalrecur_iterator_new(icalrecurrencetype_from_string(rule.c_str()), icaltime_from_string(start));
  REQUIRE(iterator != nullptr);
  std::vector<std::string> all;
  for (auto t = icalrecur_iterator_next(iterator); !icaltime_is_null_time(t) && count-- > 0;
       t = icalrecur_iterator_next(iterator)) {
    char text[16];
    std::snprintf(text, sizeof text, "%04d-%02d-%02d", t.year % 10000, t.month % 100, t.day % 100);
    all.emplace_back(text);
  }
  icalrecur_iterator_free(iterator);
  return all;
}

std::chrono::sys_seconds moment(icaltimetype t) {
  CHECK(icaltime_is_utc(t) == 1);
  return std::chrono::sys_seconds{std::chrono::seconds{icaltime_as_timet_with_zone(t, nullptr)}};
}

}  // namespace

TEST_CASE("calendar lines are folded at 75 octets and never inside a letter") {
  const std::string x(67, 'x');
  // RFC 5545 (2009), section 3.1; the octets are counted by hand: 8 for 'SUMMARY:', 75 to a line.
  CHECK(octets(ics::folded("SUMMARY:" + x)) == std::vector<std::size_t>{75});
  CHECK(ics::folded("SUMMARY:" + x + "x") == "SUMMARY:" + x + "\r\n x\r\n");
  const auto split = ics::folded("SUMMARY:" + x.substr(1) + "\xC3\xA9 tail");  // e acute, two octets
  CHECK(octets(split) == std::vector<std::size_t>{74, 8});
  CHECK(linesOf(split)[0] == "SUMMARY:" + x.substr(1));
  const auto dash = ics::folded("SUMMARY:" + x.substr(2) +
                                "\xE2\x80\x94"
                                "dash");  // em dash, three octets
  CHECK(octets(dash) == std::vector<std::size_t>{73, 8});
  CHECK(linesOf(dash)[0] == "SUMMARY:" + x.substr(2));
  CHECK(octets(ics::folded(std::string(75 + 74 + 1, 'y'))) == std::vector<std::size_t>{75, 75, 2});
  // Octets that begin no letter, as in a file that was damaged: cut all the same.
  CHECK(octets(ics::folded(std::string(75 + 74 + 1, '\x80'))) == std::vector<std::size_t>{75, 75, 2});
}

TEST_CASE("folded lines unfold as the standard's example does") {
  // RFC 5545 (2009), section 3.1, the example.
  CHECK(unfolded("DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.") ==
        "DESCRIPTION:This is a long description that exists on a long line.");
}

TEST_CASE("text in calendars is escaped, but never a colon") {
  // RFC 5545 (2009), section 3.3.11; the second is its example.
  CHECK(ics::escaped("Deck 24 m2; stairs, rail\\post\nsecond line: keep colon") ==
        "Deck 24 m2\\; stairs\\, rail\\\\post\\nsecond line: keep colon");
  CHECK(ics::escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
        "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
}

TEST_CASE("any text comes through a calendar file unharmed") {
  holdsAlways(
      200,
      [] {
        const auto pieces = *rc::gen::container<std::vector<std::string>>(
            rc::gen::element<std::string>("a", "B7", " ", ",", ";", ":", "\\", "\n", "\"", "\\n", "\xC3\xA9",
                                          "\xE2\x80\x94", "\xF0\x9F\xAA\xB5", "a rather long word indeed "));
        std::string text = "x";  // white space alone is nobody's summary
        for (const auto& piece : pieces) text += piece;
        text += "x";
        const ics::Event e{
            "x@y.invalid", ics::Days{day("2027-03-16"), day("2027-03-17")}, text, text, text, {}, false};
        const auto bytes = ics::write({e}, day("2027-03-02"));
        RC_CLASSIFY(bytes.find("\r\n ") != std::string::npos, "folded");
        RC_CLASSIFY(text.find('\n') != std::string::npos, "line ends");
        for (const auto n : octets(bytes)) RC_ASSERT(n <= 75U);
        const auto read = readBack(bytes);
        RC_ASSERT(read.size() == 1U);
        RC_ASSERT(read[0].summary == text);
        RC_ASSERT(read[0].description == text);
        RC_ASSERT(read[0].location == text);
      },
      {"folded", "line ends"});
}

TEST_CASE("libical finds the times, whole days and rules that were written") {
  const auto start = schedule::localToUtc("Pacific/Auckland", {day("2027-04-04"), 8 * 60});
  const std::vector<ics::Event> events = {
      {"a@y.invalid", ics::Span{start, start + std::chrono::minutes{95}}, "Sand", "", "", {}, true},
      {"b@y.invalid", ics::Days{day("2028-03-19"), day("2028-03-19")}, "Visit", "", "", ics::Every{12},
       false}};
  const auto read = readBack(ics::write(events, day("2027-03-02")));
  REQUIRE(read.size() == 2);
  CHECK(read[0].uid == "a@y.invalid");
  CHECK(moment(read[0].start) == start);
  CHECK(moment(read[0].end) == start + std::chrono::minutes{95});
  CHECK(moment(read[0].stamp) == std::chrono::sys_seconds{day("2027-03-02")});
  CHECK(read[1].start.is_date == 1);
  CHECK(icaltime_compare(read[1].start, icaltime_from_string("20280319")) == 0);
  CHECK(icaltime_compare(read[1].end, icaltime_from_string("20280320")) == 0);  // section 3.6.1: not included
  CHECK(read[1].rule == "FREQ=YEARLY");
}

TEST_CASE("visits come back on the day, or on the last day of a month that lacks it") {
  const auto ruleFrom = [](const char* iso, int months) {
    const ics::Event e{"v@y.invalid", ics::Days{day(iso), day(iso)}, "Visit", "", "", ics::Every{months},
                       false};
    return readBack(ics::write({e}, day("2027-03-02"))).at(0).rule;
  };
  using Dates = std::vector<std::string>;
  CHECK(dates(ruleFrom("2028-03-31", 12), "20280331", 3) == Dates{"2028-03-31", "2029-03-31", "2030-03-31"});
  CHECK(dates(ruleFrom("2028-03-19", 24), "20280319", 3) == Dates{"2028-03-19", "2030-03-19", "2032-03-19"});
  CHECK(dates(ruleFrom("2028-03-19", 18), "20280319", 3) == Dates{"2028-03-19", "2029-09-19", "2031-03-19"});
  CHECK(dates(ruleFrom("2028-02-29", 12), "20280229", 4) ==
        Dates{"2028-02-29", "2029-02-28", "2030-02-28", "2031-02-28"});
  CHECK(dates(ruleFrom("2028-03-31", 6), "20280331", 3) == Dates{"2028-03-31", "2028-09-30", "2029-03-31"});
}

TEST_CASE("libical repeats as the standard's examples do, so that it can judge ours") {
  using Dates = std::vector<std::string>;
  // RFC 5545 (2009), section 3.8.5.3.
  CHECK(dates("FREQ=YEARLY;COUNT=10;BYMONTH=6,7", "19970610T090000", 99) ==
        Dates{"1997-06-10", "1997-07-10", "1998-06-10", "1998-07-10", "1999-06-10", "1999-07-10",
              "2000-06-10", "2000-07-10", "2001-06-10", "2001-07-10"});
  CHECK(dates("FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3", "19970310T090000", 99) ==
        Dates{"1997-03-10", "1999-01-10", "1999-02-10", "1999-03-10", "2001-01-10", "2001-02-10",
              "2001-03-10", "2003-01-10", "2003-02-10", "2003-03-10"});
  CHECK(dates("FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", "20070115T090000", 99) ==
        Dates{"2007-01-15", "2007-01-30", "2007-02-15", "2007-03-15", "2007-03-30"});
  // Of the same rule: a bare yearly rule on 29 February comes in leap years only.
  CHECK(dates("FREQ=YEARLY;COUNT=3", "20240229", 99) == Dates{"2024-02-29", "2028-02-29", "2032-02-29"});
}

TEST_CASE("an example's calendar holds its crew days, furniture, first wash and yearly visit") {
  const app::Choices choices;
  base::Diagnostics messages;
  const auto x = firm_jobs::compute(SOURCE_DIR "/out_examples/landing/job.yaml", choices, messages);
  REQUIRE(x);
  const std::string bytes = app::jobCalendar(*x, "");
  const auto read = readBack(bytes);
  REQUIRE(read.size() == x->plan.days.size() + 3);
  std::set<std::string> uids;
  for (const auto& r : read) uids.insert(r.uid);
  CHECK(uids.size() == read.size());
  const auto& zone = x->c.job.site.timezone;
  for (std::size_t i = 0; i < x->plan.days.size(); ++i) {
    CHECK(read[i].uid == x->c.job.ref + "-crew-" + std::to_string(i + 1) + "@planksheaf.invalid");
    CHECK(moment(read[i].start) == schedule::localToUtc(zone, x->plan.days[i].arrive));
    for (const auto& s : x->plan.shifts) {
      if (s.start.day == x->plan.days[i].date)
        CHECK(schedule::localToUtc(zone, s.end) <= moment(read[i].end));
    }
  }
  for (std::size_t i = 0; i < x->plan.days.size(); ++i)
    CHECK(moment(read[i].end) == schedule::localToUtc(zone, x->plan.days[i].home));
  for (const auto& e : x->plan.events) {
    const auto found = [&](const std::string& what) {
      for (const auto& r : read) {
        if (r.uid.find("-" + what + "@") != std::string::npos) return r;
      }
      FAIL("no event " + what);
      return Read{};
    };
    if (e.name == "furniture") CHECK(moment(found("furniture").start) == schedule::localToUtc(zone, e.at));
    if (e.name == "first_wash")
      CHECK(icaltime_as_timet(found("first-wash").start) ==
            std::chrono::sys_seconds{e.at.day}.time_since_epoch().count());
    if (e.name == "maintenance") CHECK(found("maintenance").rule == "FREQ=YEARLY");
  }
  // Of the firm's own people, but in many hands: neither money nor the office's notes.
  CHECK(bytes.find("soft") == std::string::npos);
  CHECK(bytes.find("$") == std::string::npos);
}
