// What can be wrong in the records of a job.
#include "input_fixture.h"

#include <catch2/catch.hpp>

using fixture::BadJob;

namespace {

/// The good job's 'price:' line with records before it, which begin in line 21.
BadJob bad(const char* name, const std::string& records, const std::string& expected) {
  return {name, {{"price: {", records + "price: {"}}, expected};
}

}  // namespace

TEST_CASE("records that cannot be right are refused with the whole message") {
  const BadJob jobs[] = {
      bad("an unknown area", "done:\n  - {area: Landign, coat: 1, from: 2027-03-18 08:10, to: 11:30}\n",
          "job.yaml:22:12: error: done[1].area: 'Landign' is not a known area; did you mean 'Landing'?\n"
          "  hint: known: Landing\n"),
      bad("a coat beyond the coats", "done: [{area: Landing, coat: 3, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:21:30: error: done[1].coat: 'Landing' has only 2 coats\n"
          "  hint: set 'coats' of the area to what was laid\n"),
      bad("a coat that no area has", "done: [{coat: 4, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:21:15: error: done[1].coat: no area has 4 coats\n"
          "  hint: set 'coats' of the area to what was laid\n"),
      bad("an end before its start", "done: [{coat: 1, from: 2027-03-18 08:10, to: 07:30}]\n",
          "job.yaml:21:46: error: done[1].to: '07:30' is not after '2027-03-18 08:10'\n"
          "  hint: a coat ends later than it begins\n"),
      bad("a wrong month", "done: [{coat: 1, from: 2027-03-18 08:10, to: 2027-04-18 11:30}]\n",
          "job.yaml:21:46: error: done[1].to: one coat takes longer than 14 days\n"
          "  hint: check both dates\n"),
      bad("a start without its day", "done: [{coat: 1, from: 08:10, to: 11:30}]\n",
          "job.yaml:21:24: error: done[1].from: '08:10' is not a day and a time\n"
          "  hint: write it like 2027-03-16 08:10\n"
          "job.yaml:21:35: error: done[1].to: '11:30' is not a day and a time\n"
          "  hint: write it like 2027-03-16 08:10\n"),
      bad("a day that does not exist", "done: [{coat: 1, from: 2027-02-30 08:10, to: 2027-03-18 24:30}]\n",
          "job.yaml:21:24: error: done[1].from: '2027-02-30 08:10' is not a day and a time\n"
          "  hint: write it like 2027-03-16 08:10\n"
          "job.yaml:21:46: error: done[1].to: '2027-03-18 24:30' is not a day and a time\n"
          "  hint: write it like 2027-03-16 08:10\n"),
      bad("one coat recorded twice",
          "done:\n"
          "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}\n"
          "  - {area: Landing, coat: 1, from: 2027-03-18 11:00, to: 14:30}\n",
          "job.yaml:23:5: error: done[2]: coat 1 of 'Landing' is recorded twice for the same time\n"
          "  hint: the other part stands in line 22\n"),
      bad("parts of a coat weeks apart",
          "done:\n"
          "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}\n"
          "  - {coat: 1, from: 2027-03-25 08:10, to: 11:30}\n"
          "  - {coat: 1, from: 2027-04-02 08:10, to: 11:30}\n",
          "job.yaml:24:5: error: done[3]: coat 1 of 'Landing' takes longer than 14 days\n"
          "  hint: the other part stands in line 23; check both dates\n"),
      bad("a second coat without a first, which may not be written down yet",
          "done: [{coat: 2, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:21:8: warning: done[1]: coat 2 of 'Landing' is recorded, but coat 1 is not\n"
          "  hint: record that one too, or mend the number\n"),
      bad("a second coat on a first that is being laid",
          "done:\n"
          "  - {coat: 2, from: 2027-03-18 11:00, to: 14:00}\n"
          "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}\n",
          "job.yaml:22:5: error: done[1]: coat 2 of 'Landing' begins before coat 1 ended\n"
          "  hint: that stands in line 23\n"),
      bad("a second coat long after the product takes one",
          "done:\n"
          "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}\n"
          "  - {coat: 2, from: 2027-04-29 11:30, to: 14:00}\n",
          "job.yaml:23:5: warning: done[2]: coat 2 of 'Landing' begins 1008 h after coat 1 ended, but "
          "'tern-oil' "
          "takes it within 72 h\n"
          "  hint: check the times; if they are right, look whether the coat holds; that stands in line "
          "22\n"),
      bad("a second coat a minute after the first, which may be a slip",
          "done:\n"
          "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}\n"
          "  - {coat: 2, from: 2027-03-18 11:31, to: 14:00}\n",
          "job.yaml:23:5: warning: done[2]: coat 2 of 'Landing' begins 1 min after coat 1 ended, but "
          "'tern-oil' "
          "has to wait 12 h\n"
          "  hint: check the times; that stands in line 22\n"),
      bad("a coat before the job's start, which may be meant",
          "done: [{coat: 1, from: 2027-03-15 08:10, to: 11:30}]\n",
          "job.yaml:21:24: warning: done[1].from: '2027-03-15 08:10' is before the job's start, 2027-03-16\n"
          "  hint: check both dates\n"),
      bad("measured values that cannot be, and a key of another place",
          "done: [{coat: 1, from: 2027-03-18 08:10, to: 11:30, used: 0 L, air: 160 C, humidity: 170 %, wind: "
          "3}]\n",
          "job.yaml:21:59: error: done[1].used: '0 L' is out of range\n"
          "  hint: allowed: from 1 mL to 10000 L\n"
          "job.yaml:21:69: error: done[1].air: '160 C' is out of range\n"
          "  hint: allowed: from -40 C to 90 C\n"
          "job.yaml:21:86: error: done[1].humidity: '170 %' is out of range\n"
          "  hint: allowed: from 1 % to 100 %\n"
          "job.yaml:21:93: error: done[1]: 'wind' is not a known key here\n"
          "  hint: known: area, coat, from, to, used, batches, air, surface, humidity, moisture or remark\n"),
      bad("no area named", "done: [{area: [], coat: 1, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:21:15: error: done[1].area: no area is named\n"
          "  hint: leave the key out where all areas are meant\n"),
      bad("a tin that holds more than its size", "left: [{size: 2.5 L, holds: 3 L}]\n",
          "job.yaml:21:29: error: left[1].holds: a tin holds more than its size\n"
          "  hint: 'size' is that of the full tin, 'holds' what is left in it\n"),
      {"records of coats nobody asked for",
       {{"work: [wash, fix, sand, oil]", "work: [wash, fix, sand]"},
        {"price: {", "done: [{coat: 1, from: 2027-03-18 08:10, to: 11:30}]\nprice: {"}},
       "job.yaml:21:7: error: done: coats are recorded but 'work' has no 'oil'\n"
       "  hint: add 'oil' to 'work' or leave 'done' out\n"},
      {"a job that follows itself",
       {{"ref: LA-2027-031", "ref: LA-2027-031\nafter: LA-2027-031"}},
       "job.yaml:2:8: error: after: 'LA-2027-031' is this job's own number\n"
       "  hint: name the job it follows, or leave 'after' out\n"},
      {"a number of a job that cannot be one",
       {{"ref: LA-2027-031", "ref: LA-2027-031\nafter: ../x"}},
       "job.yaml:2:8: error: after: '../x' cannot name a folder\n"
       "  hint: use letters, digits, . _ and -, at most 64, not . first or last\n"},
      {"a first job without the one before",
       {{"ref: LA-2027-031", "ref: LA-2027-031\nfirst_job: LA-2025-007"}},
       "job.yaml:2:12: error: first_job: belongs to a job that names the one before it under 'after'\n"
       "  hint: add a line like after: LA-2026-007, or leave it out\n"},
      {"a job that is its own first",
       {{"ref: LA-2027-031", "ref: LA-2027-031\nafter: LA-2026-007\nfirst_job: LA-2027-031"}},
       "job.yaml:3:12: error: first_job: 'LA-2027-031' is this job's own number\n"
       "  hint: name the first job of the deck\n"},
      {"a revision below zero",
       {{"ref: LA-2027-031", "ref: LA-2027-031\nrevision: -1"}},
       "job.yaml:2:11: error: revision: '-1' is out of range\n  hint: allowed: from 0 to 999\n"},
  };
  checkAll(jobs);
}

TEST_CASE("records are read per area or for all of them, in order of deck and coat") {
  std::string text = fixture::edited(
      fixture::goodJob, "work: [wash",
      "  - {name: Steps, shape: {area: 4 m2, perimeter: 8 m}, boards: {width: 138 mm, gap: 5 mm, thickness: "
      "38 "
      "mm}, joists: 450 mm, fixings: {kind: nails}, timber: kwila, state: sanded, coats: 1}\nwork: [wash");
  text =
      fixture::edited(text, "price: {",
                      "done:\n"
                      "  - {area: Landing, coat: 2, from: 2027-03-19T08:00, to: 2027-03-20T09:00}\n"
                      "  - {coat: 1, from: 2027-03-18 08:10, to: 11:30, used: 12.5 L, batches: [A-113, 114],"
                      " air: 61 F, surface: 19 C, humidity: 70 %, moisture: 14 %, remark: dry}\n"
                      "left: [{size: 2.5 L, count: 2}, {product: plover-wb, size: 20 L, holds: 6 L, "
                      "with_customer: true}]\n"
                      "after: LA-2026-007\n"
                      "first_job: LA-2024-007\n"
                      "revision: 2\n"
                      "spreading_rates: ../rates.yaml\n"
                      "price: {");
  base::Diagnostics messages;
  const auto job = input::readJob(text, "jobs/a/job.yaml", fixture::content(), messages);
  REQUIRE(messages.ok());
  REQUIRE(job.done.size() == 3);
  CHECK((job.done[0].deck == 0 && job.done[0].coat == 1 && job.done[0].entry == 1));
  CHECK((job.done[1].deck == 0 && job.done[1].coat == 2 && job.done[1].entry == 0));
  CHECK((job.done[2].deck == 1 && job.done[2].coat == 1 && job.done[2].entry == 1));
  CHECK(base::isoTime(job.done[0].start) == "2027-03-18T08:10");
  CHECK(base::isoTime(job.done[0].end) == "2027-03-18T11:30");
  CHECK(base::isoTime(job.done[1].end) == "2027-03-20T09:00");
  CHECK(job.done[0].used == base::millilitres(12'500));
  CHECK_FALSE(job.done[1].used);
  CHECK(job.done[0].batches == std::vector<std::string>{"A-113", "114"});
  CHECK(job.done[0].air->millionths == 16'111'111);  // (61 - 32) x 5 / 9
  CHECK(job.done[0].surface == base::Temperature::whole(19));
  CHECK(job.done[0].humidity == base::Share::whole(70));
  CHECK(job.done[0].moisture == base::Share::whole(14));
  CHECK(job.done[0].remark == "dry");
  REQUIRE(job.left.size() == 2);
  CHECK((job.left[0].product == "tern-oil" && job.left[0].count == 2 && !job.left[0].holds));
  CHECK((job.left[1].product == "plover-wb" && job.left[1].count == 1));
  CHECK(job.left[1].holds == base::litres(6));
  CHECK((job.left[1].isWithCustomer && !job.left[0].isWithCustomer));
  CHECK(job.after == "LA-2026-007");
  CHECK(job.firstJob == "LA-2024-007");
  CHECK(job.revision == 2);
  CHECK(job.ratesFile == "jobs/rates.yaml");
}

TEST_CASE("what became of a quote is in order of time, and no job is both declined and done") {
  const BadJob jobs[] = {
      bad("accepted before it was quoted", "accepted: 2027-03-01\n",
          "job.yaml:21:11: error: accepted: '2027-03-01' is before 2027-03-02, the date of the quote\n"
          "  hint: check both dates\n"),
      bad("declined before it was quoted", "declined: 2027-03-01\n",
          "job.yaml:21:11: error: declined: '2027-03-01' is before 2027-03-02, the date of the quote\n"
          "  hint: check both dates\n"),
      bad("declined, then accepted", "accepted: 2027-03-05\ndeclined: 2027-03-04\n",
          "job.yaml:22:11: error: declined: '2027-03-04' is before 2027-03-05, when the quote was accepted\n"
          "  hint: check both dates\n"),
      bad("laid before it was accepted",
          "accepted: 2027-03-19\ndone: [{coat: 1, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:22:7: error: done: '2027-03-18' is before 2027-03-19, when the quote was accepted\n"
          "  hint: check both dates\n"),
      bad("done before it was quoted", "done: 2027-03-01\n",
          "job.yaml:21:7: error: done: '2027-03-01' is before 2027-03-02, the date of the quote\n"
          "  hint: check both dates\n"),
      bad("declined and done", "declined: 2027-03-05\ndone: 2027-03-18\n",
          "job.yaml:21:11: error: declined: the customer declined, but 'done' says that the work was done\n"
          "  hint: take 'declined' or 'done' out\n"),
      bad("declined and laid", "declined: 2027-03-05\ndone: [{coat: 1, from: 2027-03-18 08:10, to: 11:30}]\n",
          "job.yaml:21:11: error: declined: the customer declined, but 'done' says that the work was done\n"
          "  hint: take 'declined' or 'done' out\n"),
      bad("a word for a date", "accepted: yes\ndone: all\n",
          "job.yaml:21:11: error: accepted: 'yes' is not a date\n"
          "  hint: write year, month and day like 2027-03-16\n"
          "job.yaml:22:7: error: done: 'all' is not a date\n"
          "  hint: write year, month and day like 2027-03-16\n"),
      bad("all in order", "accepted: 2027-03-02\ndone: 2027-03-18\n", ""),
      bad("called off", "accepted: 2027-03-05\ndeclined: 2027-03-12\n", "")};
  fixture::checkAll(jobs);
}
