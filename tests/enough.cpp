// Will the product do? Needs and prices invented.
#include "records/enough.h"
#include "estimate/estimate.h"
#include "fixtures.h"
#include "near.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace fixtures;

namespace {

model::CoatNeed coat(std::int64_t low, std::int64_t likely, std::int64_t high) {  // in millilitres
  model::CoatNeed need;
  need.low = base::millilitres(low);
  need.litres = base::millilitres(likely);
  need.high = base::millilitres(high);
  return need;
}

model::CoatNeed learned(std::int64_t likely, base::Share spread, int jobs) {
  model::CoatNeed need = coat(0, likely, 0);
  need.learnedSpread = spread;
  need.learnedFrom = jobs;
  return need;
}

/// In tenths of a per cent.
std::int64_t chance(std::int64_t have, const std::vector<model::CoatNeed>& coats, base::Share loss = {}) {
  return records::chanceOfMore(base::millilitres(have), coats, loss).millionths / 100'000;
}

}  // namespace

TEST_CASE("Student's t is that of the tables") {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values of Student's t; from memory,
  // three decimals.
  struct Row {
    int freedom;
    double share, t;
  };
  for (const auto& [freedom, share, t] :
       {Row{1, 0.95, 6.314}, Row{2, 0.95, 2.920}, Row{3, 0.95, 2.353}, Row{4, 0.95, 2.132},
        Row{5, 0.975, 2.571}, Row{10, 0.9, 1.372}, Row{10, 0.99, 2.764}, Row{30, 0.95, 1.697}}) {
    INFO(freedom);
    CHECK(records::studentShare(t - 0.0005, freedom) < share);
    CHECK(records::studentShare(t + 0.0005, freedom) > share);
    CHECK(records::studentShare(-t, freedom) == near(1 - records::studentShare(t, freedom)));
  }
  CHECK(records::studentShare(0, 7) == near(0.5));
}

TEST_CASE("the chance of running out is the tail of a triangle") {
  const std::vector<model::CoatNeed> coats = {coat(18'600, 21'880, 26'260)};
  // (26.26 - have)^2 / ((26.26 - 18.60) (26.26 - 21.88)): 14.1376 / 33.5508 and 1.5876 / 33.5508
  CHECK(chance(22'500, coats) == 421);
  CHECK(chance(25'000, coats) == 47);
  CHECK(chance(20'000, coats) == 922);  // 1 - (20 - 18.6)^2 / (7.66 * 3.28)
  CHECK(chance(26'260, coats) == 0);
  CHECK(chance(18'600, coats) == 1000);
  CHECK(chance(30'000, coats) == 0);
  // Coats of one job are thirsty together, so two halves are as one; and the loss comes on top.
  CHECK(chance(22'500, {coat(9300, 10'940, 13'130), coat(9300, 10'940, 13'130)}) == 421);
  CHECK(chance(23'625, coats, percent(5)) == 421);
}

TEST_CASE("where finished jobs taught the rate, their spread gives the chance") {
  // One job, 25 % apart: ln 1.25 x sqrt(1 + 1/2) = 0.2733; t of 3 degrees of freedom stays below 1.638 in
  // nine of ten (the same table): 10 L x e^(0.2733 x 1.638) = 15.65 L.
  CHECK(chance(10'000, {learned(10'000, percent(25), 1)}) == 500);
  CHECK(chance(15'650, {learned(10'000, percent(25), 1)}) == 100);
  // Eight jobs: ln 1.25 x sqrt(1 + 1/9) = 0.2352; 10 degrees of freedom, 1.372: 13.81 L.
  CHECK(chance(13'810, {learned(10'000, percent(25), 8)}) == 100);
  // What the firm knows of one coat narrows the whole.
  CHECK(chance(22'000, {learned(10'000, percent(5), 8), coat(8500, 10'000, 12'000)}) <
        chance(22'000, {coat(8500, 10'000, 12'000), coat(8500, 10'000, 12'000)}));
}

TEST_CASE("one more tin is the smallest that halves the chance, from the shed first") {
  auto c = sampleCase();  // 9.128 L: 4 x 2.5 L
  const auto enoughOf = [&] {
    const auto e = estimate::makeEstimate(c, sampleContent());
    return records::enoughFor(c, e, estimate::productNeed(c, e.coats));
  };
  auto enough = enoughOf();
  // 85 % to 120 %: 7.76, 9.13, 10.95 L: (10.954 - 10)^2 / (3.195 x 1.826) = 15.6 %; with 0.75 L 0.7 %
  CHECK(enough.chanceOfMore == base::Share{15'600'000});
  CHECK(enough.oneMore.size == base::millilitres(750));
  CHECK(enough.oneMore.price == cents(46'00));
  CHECK_FALSE(enough.isInShed);
  CHECK(enough.chanceWithOneMore == base::Share{700'000});

  c.job.inStock = {{"sample-oil", base::millilitres(2500), 5}};  // four are opened
  enough = enoughOf();
  CHECK(enough.chanceOfMore == base::Share{15'600'000});
  CHECK(enough.isInShed);
  CHECK(enough.oneMore.size == base::millilitres(2500));
  CHECK(enough.chanceWithOneMore == base::Share{});

  c.job.work = {model::Work::Wash};
  CHECK(enoughOf().chanceOfMore == base::Share{});
}
