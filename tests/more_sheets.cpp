// The sheets that are made when asked for: invoice, extra work, handover, survey, reminder, look-over.
#include "app/pack/firm_look.h"
#include "drawings/drawings.h"
#include "example_jobs.h"
#include "page_checks.h"
#include "safety_jobs.h"
#include "sheets/facts/facts_invoice.h"
#include "sheets/facts/make_facts.h"
#include "typeset/face.h"

using namespace safety_jobs;
using typeset::Dim;

namespace {

const std::vector<std::string> sheetNames = {"invoice", "extra",    "handover",
                                             "survey",  "reminder", "lookover"};

base::Date day(const char* words) { return base::parseDate(words).value(); }

std::string sheetOf(const model::JobResult& x, const std::string& name) {
  return together(documents(x, {name}).at(name));
}

/// What is said when a document is asked for.
std::string saidAt(const model::JobResult& x, const std::vector<std::string>& only) {
  base::Diagnostics messages;
  std::string all;
  for (const auto& [name, pages] : app::setDocuments(x, shipped(), {}, only, messages)) all += name + "\n";
  for (const auto& d : messages.all()) all += base::format(d);
  return all;
}

/// As an English sheet prints an amount: 11,664.74.
std::string printed(base::Money money) {
  const std::string cents = std::to_string(money.minor % 100);
  std::string whole = std::to_string(money.minor / 100);
  for (std::size_t at = whole.size(); at > 3; at -= 3) whole.insert(at - 3, ",");
  return whole + "." + (cents.size() < 2 ? "0" : "") + cents;
}

std::string mistakesIn(const std::string& job) {
  base::Diagnostics messages;
  compute(app::JobText{"job.yaml", job}, {}, messages);
  std::string all;
  for (const auto& d : messages.all()) {
    if (d.severity == base::Severity::Error) all += base::format(d);
  }
  return all;
}

}  // namespace

TEST_CASE("the last invoice asks for the total less the invoices before it") {
  const auto x = example("landing");
  const base::Money total = x.price.total;
  const base::Money deposit = x.price.stages.front().amount;
  const std::string words = sheetOf(x, "invoice");
  for (const std::string& said :
       std::vector<std::string>{"LA-2027-031/2", "31\u00A0March 2027", "To pay now",
                                "Total incl. GST, quote LA-2027-031 of 2\u00A0March 2027", printed(total),
                                "Less invoice LA-2027-031/1, 15\u00A0March 2027", "\u2212" + printed(deposit),
                                "$" + printed(total - deposit), "by Wednesday\u00A07\u00A0April 2027",
                                "account 00-0000-0000000-00", "A-113 and A-117"}) {
    INFO(said << " in\n" << words);
    CHECK(holds(words, said));
  }
}

TEST_CASE("the first invoice asks for the deposit with the tax in it, and tells of no oil that is not laid") {
  auto x = example("landing");
  x.c.job.invoices.resize(1);
  const std::string words = sheetOf(x, "invoice");
  const base::Money deposit = x.price.stages.front().amount;
  const base::Money tax{(x.price.tax.minor * deposit.minor + x.price.total.minor / 2) / x.price.total.minor};
  for (const std::string& said : std::vector<std::string>{
           "LA-2027-031/1", "To pay now: 10\u00A0% on acceptance", "$" + printed(deposit), printed(tax),
           printed(deposit - tax), "by Monday\u00A022\u00A0March 2027", "The job"}) {
    INFO(said << " in\n" << words);
    CHECK(holds(words, said));
  }
  for (const char* unsaid : {"Less invoice", "What we laid", "A-113"}) CHECK_FALSE(holds(words, unsaid));
}

TEST_CASE("the taxes of the stages add up to the tax of the price") {
  for (const auto& job : examples::jobs()) {
    INFO(job);
    auto price = example(examples::nameOf(job)).price;
    const base::Money third{price.total.minor / 3};
    price.stages = {{{}, "", third}, {{}, "", third}, {{}, "", price.total - third - third}};
    base::Money sum;
    for (const auto tax : sheets::taxOfStages(price)) sum += tax;
    CHECK(sum == price.tax);
  }
}

TEST_CASE("an option that the customer took is paid with the last invoice, and raises the total so far") {
  auto x = example("landing");
  x.c.job.price.options.at(0).isTaken = true;  // 620.00 and 15 % of it: 713.00
  const base::Money total = x.price.total, option{71'300}, taxOfOption{9'300};
  const base::Money deposit = x.price.stages.front().amount;
  const base::Money taxOfDeposit{(x.price.tax.minor * deposit.minor + total.minor / 2) / total.minor};
  const std::string last = sheetOf(x, "invoice");
  CHECK(holds(last, "Handrail sanded and oiled, incl. GST"));
  CHECK(holds(last, "$" + printed(total - deposit + option)));
  CHECK(holds(last, printed(x.price.tax - taxOfDeposit + taxOfOption)));
  CHECK(holds(sheetOf(x, "extra"), "$" + printed(total + option)));
  CHECK(holds(sheetOf(x, "office"), printed(total - deposit + option)));
  x.c.job.invoices.resize(1);
  CHECK_FALSE(holds(sheetOf(x, "invoice"), "Handrail"));
}

TEST_CASE("a job that says on no day an invoice goes out makes none") {
  const auto x = computed(plainJob);
  CHECK(saidAt(x, {"invoice", "extra"}) ==
        "extra\n"
        "job.yaml:1:1: error: invoices: the job does not say on which day an invoice goes out\n"
        "  hint: write the days, one for each stage of the price so far: invoices: [2027-03-15]\n");
}

TEST_CASE("days of invoices come in their order, at most one for each stage") {
  CHECK(mistakesIn(plainJob + "invoices: [2027-03-15, 2027-04-02]\n") == "");
  CHECK(mistakesIn(plainJob + "invoices: [2027-03-01, 2027-02-28, 2027-04-02]\n") ==
        "job.yaml:21:11: error: invoices: 3 invoices for a price that is paid in 2\n"
        "  hint: name a stage for each under 'price.stages', or take days out\n"
        "job.yaml:21:12: error: invoices[1]: the invoice goes out before 2027-03-02, the date of the quote\n"
        "  hint: check both dates\n"
        "job.yaml:21:24: error: invoices[2]: the invoice goes out before 2027-03-01, the date of the one "
        "before it\n"
        "  hint: check both dates\n");
}

TEST_CASE("a survey is blank: it knows whom to call and where, and nothing of the areas") {
  const std::string job = replaced(plainJob, "name: Inga Thorley", "name: Inga Thorley, phone: 03 555 0191");
  const auto x =
      computed(replaced(job, "exposure: sheltered", "exposure: sheltered, address: [4 Mill Bay Road]"));
  const std::string words = sheetOf(x, "survey");
  for (const char* said : {"Inga Thorley", "03 555 0191", "4 Mill Bay Road", "A square is half a metre"})
    CHECK(holds(words, said));
  for (const char* unsaid : {"Deck", "larch", "24", "$"}) {
    INFO(unsaid << " in\n" << words);
    CHECK_FALSE(holds(words, unsaid));
  }
  CHECK(holds(sheetOf(computed(plainJob), "survey"), "ask for a telephone number"));
  CHECK(holds(sheetOf(example("porch"), "survey"), "A square is a foot"));
}

TEST_CASE("squared paper is whole squares in the units of the place") {
  const auto x = example("landing");
  const auto fonts = app::fontsOf(x.c.theme, shipped());
  const auto at = [&](const model::Region& region) {
    const drawings::Pen pen{x.c.theme, fonts, region, x.language};
    return drawings::squaredPaper("paper", pen, {Dim::mm(166), Dim::mm(63)});
  };
  const auto metric = at(shipped().content.regions.at("nz")), feet = at(shipped().content.regions.at("us"));
  CHECK(metric.size.w == Dim::mm(165));  // 33 squares of 5 mm
  CHECK(metric.size.h == Dim::mm(60));
  CHECK(feet.size.w == Dim::pt(26 * 18));  // 166 mm are 470.6 pt, a quarter inch is 18 pt
  CHECK(feet.size.h == Dim::pt(9 * 18));
  CHECK(metric.alt == "paper");
}

TEST_CASE("a handover of up to six areas is one page", "[pages]") {
  for (const char* theme : {"generous", "compact"})
    for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter})
      for (const auto& job : examples::jobs()) {
        app::Choices choices;
        choices.theme = theme;
        choices.paper = paper;
        base::Diagnostics messages;
        const auto x = firm_jobs::compute(job, choices, messages);
        REQUIRE(x);
        INFO(job << ", " << theme << (paper == model::Paper::A4 ? ", A4" : ", Letter"));
        CHECK(documents(*x, {"handover"}, choices).at("handover").pages.size() <=
              (x->c.job.areas.size() > 6 ? 2u : 1u));
      }
}

TEST_CASE("a handover of a job without a coat speaks of no oil") {
  const auto x = computed(replaced(plainJob, "work: [wash, oil]", "work: [wash]"));
  const std::string words = sheetOf(x, "handover");
  for (const char* unsaid : {"oil", "coat", "walk on it", "Aftercare", "batches"}) {
    INFO(unsaid << " in\n" << words);
    CHECK_FALSE(holds(words, unsaid));
  }
  CHECK(holds(words, "last day on site"));
}

TEST_CASE(
    "each sheet is one leaf on either paper, in either look and in Spanish, and nothing prints over another",
    "[pages]") {
  app::Choices choices;
  choices.languages = {"en", "es"};
  for (const char* theme : {"generous", "compact"}) {
    for (const auto paper : {model::Paper::A4, model::Paper::Letter}) {
      choices.theme = theme;
      choices.paper = paper;
      std::vector<std::pair<std::string, model::JobResult>> jobs;
      for (const auto& job : examples::jobs()) {
        base::Diagnostics messages;
        auto x = compute(job, choices, messages);
        REQUIRE(x);
        jobs.emplace_back(examples::nameOf(job), std::move(*x));
      }
      jobs.emplace_back("plain", computed(plainJob, choices));
      jobs.emplace_back("worst", computed(worstJob, choices));
      for (auto& [job, x] : jobs) {
        x.c.job.invoices.assign(x.price.stages.size(), x.c.job.start);
        const std::size_t most = x.c.job.areas.size() > 6 ? 2 : 1;
        for (const auto& [name, pages] : documents(x, sheetNames, choices)) {
          INFO(job << " " << name << ", " << theme << (paper == model::Paper::A4 ? " on A4" : " on Letter"));
          CHECK(pages.pages.size() <=
                (name.starts_with("survey") || name.starts_with("handover") ? 2 : most));
          CHECK(checks::overlaps(pages) == std::vector<std::string>{});
          const auto& t = x.c.theme;
          const Dim left = Dim::milli(t.marginLeft) + (pages.pages[0].size.w - Dim::mm(210)) / 2,
                    width = Dim::milli(t.sideWidth) + Dim::milli(t.gutter) + Dim::milli(t.textWidth);
          CHECK(checks::outside(pages, left, left + width) == std::vector<std::string>{});
        }
      }
    }
  }
}

TEST_CASE("no document for a customer shows what a job costs the firm, or its notes") {
  auto x =
      computed(replaced(plainJob, "    timber: larch", "    office_note: the dog bites\n    timber: larch"));
  x.c.job.invoices = {day("2027-03-15"), day("2027-04-02")};
  const sheets::Formatter w(*x.c.region, x.language);
  std::vector<std::string> secrets = {"margin", "overhead", "contingency", "profit", "dog"};
  for (const auto amount : {x.price.cost, x.price.labourCost, x.price.productCost, x.price.net - x.price.cost,
                            x.c.rates.labourCostPerHour})
    secrets.push_back(w.money(amount));
  int read = 0;
  for (const auto& [name, document] : shipped().templates.at("en").documents) {
    if (document.kind.reader != model::Reader::Customer) continue;
    const std::string words = sheetOf(x, name);
    for (const auto& secret : secrets) {
      INFO(name << ": " << secret);
      CHECK_FALSE(holds(words, secret));
    }
    ++read;
  }
  CHECK(read >= 5);
}

TEST_CASE("a quote names only what the job uses up") {
  const auto materials = [](const char* work) {
    const auto x = computed(replaced(plainJob, "work: [wash, oil]", work));
    return sheetOf(x, "quote");
  };
  CHECK(holds(materials("work: [wash, oil]"), "cleaner, pads, masking"));
  CHECK_FALSE(holds(materials("work: [wash, oil]"), "abrasives"));
  CHECK(holds(materials("work: [wash, sand, oil]\nsanding: [60]"), "cleaner, abrasives, pads, masking"));
  CHECK_FALSE(holds(materials("work: [wash]"), "pads"));
}
