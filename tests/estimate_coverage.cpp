#include "estimate/coverage.h"
#include "estimate/measure.h"
#include "fixtures.h"

#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

/// A case with one measured area of weathered hardwood and no loss.
model::JobInputs measuredCase(Area area) {
  model::JobInputs c = sampleCase();
  model::Deck d = sampleDeck();
  d.shape = model::Measured{area, {}};
  d.boards.reset();
  c.job.areas = {d};
  c.job.loss = {};
  return c;
}

std::vector<model::CoatNeed> coatsOf(const model::JobInputs& c) {
  std::vector<model::CoatNeed> all;
  for (std::size_t i = 0; i < c.job.areas.size(); ++i) {
    const auto measures = estimate::measureDeck(c.job.areas[i]);
    for (const auto& coat : estimate::coatsOf(c, sampleContent(), i, measures)) all.push_back(coat);
  }
  return all;
}

model::ProductNeed needOf(const model::JobInputs& c) { return estimate::productNeed(c, coatsOf(c)); }

/// A volume in whole millilitres, the nearest.
std::int64_t ml(Volume v) { return divide(v.millionths, 1'000'000, Round::HalfUp); }

/// Square metres a litre, in ten-thousandths.
std::int64_t tenThousandths(Spread s) {
  return mulDiv(s.area.millionths, 10, s.volume.millionths, Round::HalfUp);
}

}  // namespace

TEST_CASE("US spreading rates are those of the handbook", "[estimate]") {
  // USDA Wood Handbook, FPL-GTR-190 (2010), ch. 16, p. 16-21: oil-based semitransparent stain, 200-400
  // ft2/gal on smooth wood (4.9-9.8 m2/L), 100-200 ft2/gal on rough or weathered wood (2.4-4.9 m2/L). Seen.
  struct Row {
    std::int64_t squareFeet, handbook, exact;  // ft2/gal; m2/L in ten-thousandths
  };
  for (const auto& [squareFeet, handbook, exact] :
       {Row{400, 98'000, 98'170}, Row{200, 49'000, 49'085}, Row{100, 24'000, 24'542}}) {
    const Spread rate = {{squareFeet * 92'903'040'000}, {3'785'411'784}};
    CHECK(tenThousandths(rate) == exact);
    CHECK(std::abs(tenThousandths(rate) - handbook) <= 600);  // the handbook cuts 2.454 to 2.4
  }
}

TEST_CASE("litres are area times coats over the spreading rate", "[estimate]") {
  // Recomputed for the rates of the Wood Handbook, FPL-GTR-190 (2010), ch. 16.
  struct Row {
    std::int64_t area, hundredths;  // m2; m2/L in hundredths
    int coats;
    std::int64_t millilitres;
  };
  for (const auto& [area, hundredths, coats, millilitres] :
       {Row{24, 980, 1, 2449}, Row{24, 240, 2, 20'000}, Row{60, 490, 2, 24'490}, Row{100, 245, 2, 81'633}}) {
    auto c = measuredCase(squareMetres(area));
    c.job.areas[0].rates = {{Area::whole(hundredths * 10'000), litres(1)}};
    c.job.areas[0].coats = coats;
    CHECK(ml(needOf(c).likely) == millilitres);
  }
}

TEST_CASE("185 square metres of old open boards take 38.5 litres in two coats", "[estimate]") {
  // Common practice, without a source: 8 m2/L first coat, 12 m2/L second on old, open-pored hardwood.
  auto c = measuredCase(squareMetres(185));
  const auto coats = coatsOf(c);
  REQUIRE(coats.size() == 2);
  CHECK(coats[0].litres == Volume{23'125'000'000});  // 185 / 8
  CHECK(coats[1].litres == Volume{15'416'666'667});  // 185 / 12, rounded up
  CHECK(coats[0].rateFrom == "product table, open");
  CHECK(ml(needOf(c).likely) == 38'542);
  // 12 and 18 on new, dense hardwood.
  c.job.areas[0].state = model::State::New;
  CHECK(ml(needOf(c).likely) == 25'694);  // 15.4167 + 10.2778
}

TEST_CASE("42 square metres at 5.6 take three packs of 2.5 litres and not four", "[estimate]") {
  auto c = measuredCase(squareMetres(42));
  c.job.areas[0].rates = {{Area{5'600'000'000'000}, litres(1)}};
  c.job.areas[0].coats = 1;
  model::Product p = sampleProduct();
  p.tins["nz"] = {{millilitres(2500), cents(118'00)}};
  c.product = &p;
  const auto need = needOf(c);
  CHECK(need.likely == millilitres(7500));
  REQUIRE(need.bought.tins.size() == 1);
  CHECK(need.bought.tins[0].count == 3);
  CHECK(need.leftOver == Volume{});
}

TEST_CASE("the last rate of a list serves all later coats", "[estimate]") {
  auto c = measuredCase(squareMetres(24));
  c.job.areas[0].coats = 4;
  const auto coats = coatsOf(c);
  REQUIRE(coats.size() == 4);
  for (const int n : {1, 2, 3}) CHECK(coats[static_cast<std::size_t>(n)].litres == litres(2));  // 24 / 12
}

TEST_CASE("the job's own rates beat the product's table", "[estimate]") {
  auto c = measuredCase(squareMetres(24));
  c.job.areas[0].rates = {spread(6)};
  const auto coats = coatsOf(c);
  CHECK(coats[0].litres == litres(4));
  CHECK(coats[1].litres == litres(4));
  CHECK(coats[1].rateFrom == "the job");
}

TEST_CASE("a test patch sets the first rate and scales the later ones", "[estimate]") {
  auto c = measuredCase(squareMetres(24));
  c.job.areas[0].testPatch = model::TestPatch{squareMetres(1), millilitres(200)};
  auto coats = coatsOf(c);
  CHECK(coats[0].litres == millilitres(4800));  // 24 x 0.2
  CHECK(coats[0].rateFrom == "test patch 1 m2 with 200 mL");
  CHECK(coats[1].litres == millilitres(3200));  // 5 m2/L x 12/8 = 7.5 m2/L
  CHECK(coats[1].rateFrom == "test patch, in the product's proportion");

  c.job.areas[0].rates = {spread(9), spread(27)};
  coats = coatsOf(c);
  CHECK(coats[0].litres == millilitres(4800));
  CHECK(coats[1].litres == millilitres(1600));  // 5 m2/L x 27/9 = 15 m2/L
  CHECK(coats[1].rateFrom == "test patch, in the job's proportion");
}

TEST_CASE("a test patch in US customary sizes stays exact", "[estimate]") {
  model::Region us = sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  auto c = measuredCase({100 * 92'903'040'000});  // 100 ft2
  c.region = &us;
  // 10 ft2 drank 4 fl oz: 320 ft2/gal, and 480 ft2/gal for the second coat.
  c.job.areas[0].testPatch = model::TestPatch{{10 * 92'903'040'000}, {118'294'118}};
  const auto coats = coatsOf(c);
  CHECK(coats[0].rateFrom == "test patch 10 ft2 with 4 fl oz");
  CHECK(coats[0].litres == Volume{1'182'941'180});  // 40 fl oz
  CHECK(coats[1].litres == Volume{788'627'454});    // two thirds of it, rounded up
}

TEST_CASE("a proportion too fine to hold is rounded towards more product", "[estimate]") {
  auto c = measuredCase(squareMetres(1000));
  c.job.areas[0].rates = {{{999'999'999'989}, {999'999'937}}, {{1'499'999'999'927}, {999'999'893}}};
  c.job.areas[0].testPatch = model::TestPatch{{999'999'999'959}, {124'999'991}};
  const auto coats = coatsOf(c);
  // 1000 m2 x 0.125 L/m2 / 1.5, up to the odd digits.
  CHECK(ml(coats[1].litres) == 83'333);
  const auto use = [](const Spread& s) {
    return static_cast<long double>(s.volume.millionths) / static_cast<long double>(s.area.millionths);
  };
  const auto& rates = c.job.areas[0].rates;
  const long double exact = 124'999'991.0L / 999'999'999'959.0L * use(rates[1]) / use(rates[0]);
  CHECK(use(coats[1].rate) / exact - 1 > -1e-17L);
  CHECK(coats[1].rate.area > Area{});
}

TEST_CASE("nothing is needed where no oil is asked for", "[estimate]") {
  auto c = sampleCase();
  c.job.work = {model::Work::Wash};
  c.product = nullptr;
  CHECK(coatsOf(c).empty());
  CHECK(needOf(c).bought.tins.empty());
}

TEST_CASE("loss and allowance are added, stock is taken off", "[estimate]") {
  auto c = measuredCase(squareMetres(48));  // 48/8 + 48/12 = 10 L
  c.job.loss = percent(5);
  c.job.allowance = percent(10);
  c.job.inStock = {{"sample-oil", millilitres(2500), 2}, {"another", litres(20), 3}};
  const auto need = needOf(c);
  CHECK(need.likely == millilitres(10'500));  // 10 x 1.05
  CHECK(need.low == millilitres(8925));       // x 85 %
  CHECK(need.high == millilitres(12'600));    // x 120 %
  CHECK(need.wanted == millilitres(11'550));  // x 1.10
  CHECK(need.fromStock == litres(5));         // two tins of this product only
  CHECK(need.toBuy == millilitres(6550));
  CHECK(need.bought.volume == millilitres(7500));  // 3 x 2.5 L = 354.00; 2 x 2.5 + 3 x 0.75 = 374.00
  CHECK(need.leftOver == millilitres(2000));       // 7.5 + 5 - 10.5
}

TEST_CASE("stock that covers the need leaves nothing to buy", "[estimate]") {
  auto c = measuredCase(squareMetres(48));
  c.job.inStock = {{"sample-oil", litres(20), 1}};
  const auto need = needOf(c);
  CHECK(need.fromStock == litres(20));  // the tin is opened
  CHECK(need.toBuy == Volume{});
  CHECK(need.bought.tins.empty());
  CHECK(need.leftOver == litres(10));
}

TEST_CASE("tins of the shed that are not needed stay closed", "[estimate]") {
  auto c = measuredCase(squareMetres(48));  // 10 L
  c.job.inStock = {{"sample-oil", litres(20), 1}, {"sample-oil", millilitres(2500), 5}};
  const auto need = needOf(c);
  // 32.5 L are there; without the large tin 12.5, without one small one 10
  CHECK(need.fromStock == litres(10));
  REQUIRE(need.opened.size() == 1);
  CHECK(need.opened[0].count == 4);
}

TEST_CASE("a finished deck that is sanded drinks as sanded boards do", "[estimate]") {
  auto c = sampleCase(sampleContent());
  for (auto& deck : c.job.areas) deck.rates.clear(), deck.testPatch.reset();
  c.job.areas[0].state = model::State::Film;
  c.job.work = {model::Work::Oil};
  const auto asItIs = coatsOf(c);
  c.job.work = {model::Work::Sand, model::Work::Oil};
  const auto sanded = coatsOf(c);
  c.job.areas[0].state = model::State::Sanded;
  c.job.work = {model::Work::Oil};
  CHECK(sanded[0].rateFrom == coatsOf(c)[0].rateFrom);
  CHECK(sanded[0].rateFrom != asItIs[0].rateFrom);
}

TEST_CASE("a test patch halves how far the need may fall below or above", "[estimate]") {
  auto c = measuredCase(squareMetres(48));
  c.job.areas[0].testPatch = model::TestPatch{squareMetres(1), millilitres(125)};  // 8 m2/L again
  auto need = needOf(c);
  CHECK(need.low == millilitres(9250));     // 10 L x (100 - 15/2) %
  CHECK(need.high == millilitres(11'000));  // 10 L x (100 + 20/2) %

  // Deck by deck: 10 L with a patch and 10 L without.
  c.job.areas.push_back(c.job.areas[0]);
  c.job.areas[1].testPatch.reset();
  need = needOf(c);
  CHECK(need.low == millilitres(17'750));   // 9.25 + 8.5
  CHECK(need.high == millilitres(23'000));  // 11 + 12
}
