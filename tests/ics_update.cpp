// Calendar files that come one after the other, imported in turn as calendar programs do, through libical.
#include "app/commands/commands.h"
#include "app/pack/job_calendar.h"
#include "firm_jobs.h"
#include "ics/update.h"
#include "input/read.h"

#include <libical/ical.h>
#include <catch2/catch.hpp>
#include <map>
#include <memory>

namespace {

using Component = std::unique_ptr<icalcomponent, void (*)(icalcomponent*)>;

/// What a calendar shows after importing files in turn: RFC 5546 (2009), section 2.1.5: the higher SEQUENCE
/// of a UID wins, then the later DTSTAMP; what is cancelled is taken out, but remembered.
class Imported {
 public:
  void import(const std::string& bytes) {
    const Component root(icalparser_parse_string(bytes.c_str()), icalcomponent_free);
    REQUIRE(root);
    CHECK(icalcomponent_count_errors(root.get()) == 0);
    CHECK(icalrestriction_check(root.get()) == 1);
    for (auto* c = icalcomponent_get_first_component(root.get(), ICAL_VEVENT_COMPONENT); c != nullptr;
         c = icalcomponent_get_next_component(root.get(), ICAL_VEVENT_COMPONENT)) {
      const std::string uid = icalcomponent_get_uid(c);
      const auto old = events_.find(uid);
      if (old != events_.end() && !isNewer(c, old->second.get())) continue;
      events_.insert_or_assign(uid, Component(icalcomponent_new_clone(c), icalcomponent_free));
    }
  }

  /// 'UID day' of each event shown.
  std::vector<std::string> shown() const {
    std::vector<std::string> all;
    for (const auto& [uid, c] : events_) {
      if (icalcomponent_get_status(c.get()) == ICAL_STATUS_CANCELLED) continue;
      const auto t = icalcomponent_get_dtstart(c.get());
      char day[16];
      std::snprintf(day, sizeof day, "%04d-%02d-%02d", t.year % 10000, t.month % 100, t.day % 100);
      all.push_back(uid.substr(0, uid.find('@')) + " " + day);
    }
    return all;
  }

  int sequence(const std::string& uid) const {
    return icalcomponent_get_sequence(events_.at(uid + "@planksheaf.invalid").get());
  }

 private:
  static bool isNewer(icalcomponent* a, icalcomponent* b) {
    const int more = icalcomponent_get_sequence(a) - icalcomponent_get_sequence(b);
    return more > 0 ||
           (more == 0 && icaltime_compare(icalcomponent_get_dtstamp(a), icalcomponent_get_dtstamp(b)) > 0);
  }

  std::map<std::string, Component> events_;
};

/// The calendar of an example's job after edits of its text.
std::string calendarOf(const std::string& example,
                       const std::vector<std::pair<std::string, std::string>>& edits = {},
                       const std::string& before = "", const std::string& email = "") {
  const std::string file = SOURCE_DIR "/out_examples/" + example + "/job.yaml";
  std::string text = input::readFile(file).value();
  for (const auto& [from, to] : edits) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
  }
  base::Diagnostics messages;
  auto x = firm_jobs::compute(app::JobText{file, text}, {}, messages);
  REQUIRE(x);
  if (!email.empty()) x->c.firm.email = email;
  return app::jobCalendar(*x, before);
}

std::size_t count(const std::vector<std::string>& all, const std::string& part) {
  std::size_t n = 0;
  for (const auto& one : all) n += one.find(part) != std::string::npos ? 1 : 0;
  return n;
}

const std::pair<std::string, std::string> lessWork{"work: [wash, fix, sand, oil]\nsanding: [40, 60, 80]",
                                                   "work: [wash, oil]"};

}  // namespace

TEST_CASE("a plan of fewer crew days leaves none of the old ones in the calendar") {
  Imported calendar;
  const auto first = calendarOf("landing");
  calendar.import(first);
  const auto days = count(calendar.shown(), "-crew-");
  const auto second = calendarOf("landing", {lessWork}, first);
  calendar.import(second);
  Imported fresh;
  fresh.import(calendarOf("landing", {lessWork}));
  CHECK(calendar.shown() == fresh.shown());
  CHECK(count(calendar.shown(), "-crew-") < days);
  // The days come back: they count on from the cancelled ones.
  const auto third = calendarOf("landing", {}, second);
  calendar.import(third);
  CHECK(count(calendar.shown(), "-crew-") == days);
  CHECK(calendar.sequence("LA-2027-031-crew-5") == 2);
  // Somebody who has missed the second file is told by the third all the same.
  Imported late;
  late.import(first);
  late.import(calendarOf("landing", {lessWork}, third));
  CHECK(late.shown() == fresh.shown());
}

TEST_CASE("the same job over its own calendar gives the same bytes, with cancelled days too") {
  const auto first = calendarOf("landing");
  CHECK(calendarOf("landing", {}, first) == first);
  const auto second = calendarOf("landing", {lessWork}, first);
  CHECK(second.find("STATUS:CANCELLED") != std::string::npos);
  CHECK(calendarOf("landing", {lessWork}, second) == second);
}

TEST_CASE("a job's revision is the sequence of its crew days, and a change without one counts too") {
  Imported calendar;
  const auto first = calendarOf("landing", {{"quoted:", "revision: 3\nquoted:"}});
  calendar.import(first);
  CHECK(calendar.sequence("LA-2027-031-crew-1") == 3);
  const auto later = calendarOf(
      "landing", {{"quoted:", "revision: 3\nquoted:"}, {"start: 2027-03-16", "start: 2027-03-17"}}, first);
  calendar.import(later);
  CHECK(calendar.sequence("LA-2027-031-crew-1") == 4);
  CHECK(calendar.shown().front() == "LA-2027-031-crew-1 2027-03-16");  // 17 March in New Zealand, by UTC
  calendar.import(calendarOf("landing", {{"quoted:", "revision: 9\nquoted:"}}, later));
  CHECK(calendar.sequence("LA-2027-031-crew-1") == 9);
}

TEST_CASE("next year's calendar goes on with the series of visits, whatever was revised before it") {
  Imported calendar;
  calendar.import(calendarOf("landing", {{"quoted:", "revision: 12\nquoted:"}}));
  CHECK(count(calendar.shown(), "-maintenance 2028-03-31") == 1);
  calendar.import(calendarOf("landing-again"));
  CHECK(count(calendar.shown(), "-maintenance") == 1);
  CHECK(count(calendar.shown(), "LA-2027-031-maintenance 2029-04-03") == 1);  // 2 April is Easter Monday
  calendar.import(calendarOf("landing-again", {{"ref: LA-2027-031-2\nafter: LA-2027-031",
                                                "ref: LA-2027-031-3\nafter: LA-2027-031-2\nfirst_job: "
                                                "LA-2027-031"},
                                               {"quoted: 2028-02-29", "quoted: 2029-02-28"},
                                               {"start: 2028", "start: 2029"}}));
  CHECK(count(calendar.shown(), "-maintenance") == 1);
  CHECK(count(calendar.shown(), "LA-2027-031-maintenance 2030") == 1);
}

TEST_CASE("a job that was declined gives its days back, and takes them again when it is accepted after all") {
  const std::pair<std::string, std::string> declined{"quoted: 2028-02-29",
                                                     "quoted: 2028-02-29\ndeclined: 2028-03-04"};
  Imported calendar;
  const auto quoted = calendarOf("landing-again");
  calendar.import(quoted);
  const auto before = calendar.shown();
  CHECK(count(before, "LA-2027-031-2-crew-") > 0);
  const auto lost = calendarOf("landing-again", {declined}, quoted);
  calendar.import(lost);
  CHECK(calendar.shown() ==
        std::vector<std::string>{"LA-2027-031-maintenance 2029-04-03"});  // the first job's
  CHECK(calendarOf("landing-again", {declined}, lost) == lost);
  CHECK(count({calendarOf("landing-again", {declined})}, "BEGIN:VEVENT") == 0);
  calendar.import(calendarOf("landing-again", {}, lost));
  CHECK(calendar.shown() == before);
}

TEST_CASE("a calendar's UIDs stay when the firm's e-mail changes") {
  Imported calendar;
  calendar.import(calendarOf("landing"));
  const auto before = calendar.shown();
  calendar.import(calendarOf("landing", {}, "", "hello@another.example"));
  CHECK(calendar.shown() == before);
}

TEST_CASE("an old calendar file that is none is passed over") {
  const ics::Event e{"A-crew-1@planksheaf.invalid",
                     ics::Days{*base::parseDate("2027-03-16"), *base::parseDate("2027-03-16")},
                     "Wash",
                     "",
                     "",
                     {},
                     true};
  const base::Date stamp = *base::parseDate("2027-03-02");
  const auto fresh = ics::write({e}, stamp);
  for (const char* before : {"", "\xFF\n \n", "END:VEVENT\r\nBEGIN:VEVENT\r\nUID:A-crew-2\r\n",
                             "BEGIN:VEVENT\nSEQUENCE:7\nEND:VEVENT\n",
                             "BEGIN:VEVENT\nUID:B-crew-1@planksheaf.invalid\nEND:VEVENT\n"})
    CHECK(ics::writeOver(before, "A-", {e}, stamp) == fresh);
}
