// A job's text edited into next year's: what changes changes, the rest stays as the person wrote it.
#include "input/next_year.h"
#include "input_fixture.h"

#include <catch2/catch.hpp>

namespace {

input::NextYear sample(std::size_t areas) {
  input::NextYear n;
  n.ref = "A-2";
  n.after = "A";
  n.quoted = *base::parseDate("2028-02-21");
  n.start = *base::parseDate("2028-03-20");
  n.areas.assign(areas, {"oiled", "11.28 m2/L", "as laid"});
  n.about = {"The year after."};
  return n;
}

}  // namespace

TEST_CASE("next year's job keeps comments, order and styles of the old one") {
  const std::string old = R"(# $schema=job.schema.json
# Gate code from Inga.
ref: A   # our number
title: Deck, sanded
quoted: '2027-03-02'
customer: {name: Inga}
start: 2027-03-16      # a Tuesday
brand: firm.yaml
batches:
- A 1
- A 2

# the decks
areas:
  - name: Landing
    state: sanded   # after us
    rates: [8 m2/L,
      12 m2/L]
    coats: 2
    note: We sand
      by hand.
    timber: kwila

  - {name: Steps, state: weathered, test_patch: {area: 1 m2, used: 120 mL}, coats: 2, note: "Worn, smooth"}
  - state: new
    name: Porch
work:
  - wash
  # the rest
  - oil
sanding: [40, 60]
crew: {people: 2}
price:
  margin: 30 %   # agreed
  stages:
    - {share: 40 %, when: sanded}
  options: [{text: Rail, price: 620.00}]

# ---- what was laid
# and when
done:
  - {coat: 1, from: 2027-03-18 08:10, to: 11:30}
  - {coat: 2, from: 2027-03-19 08:10,
     to: 11:30}
left: []
)";
  input::NextYear n = sample(3);
  n.areas[2].rate.clear();
  CHECK(input::nextYearsJob(old, n) == R"(# $schema=job.schema.json
# Gate code from Inga.
# The year after.
ref: A-2   # our number
after: A
quoted: 2028-02-21
customer: {name: Inga}
start: 2028-03-20      # a Tuesday
brand: firm.yaml

# the decks
areas:
  - name: Landing
    state: oiled   # after us
    rates: [11.28 m2/L]   # as laid
    coats: 1
    # note: We sand
    #   by hand.
    timber: kwila

  - {name: Steps, state: oiled, rates: [11.28 m2/L], coats: 1}
  - state: oiled
    coats: 1
    name: Porch
work: [wash, oil]
crew: {people: 2}
price:
  margin: 30 %   # agreed
)");
}

TEST_CASE("next year's job can be made from one written in braces, and moved to another folder") {
  const std::string old =
      R"({"ref": "A", "after": "Z", "quoted": "2027-03-02", "start": "2027-03-16", "brand": "a b.yaml", "spreading_rates": "r.yaml",
 "areas": [{"name": "Deck, lower", "rates": ["8 m2/L"], "state": "new"}], "work": ["oil"],
 "price": {"stages": [], "options": []}, "weather": "f.csv"})";
  input::NextYear n = sample(1);
  n.brand = "../brands/a b.yaml";
  n.spreadingRates = "../r#.yaml";
  CHECK(input::nextYearsJob(old, n) ==
        R"(# The year after.
{"ref": A-2, "after": A, first_job: Z, "quoted": 2028-02-21, "start": 2028-03-20, "brand": ../brands/a b.yaml, "spreading_rates": "../r#.yaml",
 "areas": [{"name": "Deck, lower", "state": oiled, coats: 1, rates: [11.28 m2/L]}], "work": [wash, oil]}
)");
}

TEST_CASE("the editor's line follows the new job to its folder") {
  input::NextYear n = sample(1);
  n.schema = "../schemas/job.schema.json";
  const std::string made =
      input::nextYearsJob("# yaml-language-server: $schema=schemas/job.schema.json\n" + fixture::goodJob, n);
  CHECK(made.starts_with("# yaml-language-server: $schema=../schemas/job.schema.json\n"));
}

TEST_CASE("the good job's next year can be read without a mistake") {
  CHECK(fixture::messagesOf(input::nextYearsJob(fixture::goodJob, sample(1))).empty());
}

TEST_CASE("of the days off only those stay that lie after the new start") {
  const auto crewOf = [](const std::string& crew) {
    const std::string made = input::nextYearsJob(
        "ref: A\nquoted: 2027-03-02\nstart: 2027-03-16\nareas: [{name: Deck, state: new}]\nwork: [oil]\n" +
            crew,
        sample(1));  // starts on 20 March 2028
    return made.substr(made.find("crew:"));
  };
  CHECK(crewOf("crew: {people: 2, off: [2027-03-26, 2027-03-29], leader: Ada}\n") ==
        "crew: {people: 2, leader: Ada}\n");
  CHECK(crewOf("crew:\n  people: 2\n  off: [2027-03-26, 2028-03-20, 2028-03-22]   # holidays\n") ==
        "crew:\n  people: 2\n  off: [2028-03-20, 2028-03-22]   # holidays\n");
  CHECK(crewOf("crew:\n  off:\n    - 2027-03-26\n    - 2027-03-29\n  people: 2\n") == "crew:\n  people: 2\n");
  CHECK(crewOf("crew:\n  off:\n    - 2028-03-22   # Easter\n  people: 2\n") ==
        "crew:\n  off:\n    - 2028-03-22   # Easter\n  people: 2\n");
}
