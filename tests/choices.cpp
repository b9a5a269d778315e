// Jobs that can be done in several ways, side by side on one quote.
#include "app/after/year_after.h"
#include "app/report/figures_json.h"
#include "input/job/next_year.h"
#include "input_fixture.h"
#include "safety_jobs.h"
#include "sheets/words/formatter.h"

#include <nlohmann/json.hpp>

using namespace safety_jobs;
using nlohmann::json;

namespace {

const std::string ways = R"(choices:
  - name: Wash and one coat
    looks: Clean; grey stays in the grooves
    coats: 1
  - name: Sand and two coats
    looks: Even and smooth
    work: [wash, sand, oil]
    sanding: [60, 80]
  - name: Two coats of the other oil
    product: tern-oil
    areas: [{name: Deck, boards: {gap: 6 mm}, note: Wider gaps.}]
)";

const std::string fewer = "choices:\n  - {name: All of it}\n  - {name: The deck, leave_out: [Back steps]}\n";

/// What each of them is, written as a job of its own.
std::string alone(int choice) {
  switch (choice) {
    case 0:
      return replaced(plainJob, "state: weathered", "state: weathered\n    coats: 1");
    case 1:
      return replaced(plainJob, "work: [wash, oil]", "work: [wash, sand, oil]\nsanding: [60, 80]");
    default:
      return replaced(replaced(replaced(plainJob, "plover-wb", "tern-oil"), "gap: 5 mm", "gap: 6 mm"),
                      "state: weathered", "state: weathered\n    note: Wider gaps.");
  }
}

/// The plain job a year later.
input::NextYear nextYear() {
  input::NextYear next;
  next.ref = "PLAIN-1-2";
  next.after = "PLAIN-1";
  next.quoted = base::Date{std::chrono::year{2028} / 2 / 20};
  next.start = base::Date{std::chrono::year{2028} / 3 / 20};
  next.areas = {{"oiled", "", ""}};
  return next;
}

json figures(const model::JobResult& x) { return json::parse(app::figuresJson(x)); }

std::string quoteOf(const model::JobResult& x) { return together(documents(x, {"quote"}).at("quote")); }

/// The good job of the tests of reading with these choices, and all that is said about it.
std::string saidOf(const std::string& choices) {
  std::vector<base::Diagnostics> told;
  for (auto& read : input::readJobs(fixture::goodJob + choices, "job.yaml", fixture::content()))
    told.push_back(std::move(read.messages));
  base::Diagnostics messages;
  input::addOfChoices(told, messages);
  return base::format(messages);
}

}  // namespace

TEST_CASE("each choice is computed as if it were the job", "[choices]") {
  const auto j = figures(computed(plainJob + ways));
  REQUIRE(j["choices"].size() == 3);
  for (int i = 0; i < 3; ++i) {
    INFO(i);
    const auto& choice = j["choices"][static_cast<std::size_t>(i)];
    CHECK(choice["figures"] == figures(computed(alone(i))));
    CHECK(choice["counts"] == (i == 0));
    CHECK(choice["chosen"] == false);
  }
  CHECK(j["price"] == j["choices"][0]["figures"]["price"]);
}

TEST_CASE("a choice leaves areas out, and so does next year's job", "[choices]") {
  const std::string two =
      replaced(plainJob, "areas:\n",
               "areas:\n  - name: Back steps   # to the garden\n    shape: {stairs: {steps: 4, width: 1.2 m, "
               "going: 300 mm, rise: 160 mm}}\n    timber: larch\n    state: weathered\n");
  const auto whole = computed(two), deck = computed(plainJob);
  const auto j = figures(computed(two + fewer));
  CHECK(j["choices"][0]["figures"] == figures(whole));
  CHECK(j["choices"][1]["figures"] == figures(deck));
  CHECK(j["choices"][1]["left_out"] == json::array({"Back steps"}));
  const std::string quote = quoteOf(computed(two + fewer));
  CHECK(holds(quote, "Without"));
  CHECK_FALSE(holds(quoteOf(computed(plainJob + ways)), "Without"));

  input::NextYear next = nextYear();
  next.choice = 1;
  const auto fresh = input::nextYearsJob(two + fewer, next);
  next.choice.reset();
  CHECK(figures(computed(fresh.text)) == figures(computed(input::nextYearsJob(plainJob, next).text)));
  CHECK(holds(fresh.text, "# - name: Back steps"));
}

TEST_CASE("an area left out goes from next year's job however it is written", "[choices]") {
  input::NextYear next = nextYear();
  const auto alone = figures(computed(input::nextYearsJob(plainJob, next).text));
  next.choice = 1;
  const std::string shape = "shape: {stairs: {steps: 4, width: 1.2 m, going: 300 mm, rise: 160 mm}}";
  for (const std::string& steps : std::vector<std::string>{
           "  - name: Back steps\n    " + shape + "\n# oak once\n    timber: larch\n    state: weathered\n",
           "  - name: Back steps\n    " + shape + "\n  # oak once\n    timber: larch\n    state: weathered\n",
           "  - {name: Back steps,\n  " + shape + ",\n  timber: larch, state: weathered}\n",
           "  - name: Back steps\n    " + shape +
               "\n    timber: larch\n    state: weathered\n    note: \"To the\n  garden.\"\n",
           "  -\n    name: Back steps\n    " + shape + "\n    timber: larch\n    state: weathered\n",
           "  - name: Back steps\n    timber: larch\n    state: weathered\n    shape:\n      stairs:\n"
           "        steps: 4\n"
           "# measured twice\n        width: 1.2 m\n        going: 300 mm\n        rise: 160 mm\n"}) {
    for (const std::string& job :
         std::vector<std::string>{replaced(plainJob, "areas:\n", "areas:\n" + steps),
                                  replaced(plainJob, "work: [", steps + "work: [")}) {
      const auto fresh = input::nextYearsJob(job + fewer, next);
      INFO(fresh.text);
      CHECK(figures(computed(fresh.text)) == alone);
    }
  }
}

TEST_CASE("areas a choice leaves out are the job's, not all of them, and not changed by it", "[choices]") {
  CHECK(saidOf("choices:\n"
               "  - {name: One, leave_out: [Lading]}\n"
               "  - {name: Two, leave_out: [Landing], areas: [{name: Landing, coats: 1}]}\n") ==
        "job.yaml:23:29: error: choices[1].leave_out[1]: 'Lading' is not a known area; did you mean "
        "'Landing'?\n"
        "  hint: known: Landing; a choice leaves out areas of the job\n"
        "job.yaml:24:28: error: choices[2].leave_out: no area is left\n"
        "  hint: leave at least one of them in the choice\n"
        "job.yaml:24:54: error: choices[2].areas[1].name: 'Landing' is left out by this choice\n"
        "  hint: take it out here or out of 'leave_out'\n");
}

TEST_CASE("the choice taken is the job, by number or by name", "[choices]") {
  const auto byNumber = computed(plainJob + ways + "chosen: 2\n");
  const auto byName = computed(plainJob + ways + "chosen: Sand and two coats\n");
  const auto lone = computed(alone(1));
  for (const auto* x : {&byNumber, &byName}) {
    auto j = figures(*x);
    CHECK(j["choices"][1]["chosen"] == true);
    j.erase("choices");
    CHECK(j == figures(lone));
  }
  for (const char* name : {"dayplan", "safety", "orders", "aftercare"}) {
    INFO(name);
    CHECK(together(documents(byNumber, {name}).at(name)) == together(documents(lone, {name}).at(name)));
  }
}

TEST_CASE("records, invoices and a day for them belong to the choice taken", "[choices]") {
  const std::string done = "done:\n  - {coat: 2, from: 2027-03-19 08:00, to: 10:00, used: 2 L}\n";
  CHECK(computed(plainJob + ways + "chosen: 2\n" + done).laid.coats.size() == 1);
  base::Diagnostics messages;
  CHECK_FALSE(compute(app::JobText{"job.yaml", plainJob + ways + done}, {}, messages));
  REQUIRE_FALSE(messages.all().empty());
  CHECK(messages.all().front().message == "belongs to one of the choices, and none is chosen");
}

TEST_CASE("a quote shows its choices side by side, and which one its pages are about", "[choices]") {
  const std::string open = quoteOf(computed(plainJob + ways));
  for (const char* words :
       {"Your choice", "1 Wash and one coat", "2 Sand and two coats", "3 Two coats of the other oil",
        "Tick one", "Clean; grey stays in the grooves", "Even and smooth", "Earliest start", "Next visit",
        "March 2028", "What follows is choice 1, Wash and one coat.", "with the choice ticked"}) {
    INFO(words << "\n" << open);
    CHECK(holds(open, words));
  }
  for (int i = 0; i < 3; ++i) {
    const auto x = computed(alone(i));
    CHECK(holds(open, sheets::Formatter(*x.c.region, x.language).signedMoney(x.price.total)));
  }
  const std::string taken = quoteOf(computed(plainJob + ways + "chosen: 2\n"));
  CHECK(holds(taken, "Chosen"));
  CHECK_FALSE(holds(taken, "Tick one"));
  CHECK_FALSE(holds(taken, "What follows"));
}

TEST_CASE("the office reads which choice its sheet is about", "[choices]") {
  const auto office = [](const std::string& more) {
    return together(documents(computed(plainJob + ways + more), {"office"}).at("office"));
  };
  CHECK(holds(office(""),
              "Wash and one coat, choice 1. None is chosen yet: plan, orders and safety are of this one."));
  CHECK(holds(office("chosen: 2\n"), "Sand and two coats, choice 2, chosen."));
}

TEST_CASE("a quote says which choice costs least over ten years", "[choices]") {
  const auto job = replaced(plainJob, "price: {", "price: {ten_years: true, ");
  const std::string quote = quoteOf(computed(job + ways));
  INFO(quote);
  CHECK(holds(quote, "Over ten years, about"));
  CHECK((holds(quote, "Over ten years choice") || holds(quote, "Over ten years all cost about the same.")));
}

TEST_CASE("mistakes in choices are told at their place, those of the job once", "[choices]") {
  CHECK(
      saidOf("choices:\n"
             "  - {name: One, coats: 9}\n"
             "  - {name: Two, work: [wash, oil], areas: [{name: Landing, state: worn}, {name: Lading}]}\n") ==
      "job.yaml:18:10: error: sanding: grits are given but 'work' has no 'sand' (in choice 2)\n"
      "  hint: add 'sand' to 'work' or leave 'sanding' out\n"
      "job.yaml:23:24: error: choices[1].coats: '9' is out of range\n"
      "  hint: allowed: from 1 to 4\n"
      "job.yaml:24:67: error: choices[2].areas[1].state: 'worn' is not a known state of the boards\n"
      "  hint: known: new, weathered, sanded, oiled or film\n"
      "job.yaml:24:81: error: choices[2].areas[2].name: 'Lading' is not a known area; did you mean "
      "'Landing'?\n"
      "  hint: known: Landing; a choice changes the job's own areas\n");
  CHECK(saidOf("choices: [{name: One}]\n") ==
        "job.yaml:22:10: error: choices: two or three choices stand side by side, not 1\n"
        "  hint: take some out, or leave 'choices' out where there is but one way\n");
  CHECK(saidOf("choices: [{name: One}, {name: One, speed: 3}]\n"
               "chosen: Three\n") ==
        "job.yaml:22:31: error: choices[2].name: 'One' is given twice\n"
        "  hint: give each choice a name of its own\n"
        "job.yaml:22:36: error: choices[2]: 'speed' is not a known key here\n"
        "  hint: known: name, looks, work, sanding, product, colour, coats, areas or leave_out\n"
        "job.yaml:23:9: error: chosen: 'Three' is not a known choice\n"
        "  hint: known: One or One; or its number, from 1\n");
  CHECK(saidOf("colour: {}\n"
               "choices: [{name: One}, {name: Two}]\n") ==
        "job.yaml:22:9: error: colour: a single value is needed here, not a group of keys\n"
        "  hint: write the value right behind the key\n");
  CHECK(saidOf("chosen: 1\n") ==
        "job.yaml:22:9: error: chosen: there are no choices\n"
        "  hint: list them under 'choices:', or leave 'chosen' out\n");
}

TEST_CASE("next year's job has the choice taken and no other", "[choices]") {
  input::NextYear next = nextYear();
  next.choice = 2;
  const auto fresh = input::nextYearsJob(plainJob + ways + "chosen: 3\n", next);
  next.choice.reset();
  const auto plain = input::nextYearsJob(alone(2), next);
  CHECK_FALSE(holds(fresh.text, "choices"));
  CHECK_FALSE(holds(fresh.text, "chosen"));
  CHECK_FALSE(
      holds(input::nextYearsJob(replaced(alone(2), "price: {", "price: {ten_years: true, "), next).text,
            "ten_years"));
  CHECK(fresh.promises == plain.promises);
  CHECK(figures(computed(fresh.text)) == figures(computed(plain.text)));
}
