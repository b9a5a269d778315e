// A job's text edited into next year's: what changes changes, the rest stays as the person wrote it.
#include "input/job/next_year.h"
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
accepted: 2027-03-04
customer: {name: Inga}
site: {region: nz, access: Gate 4711}
start: 2027-03-16      # a Tuesday
firm: ../firm
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
  discount: 5 %
  discount_reason: first job
  stages:
    - {share: 40 %, when: sanded}
  options: [{text: Rail, price: 620.00}]

included: [Old film taken off]
before_we_come:
- Finish by 4 June.
- Keep the gate open.
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
  const auto made = input::nextYearsJob(old, n);
  CHECK(made.promises ==
        std::vector<std::string>{
            "site.access: Gate 4711", "areas[1].note: We sand by hand.", "areas[2].note: \"Worn, smooth\"",
            "price.discount: 5 %", "price.discount_reason: first job",
            "price.stages: - {share: 40 %, when: sanded}", "price.options: [{text: Rail, price: 620.00}]",
            "title: Deck, sanded", "included: [Old film taken off]",
            "before_we_come: - Finish by 4 June. - Keep the gate open."});
  CHECK(made.text == R"(# $schema=job.schema.json
# Gate code from Inga.
# The year after.
ref: A-2   # our number
after: A
# title: Deck, sanded
quoted: 2028-02-21
customer: {name: Inga}
# site.access: Gate 4711
site: {region: nz}
start: 2028-03-20      # a Tuesday
firm: ../firm

# the decks
areas:
  - name: Landing
    state: oiled   # after us
    rates: [11.28 m2/L]   # as laid
    coats: 1
    # note: We sand
    #   by hand.
    timber: kwila

  # areas[2].note: "Worn, smooth"
  - {name: Steps, state: oiled, rates: [11.28 m2/L], coats: 1}
  - state: oiled
    coats: 1
    name: Porch
work: [wash, oil]
crew: {people: 2}
price:
  margin: 30 %   # agreed
  # discount: 5 %
  # discount_reason: first job
  # stages:
  #   - {share: 40 %, when: sanded}
  # options: [{text: Rail, price: 620.00}]

# included: [Old film taken off]
# before_we_come:
# - Finish by 4 June.
# - Keep the gate open.
)");
}

TEST_CASE("next year's job can be made from one written in braces, and moved to another folder") {
  const std::string old =
      R"({"ref": "A", "after": "Z", "quoted": "2027-03-02", "start": "2027-03-16", "firm": "a b", "spreading_rates": "r.yaml",
 "areas": [{"name": "Deck, lower", "rates": ["8 m2/L"], "note": Worn
 smooth, "state": "new"}], "work": ["oil"],
 "included": ["Film
 off"], "price": {"stages": [], "discount": "5 %", "options": []}, "weather": "f.csv", "done": [{"coat": 1}],
 "left": [], "crew": {"people": 2}})";
  input::NextYear n = sample(1);
  n.firm = "../firms/a b";
  n.spreadingRates = "../r#.yaml";
  CHECK(input::nextYearsJob(old, n).text ==
        R"(# The year after.
# areas[1].note: Worn smooth
# included: ["Film off"]
# price: {"stages": [], "discount": "5 %", "options": []}
{"ref": A-2, "after": A, first_job: Z, "quoted": 2028-02-21, "start": 2028-03-20, "firm": ../firms/a b, "spreading_rates": "../r#.yaml",
 "areas": [{"name": "Deck, lower", "state": oiled, coats: 1, rates: [11.28 m2/L]}], "work": [wash, oil], "crew": {"people": 2}}
)");
}

TEST_CASE("the editor's line follows the new job to its folder") {
  input::NextYear n = sample(1);
  n.schema = "../schemas/job.schema.json";
  const std::string made =
      input::nextYearsJob("# yaml-language-server: $schema=schemas/job.schema.json\n" + fixture::goodJob, n)
          .text;
  CHECK(made.starts_with("# yaml-language-server: $schema=../schemas/job.schema.json\n"));
}

TEST_CASE("the good job's next year can be read without a mistake") {
  CHECK(fixture::messagesOf(input::nextYearsJob(fixture::goodJob, sample(1)).text).empty());
}

TEST_CASE("photographs of last year's boards are not next year's, what lies around them is") {
  const std::string around = "around:\n  - {is: house, rectangle: [8 m, 5 m], at: [0 m, -5 m]}\n";
  const std::string made =
      input::nextYearsJob(fixture::goodJob + around + "photos:\n  - {file: a.jpg, shows: Grey boards}\n",
                          sample(1))
          .text;
  CHECK(made.find(around) != std::string::npos);
  CHECK(made.find("photos") == std::string::npos);
  CHECK(made.find("a.jpg") == std::string::npos);
}

TEST_CASE("of the days off only those stay that lie after the new start") {
  const auto crewOf = [](const std::string& crew) {
    const std::string made = input::nextYearsJob(
                                 "ref: A\nquoted: 2027-03-02\nstart: 2027-03-16\nareas: [{name: Deck, state: "
                                 "new}]\nwork: [oil]\n" +
                                     crew,
                                 sample(1))
                                 .text;  // starts on 20 March 2028
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

TEST_CASE("the dash of an area stays when its first key goes") {
  const auto made = [](const std::string& area) {
    const std::string text =
        input::nextYearsJob(
            "ref: A\nquoted: 2027-03-02\nstart: 2027-03-16\nareas:\n" + area + "work: [oil]\n", sample(1))
            .text;
    return text.substr(text.find("areas:"));
  };
  CHECK(made(R"(  - note: Worn
      smooth.
    name: Deck
    state: new
)") == R"(areas:
  # note: Worn smooth.
  - name: Deck
    state: oiled
    coats: 1
    rates: [11.28 m2/L]   # as laid
work: [wash, oil]
)");
  CHECK(made(R"(  - note: Worn
    rates: [8 m2/L]
    name: Deck
    state: new
)") == R"(areas:
  # note: Worn
  - name: Deck
    state: oiled
    coats: 1
    rates: [11.28 m2/L]   # as laid
work: [wash, oil]
)");
  CHECK(made(R"(  - rates: [8 m2/L]
    test_patch: {area: 1 m2, used: 120 mL}
    state: new
    name: Deck
)") == R"(areas:
  - state: oiled
    coats: 1
    rates: [11.28 m2/L]   # as laid
    name: Deck
work: [wash, oil]
)");
}

TEST_CASE("a discount of nothing is no promise") {
  const auto made = input::nextYearsJob(
      fixture::edited(fixture::goodJob, "price: {", "price: {discount: 0 %, "), sample(1));
  CHECK(made.promises == std::vector<std::string>{"price.options: [{text: Handrail, price: 620.00}]"});
  CHECK(made.text.find("price: {discount: 0 %, deposit: 10 %}") != std::string::npos);
}

TEST_CASE("a raise is written into the price, or makes one") {
  input::NextYear n = sample(1);
  n.raise = "4 %";
  const auto made = [&](const std::string& price) {
    const std::string text = input::nextYearsJob(
                                 "ref: A\nquoted: 2027-03-02\nstart: 2027-03-16\nareas: [{name: Deck, state: "
                                 "new}]\nwork: [oil]\n" +
                                     price,
                                 n)
                                 .text;
    return text.substr(text.find("work:"));
  };
  CHECK(made("") == "work: [wash, oil]\nprice: {raise: 4 %}   # on the firm's rates\n");
  CHECK(made("price:\n  stages: []\n  margin: 30 %   # agreed\n  deposit: 10 %\n") ==
        "work: [wash, oil]\nprice:\n  margin: 30 %   # agreed\n  raise: 4 %   # on the firm's rates\n  "
        "deposit: 10 "
        "%\n");
  CHECK(made("price: {deposit: 10 %, discount: 5 %}\n") ==
        "work: [wash, oil]\n# price.discount: 5 %\nprice: {deposit: 10 %, raise: 4 %}\n");
  CHECK(made("price:\n  discount: 5 %\n") ==
        "work: [wash, oil]\nprice: {raise: 4 %}   # on the firm's rates\n# price:\n#   discount: 5 %\n");
  CHECK(made("price: {raise: 3 %, deposit: 10 %}\n") ==
        "work: [wash, oil]\nprice: {raise: 4 %, deposit: 10 %}\n");
  n.raise.clear();
  CHECK(made("price: {raise: 3 %}\n") == "work: [wash, oil]\nprice: {raise: 3 %}\n");
}
