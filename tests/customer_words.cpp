// What the sheets of customer and office say in words, where a wrong word would mislead.
#include "app/pack/milestones.h"
#include "example_jobs.h"
#include "model/names.h"
#include "safety_jobs.h"
#include "sheets/facts/make_facts.h"

#include <regex>

using namespace safety_jobs;

namespace {

std::string exampleOf(const std::string& name) { return SOURCE_DIR "/out_examples/" + name + "/job.yaml"; }

model::JobResult computedExample(const std::string& name) {
  base::Diagnostics messages;
  auto x = firm_jobs::compute(exampleOf(name), {}, messages);
  REQUIRE(x);
  return std::move(*x);
}

struct Care {
  std::string english, spanish;
};
Care careAfter(const std::string& example) {
  app::Choices choices;
  choices.languages = {"en", "es"};
  const auto sheets = documents(computedExample(example), {"aftercare"}, choices);
  const auto words = [](const typeset::Document& document) {
    std::string all = together(document);
    for (const auto& tag : document.tags) all += tag.alt + "\n";  // what the timeline says
    return all;
  };
  return {words(sheets.at("aftercare")), words(sheets.at("aftercare-es"))};
}

std::string wordOf(const sheets::Facts& facts, const std::string& name) {
  const auto* fact = sheets::find(facts, name);
  REQUIRE(fact);
  return std::get<std::string>(fact->value);
}

double numberOf(std::string words) {
  std::erase(words, ',');
  return std::stod(words);
}

/// The titles of a day plan, each with a semicolon behind.
std::string dayTitles(const model::JobResult& x) {
  const auto facts = sheets::makeFacts(x).at(model::Reader::Crew);
  std::string all;
  for (const auto& day : std::get<sheets::FactList>(sheets::find(facts, "coat_days")->value))
    all += wordOf(day, "title") + ";";
  return all;
}

}  // namespace

TEST_CASE(
    "the care sheet tells coats that were not recorded as planned, and leaves their record to be written") {
  const auto planned = careAfter("landing-again"), laid = careAfter("landing");
  CHECK(holds(planned.english, "end of the last coat planned for "));
  CHECK(holds(planned.english, "planned to end at"));
  CHECK(holds(planned.spanish, "fin de la \u00FAltima mano previsto para el "));
  CHECK(holds(planned.spanish, "fin previsto: "));
  for (const char* fact : {"finished on", "done at", "by Tideboard"}) {
    INFO(fact);
    CHECK_FALSE(holds(planned.english, fact));
    CHECK(holds(laid.english, fact));
  }
  for (const char* fact : {"terminada el", "terminada a las", "por Tideboard"}) {
    INFO(fact);
    CHECK_FALSE(holds(planned.spanish, fact));
    CHECK(holds(laid.spanish, fact));
  }
  CHECK_FALSE(holds(laid.english, "planned for"));
  CHECK_FALSE(holds(laid.spanish, "previsto"));
}

TEST_CASE("the months between two dates on the timeline are the nearest whole ones of the calendar") {
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = firm_jobs::compute(file, {}, messages);
    REQUIRE(x);
    const auto stations = app::stationsOf(*x);
    base::Date wash{}, visit{};
    for (const auto& e : x->plan.events) {
      if (model::nameOf(e) == "first_wash") wash = e.at.day;
      if (model::nameOf(e) == "maintenance") visit = e.at.day;
    }
    const int months = std::stoi(stations.at(stations.size() - 2).gap);
    INFO(file << ": " << base::isoDate(wash) << " to " << base::isoDate(visit) << ", " << months);
    // A month is 31 days at most, so its half is 16.
    CHECK(visit - base::plusMonths(wash, months) <= std::chrono::days{16});
    CHECK(base::plusMonths(wash, months) - visit <= std::chrono::days{16});
  }
}

TEST_CASE("decks of one coat and of two together get 'one or two coats'") {
  const auto sheets = documents(computedExample("lakeside"), {"quote"});
  CHECK(holds(together(sheets.at("quote")), "one or two coats"));
  CHECK_FALSE(holds(together(sheets.at("quote")), "to two coats"));
}

TEST_CASE("the care sheet says which decks have how many coats, and a job of one coat speaks of no first") {
  const auto lakeside = together(documents(computedExample("lakeside"), {"aftercare"}).at("aftercare"));
  CHECK(holds(lakeside, "two coats; one coat on Veranda and Fascia"));
  CHECK_FALSE(holds(lakeside, "one or two coats"));
  const auto again = documents(computedExample("lakeside-again"), {"aftercare"});
  const auto days = dayTitles(computedExample("lakeside-again"));
  CHECK(holds(days, ", coating;"));
  CHECK_FALSE(holds(days, "first coat"));
  CHECK_FALSE(holds(together(again.at("aftercare")), "first coat"));
}

TEST_CASE("sheets name the people and the colour their reader has to reach or match") {
  for (const char* example : {"landing", "lakeside", "porch"}) {
    INFO(example);
    const auto x = computedExample(example);
    const auto& firm = x.c.firm;
    const auto& customer = x.c.job.customer;
    std::map<std::string, std::string> words;
    for (const auto& [name, document] : documents(x, {"quote", "aftercare", "orders", "office"}))
      words[name] = together(document);
    std::string colour = x.c.job.colour;
    for (char& c : colour) c = static_cast<char>(std::toupper(c));
    for (const auto& word : {x.c.product->name, colour}) CHECK(holds(words["orders"], word));
    for (const auto& word : {customer.name, customer.phone, customer.email})
      CHECK(holds(words["office"], word));
    CHECK(holds(words["aftercare"], "photographs to " + firm.email));
    for (const auto& word : {firm.contact, firm.phone, firm.email}) CHECK(holds(words["quote"], word));
    CHECK(holds(words["quote"], "send it to " + firm.email));
  }
}

TEST_CASE("where no payment may be taken yet the quote asks for the deposit later") {
  auto x = computedExample("landing");
  model::Region region = *x.c.region;
  region.cancellation.isStandstill = true;
  x.c.region = &region;
  CHECK(holds(together(documents(x, {"quote"}).at("quote")), "on acceptance"));
  x.c.job.customer.isUninvited = true;
  const auto quote = together(documents(x, {"quote"}).at("quote"));
  CHECK(holds(quote, "when your cancellation period ends"));
  CHECK_FALSE(holds(quote, "on acceptance"));
}

TEST_CASE("no line of an order list buys a whole one more than it seems to use") {
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = firm_jobs::compute(file, {}, messages);
    REQUIRE(x);
    const auto facts = sheets::makeFacts(*x).at(model::Reader::Office);
    for (const auto& line : std::get<sheets::FactList>(sheets::find(facts, "consumables")->value)) {
      INFO(file << ": " << wordOf(line, "name"));
      if (wordOf(line, "unit") == "L") continue;  // bought by the litre
      const double used = numberOf(wordOf(line, "used")), bought = numberOf(wordOf(line, "bought"));
      CHECK(used <= bought);
      CHECK(used > bought - 1);
    }
  }
}

TEST_CASE("the office reads beside each coat as laid the planned litres of the other sheets") {
  const auto x = computedExample("landing");
  const auto facts = sheets::makeFacts(x).at(model::Reader::Office);
  const auto& all = std::get<sheets::Facts>(sheets::find(facts, "actual_all")->value);
  CHECK(wordOf(all, "planned") == wordOf(facts, "litres_together"));
}

TEST_CASE("sheets for a US customer and office use no word that is foreign there") {
  const std::regex foreign(
      "litre|colour|\\b[Rr]ing us|m2|m\u00B2|[Ll]abour|ancelling|\\bgrey|apour|trolley|EUH|California");
  for (const char* example : {"porch", "porch-again"}) {
    const auto x = computedExample(example);
    for (const auto& [name, document] :
         documents(x, {"quote", "aftercare", "safety", "orders", "office", "extra", "handover", "survey",
                       "reminder", "lookover"})) {
      const std::string words = together(document);
      std::smatch found;
      std::regex_search(words, found, foreign);
      INFO(example << " " << name << ": "
                   << (found.empty()
                           ? ""
                           : found.prefix().str().substr(std::max<long>(0, found.position() - 60))));
      CHECK(found.empty());
    }
  }
}

TEST_CASE("a quote is valid for thirty days, but not into the work") {
  const auto quote = [](const std::string& job) {
    return together(documents(computed(job), {"quote"}).at("quote"));
  };
  const std::string quoted = "quoted: 2027-03-02", start = "start: 2027-03-16";
  CHECK(holds(quote(plainJob), "15\u00A0March 2027"));
  CHECK(holds(quote(replaced(plainJob, start, "start: 2027-04-12")), "1\u00A0April 2027"));
  CHECK(holds(quote(replaced(plainJob, quoted, quoted + "\nvalid_days: 7")), "9\u00A0March 2027"));
}
