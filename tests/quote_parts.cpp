// The price by area, the hours by task and area, and what is said of the oil: figures that have to add up.
#include "example_jobs.h"
#include "safety_jobs.h"
#include "sheets/facts/facts_office.h"
#include "sheets/facts/facts_quote.h"
#include "sheets/words/controlled_rounding.h"

using namespace safety_jobs;

namespace {

std::string quoteOf(const model::JobResult& x) { return together(documents(x, {"quote"}).at("quote")); }

std::int64_t sumOf(const std::vector<std::int64_t>& row) {
  std::int64_t sum = 0;
  for (const auto n : row) sum += n;
  return sum;
}

/// Each cell, row, column and the whole lie on the whole step below or above what they were.
void checkRounded(const sheets::Amounts& exact, std::int64_t step) {
  const auto rounded = sheets::controlledRounding(exact, step);
  const auto isNext = [&](std::int64_t steps, std::int64_t amount) {
    CHECK(steps * step > amount - step);
    CHECK(steps * step < amount + step);
  };
  std::int64_t all = 0, allExact = 0;
  std::vector<std::int64_t> columns(exact[0].size()), columnsExact(exact[0].size());
  for (std::size_t r = 0; r < exact.size(); ++r) {
    isNext(sumOf(rounded[r]), sumOf(exact[r]));
    for (std::size_t c = 0; c < exact[r].size(); ++c) {
      isNext(rounded[r][c], exact[r][c]);
      columns[c] += rounded[r][c];
      columnsExact[c] += exact[r][c];
    }
    all += sumOf(rounded[r]);
    allExact += sumOf(exact[r]);
  }
  for (std::size_t c = 0; c < columns.size(); ++c) isNext(columns[c], columnsExact[c]);
  isNext(all, allExact);
}

}  // namespace

TEST_CASE("a table is rounded so that rows, columns and the whole stay next to their exact sums") {
  checkRounded({{15, 15}, {15, 15}}, 10);
  checkRounded({{1, 2, 3}, {4, 5, 6}, {7, 8, 9}}, 10);
  checkRounded({{0, 0}, {0, 7}}, 10);
  checkRounded({{10, 20}, {30, 40}}, 10);  // whole already
  std::uint32_t seed = 7;
  for (int n = 0; n < 200; ++n) {
    sheets::Amounts table(1 + n % 9, std::vector<std::int64_t>(1 + static_cast<std::size_t>(n) % 7));
    for (auto& row : table) {
      for (auto& cell : row) {
        seed = seed * 1'664'525 + 1'013'904'223;
        cell = seed >> 20;
      }
    }
    checkRounded(table, 100);
  }
}

TEST_CASE("what is whole already stays as it is") {
  CHECK(sheets::controlledRounding({{10, 20}, {30, 40}}, 10) == sheets::Amounts{{1, 2}, {3, 4}});
}

TEST_CASE("prices of the areas, of materials and of the site add up to the lines of the quote") {
  for (const auto& job : examples::jobs()) {
    INFO(job);
    const auto x = computedFrom(job);
    const auto parts = sheets::priceParts(x);
    base::Money amount = parts.materials.amount + parts.site.amount,
                cost = parts.materials.cost + parts.site.cost;
    for (const auto& area : parts.areas) {
      amount += area.amount;
      cost += area.cost;
    }
    CHECK(amount == x.price.subtotal);
    CHECK(cost == x.price.labourCost + x.price.productCost + x.price.consumableCost + x.price.otherCost);
  }
}

TEST_CASE("a quote shows a price for each area or each kind of work, or one sum, as it is asked") {
  auto x = example("landing");
  const std::string areaPrice = "3,116.17", sanding = "1,862.91", total = "Total incl. GST";
  const auto shows = [&](model::PriceShow show) {
    x.c.job.price.show = show;
    const std::string quote = quoteOf(x);
    CHECK(holds(quote, total));
    return std::pair(holds(quote, areaPrice), holds(quote, sanding));
  };
  CHECK(shows(model::PriceShow::Areas) == std::pair(true, false));
  CHECK(shows(model::PriceShow::Work) == std::pair(false, true));
  CHECK(shows(model::PriceShow::Lump) == std::pair(false, false));
}

TEST_CASE("office and order list say whether the oil will do, and which tins of the shed stay shut") {
  auto x = example("landing");
  const auto wordsOf = [&](const char* name) { return together(documents(x, {name}).at(name)); };
  // Worked in tests/enough.cpp.
  CHECK(holds(wordsOf("office"),
              "4 in 10 jobs like this need more than our 22.5\u00A0L; with one more 2.5\u00A0L tin (118.00), "
              "1 in 20."));
  CHECK(holds(wordsOf("orders"),
              "4 in 10 jobs like this run out; with one more 2.5\u00A0L tin on hold, 1 in 20."));
  x.enough = {{}, {base::litres(20), {}}, true, {}};
  CHECK(holds(wordsOf("office"), "Yes: fewer than 1 in 100 jobs like this need more than our 22.5\u00A0L."));
  CHECK_FALSE(holds(wordsOf("orders"), "run out"));
  x.enough.chanceOfMore = base::Share{6'600'000};
  CHECK(holds(wordsOf("office"),
              "1 in 15 jobs like this need more than our 22.5\u00A0L; with one more 20\u00A0L tin (in the "
              "shed), fewer than 1 in 100."));
  x.resources.product.shut = {{"tern-oil", base::litres(20), 1}};
  CHECK(holds(wordsOf("orders"), "Leave 1\u00A0×\u00A020\u00A0L in the shed shut."));
}

TEST_CASE(
    "the office reads what is left if everyone is paid from arrival to home, where that is more than the "
    "work") {
  auto x = example("landing");
  const auto office = [&] { return together(documents(x, {"office"}).at("office")); };
  x.plan.cost.personMinutes = 5460;
  CHECK(x.plan.cost.paidHours > x.price.labourCost);
  // 21 of 100 are left of the net price when all hours are paid: 1000 - 700 - (390 - 300).
  x.price.net = {100'000};
  x.price.cost = {70'000};
  x.price.labourCost = {30'000};
  x.plan.cost.paidHours = {39'000};
  CHECK(holds(office(), "of work, 91.0\u00A0h on site"));
  CHECK(holds(office(), "profit 21\u00A0% at all 91.0\u00A0h on site"));
  x.plan.cost.paidHours = x.price.labourCost;
  CHECK(holds(office(), "of work at 42.00"));
}

TEST_CASE("a firm tells what it is insured for, holds and guarantees, or the quote is silent of it") {
  auto x = example("landing");
  auto& firm = x.c.firm;
  const std::vector<std::string> labels = {"Insurance:", "Licences:", "Guarantee:", "due within", "pay to"};
  const std::string all = quoteOf(x);
  for (const auto& label : labels) CHECK(holds(all, label));
  for (const auto& words : {firm.insurance, firm.guarantee, firm.licences.at(0), firm.bank.at(1)})
    CHECK(holds(all, words));
  firm.insurance = firm.guarantee = "";
  firm.licences.clear();
  firm.bank.clear();
  firm.paymentDays.reset();
  const std::string none = quoteOf(x);
  for (const auto& label : labels) CHECK_FALSE(holds(none, label));
  CHECK(holds(none, "Mara Quill leads, with Tem Harrow and Ned Farrow."));
}

TEST_CASE("a quote is one leaf, orders and office a page each; more than six areas take one page more",
          "[pages]") {
  for (const auto& job : examples::jobs()) {
    const auto x = computedFrom(job);
    const bool isLarge = x.c.job.areas.size() > 6;
    const auto pages = documents(x, {"quote", "orders", "office"});
    INFO(job);
    CHECK(pages.at("quote").pages.size() <= (isLarge ? 3 : 2));
    CHECK(pages.at("orders").pages.size() == 1);
    CHECK(pages.at("office").pages.size() <= (isLarge ? 2 : 1));
    const auto& quote = pages.at("quote").pages;
    for (std::size_t p = 0; p + 1 < quote.size(); ++p) {  // no more than a fifth empty
      const typeset::Dim top = typeset::Dim::milli(x.c.theme.top),
                         foot = quote[p].size.h - typeset::Dim::milli(x.c.theme.bottom);
      typeset::Dim lowest;
      for (const auto& item : quote[p].items)
        if (const auto* run = std::get_if<typeset::TextRun>(&item.what); run && run->baseline.y < foot)
          lowest = std::max(lowest, run->baseline.y);
      CHECK((lowest - top) * 5 >= (foot - top) * 4);
    }
  }
}
