// Tins of the shed: which are opened, which stay shut. Prices invented.
#include "estimate/shed.h"
#include "fixtures.h"

#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

const std::vector<model::Tin>& sold() { return sampleContent().products.at("sample-oil").tins.at("nz"); }

estimate::Shed shedFor(Volume need, std::vector<model::StockTin> shed, Share openedLoss) {
  return estimate::openShed(need, std::move(shed), sold(), openedLoss);
}

std::string words(const std::vector<model::StockTin>& tins) {
  std::string s;
  for (const auto& tin : tins)
    s += std::to_string(tin.count) + " x " + std::to_string(tin.size.millionths / 1'000'000) + " mL\n";
  return s;
}

}  // namespace

TEST_CASE("a large tin stays shut where small tins cost less than what its rest loses", "[estimate]") {
  const std::vector<model::StockTin> one = {{"sample-oil", litres(20), 1}};
  // 1.4 L of 20 L are 760.00 x 1.4 / 20 = 53.20, the rest 706.80, of which 10 % are 70.68: 123.88 against 2 x
  // 0.75 L = 92.00.
  auto shed = shedFor(millilitres(1400), one, percent(10));
  CHECK(words(shed.opened) == "");
  CHECK(words(shed.shut) == "1 x 20000 mL\n");
  // Where 5 % are lost it is 53.20 + 35.34 = 88.54.
  shed = shedFor(millilitres(1400), one, percent(5));
  CHECK(words(shed.opened) == "1 x 20000 mL\n");
  CHECK(words(shed.shut) == "");
  // 8 L: 304.00 + 45.60 against 2.5 L, three of them and 0.75 L: 400.00.
  CHECK(words(shedFor(litres(8), one, percent(10)).opened) == "1 x 20000 mL\n");
}

TEST_CASE("tins that the job empties are opened whatever a rest would lose", "[estimate]") {
  const std::vector<model::StockTin> tins = {{"sample-oil", millilitres(2500), 3},
                                             {"sample-oil", litres(20), 1}};
  // 5.4 L: of the third 2.5 L tin 0.4 L would be taken, 18.88, and 2.1 L left, of which all is lost: 118.00.
  // 0.75 L costs 46.00.
  const auto shed = shedFor(millilitres(5400), tins, percent(100));
  CHECK(words(shed.opened) == "2 x 2500 mL\n");
  CHECK(words(shed.shut) == "1 x 20000 mL\n1 x 2500 mL\n");
  CHECK(words(shedFor(litres(5), tins, percent(100)).opened) == "2 x 2500 mL\n");
  CHECK(words(shedFor(litres(60), tins, percent(100)).opened) == "1 x 20000 mL\n3 x 2500 mL\n");
  CHECK(shedFor(Volume{}, tins, percent(100)).opened.empty());
}

TEST_CASE("a size that is not sold costs its share of the smallest larger tin", "[estimate]") {
  CHECK(estimate::priceAgain(millilitres(2500), sold()) == cents(118'00));
  CHECK(estimate::priceAgain(litres(5), sold()) == cents(190'00));    // 760.00 x 5 / 20
  CHECK(estimate::priceAgain(litres(40), sold()) == cents(1520'00));  // 760.00 x 40 / 20
}
