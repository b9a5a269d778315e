#include "estimate/estimate.h"
#include "fixtures.h"

#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

// The sample rates load a cost by (1 + 12 % + 4 %) / (1 - 25 %) = 1.16 / 0.75.

/// The sample's landing, washed in a day.
model::JobInputs washCase() {
  model::JobInputs c = sampleCase();
  c.job.areas.pop_back();
  c.job.work = {model::Work::Wash};
  return c;
}

model::Resources resourcesFor(const model::JobInputs& c, int days) {
  return estimate::makeResources(c, sampleContent(), estimate::makeEstimate(c, sampleContent()), days);
}

model::Price priceOf(const model::JobInputs& c, int days) {
  return estimate::makePrice(c, sampleContent(), estimate::makeEstimate(c, sampleContent()),
                             resourcesFor(c, days));
}

std::string nameOf(model::LineKind kind) {
  switch (kind) {
    case model::LineKind::Work:
      return "work";
    case model::LineKind::Preparation:
      return "preparation";
    case model::LineKind::Product:
      return "product";
    case model::LineKind::Consumables:
      return "consumables";
    case model::LineKind::Travel:
      return "travel";
    case model::LineKind::Disposal:
      return "disposal";
  }
  return "?";
}

/// 'kind: quantity, amount', a line each, in hundredths.
std::string listing(const model::Price& p) {
  std::string text;
  for (const auto& l : p.lines)
    text += nameOf(l.kind) + (l.deck ? " " + std::to_string(*l.deck) : "") + ": " +
            std::to_string(l.quantity.millionths / 10'000) + ", " + std::to_string(l.amount.minor) + "\n";
  return text;
}

std::string payments(const model::Price& p) {
  std::string text;
  for (const auto& s : p.stages)
    text += std::to_string(s.share.millionths / 1'000'000) + " % '" + s.when + "' " +
            std::to_string(s.amount.minor) + "\n";
  return text;
}

}  // namespace

TEST_CASE("a quote's lines are loaded costs, rounded once", "[estimate]") {
  const auto p = priceOf(washCase(), 1);
  CHECK(listing(p) ==
        // 1.6 h x 40.00 = 64.00; x 1.16/0.75 = 98.987; by a rate of 2.47 a square metre it would be 98.80
        "work 0: 4000, 9899\n"
        // 1 h + 1.4 h = 2.4 h: 96.00 x 1.16/0.75
        "preparation: 100, 14848\n"
        // film 18.00 + 2 L of cleaner 29.00 = 47.00 x 1.16/0.75 = 72.693
        "consumables: 100, 7269\n"
        // 95.00 + 1 h = 135.00 x 1.16/0.75
        "travel: 100, 20880\n"
        // 60.00 x 1.16/0.75
        "disposal: 100, 9280\n");
  CHECK(p.subtotal == cents(621'76));  // 402.00 x 1.16/0.75 = 621.76
  CHECK(p.net == p.subtotal);
  CHECK(p.tax == cents(93'26));  // 15 % of 621.76 = 93.264
  CHECK(p.total == cents(715'02));
}

TEST_CASE("the office sees costs and the margin that is reached", "[estimate]") {
  const auto p = priceOf(washCase(), 1);
  CHECK(p.labourCost == cents(200'00));  // 64.00 + 96.00 + 40.00
  CHECK(p.productCost == cents(0));
  CHECK(p.consumableCost == cents(47'00));
  CHECK(p.otherCost == cents(155'00));       // travel 95.00 + disposal 60.00
  CHECK(p.overheadCost == cents(48'24));     // 12 % of 402.00
  CHECK(p.contingencyCost == cents(16'08));  // 4 % of 402.00
  CHECK(p.cost == cents(466'32));
  CHECK(p.marginReached == percent(25));  // (621.76 - 466.32) / 621.76: the margin asked for
}

TEST_CASE("a discount comes off before tax and out of the margin", "[estimate]") {
  auto c = washCase();
  c.job.price.discount = percent(10);
  const auto p = priceOf(c, 1);
  CHECK(p.subtotal == cents(621'76));
  CHECK(p.discount == cents(62'18));  // 62.176
  CHECK(p.net == cents(559'58));
  CHECK(p.tax == cents(83'94));  // 83.937
  CHECK(p.total == cents(643'52));
  CHECK(p.marginReached == Share{16'666'071});  // (559.58 - 466.32) / 559.58
}

TEST_CASE("tax by the line counts the discount as a line below zero", "[estimate]") {
  model::Region r = sampleRegion();
  r.tax.onLines = true;
  auto c = washCase();
  c.region = &r;
  c.job.price.discount = percent(10);
  // 98.99, 148.48, 72.69, 208.80, 92.80 and -62.18 at 15 %: 14.85 + 22.27 + 10.90 + 31.32 + 13.92 - 9.33
  CHECK(priceOf(c, 1).tax == cents(83'93));
  c.job.price.tax = percent(0);
  CHECK(priceOf(c, 1).tax == cents(0));
}

TEST_CASE("the job's margin beats the firm's", "[estimate]") {
  auto c = washCase();
  c.job.price.margin = percent(50);
  CHECK(priceOf(c, 1).lines[1].amount == cents(222'72));  // 96.00 x 1.16 / 0.5
}

TEST_CASE("a raise is on every line, rounded with it once", "[estimate]") {
  auto c = washCase();
  c.job.price.raise = percent(4);
  const auto p = priceOf(c, 1);
  CHECK(listing(p) ==
        "work 0: 4000, 10295\n"      // 64.00 x 1.16/0.75 x 1.04 = 102.946
        "preparation: 100, 15442\n"  // 96.00: 154.419
        "consumables: 100, 7560\n"   // 47.00: 75.601; 4 % on the rounded 72.69 is 75.598
        "travel: 100, 21715\n"       // 135.00: 217.152
        "disposal: 100, 9651\n");    // 60.00: 96.512
  CHECK(p.cost == cents(466'32));    // what it costs stays
}

TEST_CASE("deposit, stages and the rest on hand-over make up the total", "[estimate]") {
  auto c = washCase();  // total 715.02
  c.job.price.deposit = percent(10);
  CHECK(payments(priceOf(c, 1)) ==
        "10 % '' 7150\n"  // 71.502
        "90 % '' 64352\n");
  c.job.price.stages = {{percent(40), "after the wash"}, {percent(30), "after the first coat"}};
  CHECK(payments(priceOf(c, 1)) ==
        "10 % '' 7150\n"
        "40 % 'after the wash' 28601\n"        // 286.008
        "30 % 'after the first coat' 21451\n"  // 214.506
        "20 % '' 14300\n");                    // the rest
  c.job.price.stages[1].share = percent(50);
  CHECK(payments(priceOf(c, 1)) ==
        "10 % '' 7150\n"
        "40 % 'after the wash' 28601\n"
        "50 % 'after the first coat' 35751\n");  // nothing is left for hand-over
  c.job.price.stages[0].share = percent(95);
  CHECK(payments(priceOf(c, 1)) ==
        "10 % '' 7150\n"
        "90 % 'after the wash' 64352\n");
  c.job.price.stages.clear();
  c.job.price.deposit = {};
  CHECK(payments(priceOf(c, 1)) == "100 % '' 71502\n");
}

TEST_CASE("three payments whose shares make the whole leave no coin unpaid", "[estimate]") {
  auto c = washCase();
  c.rates.travelPerDay = cents(95'01);    // 135.01 x 1.16/0.75 = 208.82
  c.rates.disposalPerJob = cents(60'01);  // 92.82: 621.80 before tax
  c.job.price.deposit = percent(10);
  c.job.price.stages = {{percent(45), "after the wash"}, {percent(45), "on completion"}};
  const auto p = priceOf(c, 1);
  REQUIRE(p.total == cents(715'07));
  CHECK(payments(p) ==
        "10 % '' 7150\n"                  // 71.507, down
        "45 % 'after the wash' 32178\n"   // 321.7815
        "45 % 'on completion' 32179\n");  // the rest
}

TEST_CASE("a deposit never passes its share by a broken coin", "[estimate]") {
  auto c = washCase();
  c.job.price.deposit = percent(15);
  CHECK(priceOf(c, 1).deposit == cents(107'25));  // 15 % of 715.02 = 107.253
  c.job.price.deposit = percent(25);
  CHECK(priceOf(c, 1).deposit == cents(178'75));  // 178.755 would be rounded to 178.76
  c.job.price.deposit = percent(20);
  CHECK(priceOf(c, 1).deposit == cents(143'00));  // 143.004
  c.job.price.deposit = percent(8);
  CHECK(priceOf(c, 1).deposit == cents(57'20));  // 57.2016
  c.job.price.deposit = percent(1);
  CHECK(priceOf(c, 1).deposit == cents(7'15));  // 7.1502
  c.job.price.deposit = percent(3);
  CHECK(priceOf(c, 1).deposit == cents(21'45));  // 21.4506
}

TEST_CASE("options are shown with their tax", "[estimate]") {
  auto c = washCase();
  c.job.price.options = {{"Handrail", cents(620'00)}, {"Planters", cents(99'99)}};
  const auto p = priceOf(c, 1);
  REQUIRE(p.options.size() == 2);
  CHECK(p.options[0] == cents(713'00));  // 620.00 + 93.00
  CHECK(p.options[1] == cents(114'99));  // 99.99 + 14.9985
  CHECK(p.subtotal == cents(621'76));    // not in the price
}

TEST_CASE("the full job has a line for each work, the product and each cost", "[estimate]") {
  const auto p = priceOf(sampleCase(), 3);
  // 40/8 + 40/12 on the landing, 2.16/10 + 2.16/15 on the steps, 5 % loss: 9.128 L: 4 x 2.5 L = 472.00; 3
  // x 2.5 + 3 x 0.75 = 492.00
  CHECK(listing(p) ==
        "work 0: 4000, 9899\n"
        "work 0: 4000, 123733\n"     // 2000 nails: 20 h: 800.00 x 1.16/0.75
        "work 0: 4000, 58979\n"      // 4.333333 h + 5.2 h: 381.33 x 1.16/0.75
        "work 0: 4000, 33408\n"      // 2 x (0.7 h + 2 h): 216.00 x 1.16/0.75
        "work 1: 216, 445\n"         // 0.072 h: 2.88 x 1.16/0.75
        "work 1: 216, 2450\n"        // 0.396 h: 15.84 x 1.16/0.75
        "work 1: 216, 3192\n"        // 0.516 h: 20.64 x 1.16/0.75
        "preparation: 100, 16704\n"  // 1 h + 1.7 h: 108.00 x 1.16/0.75
        "product: 1000, 73003\n"     // 472.00 x 1.16/0.75
        "consumables: 100, 10915\n"  // 18.00 + 30.57 + 2 x 11.00 = 70.57 x 1.16/0.75
        "travel: 300, 62640\n"       // 3 x 95.00 + 3 h = 405.00 x 1.16/0.75
        "disposal: 100, 9280\n");
  CHECK(p.lines[1].unit == model::LineUnit::Area);  // never by the piece
  CHECK(p.lines[1].work == model::Work::Fix);
  CHECK(p.lines[8].unit == model::LineUnit::Volume);
}

TEST_CASE("a tin from the shed is worth what it costs to replace", "[estimate]") {
  auto c = sampleCase();
  const auto bought = priceOf(c, 3);  // 4 x 2.5 L at 118.00
  c.job.inStock = {{"sample-oil", millilitres(2500), 1}};
  CHECK(priceOf(c, 3).productCost == bought.productCost);  // 3 bought and one from the shed
  CHECK(priceOf(c, 3).total == bought.total);
  c.job.inStock = {{"sample-oil", litres(5), 2}};
  // a size that is not sold: 5/20 of the 20 L tin at 760.00 = 190.00 each; 9.128 of the 10 L
  CHECK(priceOf(c, 3).productCost == cents(346'86));
}

TEST_CASE("what the job leaves in the tins of the shed is not billed", "[estimate]") {
  auto c = sampleCase();
  c.job.areas = {sampleSteps()};  // 2.16/10 + 2.16/15 = 0.36 L, 5 % loss: 0.378 L
  c.job.allowance = percent(10);  // 0.4158 L
  c.job.inStock = {{"sample-oil", litres(20), 1}};
  const auto need = resourcesFor(c, 1).product;
  CHECK(need.fromStock == litres(20));  // opened
  CHECK(need.drawn == Volume{415'800'000});
  const auto p = priceOf(c, 1);
  CHECK(p.productCost == cents(15'80));  // 760.00 x 0.4158 / 20 = 15.8004
  for (const auto& line : p.lines) {
    if (line.kind == model::LineKind::Product) CHECK(line.quantity == Count{420'000});  // 0.42 L
  }
  c.job.allowance = percent(7);  // 0.40446 L
  for (const auto& line : priceOf(c, 1).lines) {
    if (line.kind == model::LineKind::Product) CHECK(line.quantity == Count{400'000});
  }
  c = sampleCase();
  c.job.inStock = {{"sample-oil", litres(5), 1}};
  const auto part = priceOf(c, 3);  // 5 L from the shed, 4.128 L to buy: 2 x 2.5 L
  CHECK(part.productCost == cents(190'00 + 2 * 118'00));
}

TEST_CASE("tins in the shed never make a job dearer than tins bought for all of it", "[estimate]") {
  auto c = sampleCase();  // 9.128 L
  const auto bought = priceOf(c, 3).productCost;
  for (const auto size : {base::millilitres(750), base::millilitres(2500), litres(20)}) {
    for (int count = 1; count <= 4; ++count) {
      c.job.inStock = {{"sample-oil", size, count}};
      CHECK(priceOf(c, 3).productCost <= bought);
    }
  }
}

TEST_CASE("a job in US customary units is priced by the square foot", "[estimate]") {
  model::Region us = sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  auto c = washCase();
  c.region = &us;
  const auto line = priceOf(c, 1).lines.front();
  CHECK(line.quantity == Count{430'560'000});  // 40 m2 / 0.09290304 = 430.556
  CHECK(line.amount == cents(98'99));          // by a rate of 0.23 it would be 99.03
}

TEST_CASE("a job without a plan has no travel line yet", "[estimate]") {
  for (const auto& line : priceOf(sampleCase(), 0).lines) CHECK(line.kind != model::LineKind::Travel);
}

TEST_CASE("the costs of the lines are the costs of the job", "[estimate]") {
  const auto p = priceOf(sampleCase(), 3);
  Money lines;
  for (const auto& line : p.lines) lines += line.cost;
  CHECK(lines == p.labourCost + p.productCost + p.consumableCost + p.otherCost);
  CHECK(p.cost == lines + p.overheadCost + p.contingencyCost);
}
