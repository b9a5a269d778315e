#include "sheets/words/formatter.h"

#include "english.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace sheets;

namespace {

model::Region metric() {
  model::Region r;
  r.currencyDigits = 2;
  r.numbers.currencyBefore = "$";
  return r;
}

model::Region customary() {
  model::Region r = metric();
  r.units = model::UnitSystem::UsCustomary;
  r.monthFirst = true;
  return r;
}

/// No-break spaces made plain, so that the expected words can be read.
std::string plain(std::string s) {
  for (auto at = s.find("\u00A0"); at != std::string::npos; at = s.find("\u00A0")) s.replace(at, 2, " ");
  return s;
}

constexpr std::int64_t inch = 25'400'000;

}  // namespace

TEST_CASE("money prints all digits of the coin, grouped, with the sign of the currency") {
  const auto region = metric();
  const Formatter w(region, english());
  CHECK(w.money({868'610}) == "8,686.10");
  CHECK(w.signedMoney({868'610}) == "$8,686.10");
  CHECK(w.signedMoney({-5}) == "\u2212$0.05");
}

TEST_CASE("sizes print in the region's units") {
  const auto nz = metric(), us = customary();
  const Formatter m(nz, english()), c(us, english());
  CHECK(plain(m.length(base::millimetres(12'400))) == "12.40 m");
  CHECK(plain(m.size(base::millimetres(138))) == "138 mm");
  CHECK(plain(c.length({486 * inch})) == "40 ft 6 in");
  CHECK(plain(c.size({11 * inch / 2})) == "5 1\u20442 in");
  CHECK(plain(c.length({480 * inch})) == "40 ft");
  CHECK(plain(m.area(base::squareMetres(42))) == "42.00 m²");
  // As people say them; 'figures' has them exactly.
  CHECK(plain(m.roundArea(base::squareMetres(42))) == "42.0 m²");
  CHECK(plain(m.roundArea({300'000'000'000})) == "0.30 m²");
  CHECK(plain(m.roundArea({75'750'000'000'000})) == "75.8 m²");
  CHECK(plain(m.roundArea({99'949'000'000'000})) == "99.9 m²");
  CHECK(plain(m.roundArea({99'951'000'000'000})) == "100 m²");
  CHECK(plain(m.roundArea(base::squareMetres(1185))) == "1,185 m²");
  CHECK(plain(c.area({350LL * 92'903'040'000})) == "350.00 ft²");
  CHECK(plain(c.spread({{350LL * 92'903'040'000}, {3'785'411'784}})) == "350 ft²/gal");
  CHECK(plain(m.spread({base::squareMetres(8), base::litres(1)})) == "8 m²/L");
}

TEST_CASE("tins and temperatures print as they are called") {
  const auto nz = metric(), us = customary();
  const Formatter m(nz, english()), c(us, english());
  CHECK(plain(m.tinSize(base::millilitres(2500))) == "2.5 L");
  CHECK(plain(m.tinSize(base::litres(20))) == "20 L");
  CHECK(plain(c.tinSize({946'352'946})) == "1 qt");
  CHECK(plain(c.tinSize({5 * 3'785'411'784})) == "5 gal");
  CHECK(plain(m.temperature(base::Temperature::whole(35))) == "35 °C");
  CHECK(plain(c.temperature(base::Temperature::whole(35))) == "95 °F");  // 35 x 1.8 + 32
}

TEST_CASE("amounts of product print as people say them") {
  const auto nz = metric(), us = customary();
  const Formatter m(nz, english()), c(us, english());
  const auto ml = [](std::int64_t n) { return base::millilitres(n); };
  CHECK(plain(m.volume(ml(38'460))) == "38.5 L");
  CHECK(plain(m.volume(ml(1000))) == "1.0 L");
  CHECK(plain(m.volume(ml(996))) == "1.0 L");
  CHECK(plain(m.volume(ml(994))) == "990 mL");
  CHECK(plain(m.volume(ml(354))) == "350 mL");
  CHECK(plain(m.volume(ml(47))) == "47 mL");
  CHECK(plain(m.volume({1000})) == "1 mL");  // never 0.0 L of something
  CHECK(plain(m.volume({})) == "0.0 L");
  CHECK(plain(c.volume(base::litres(80))) == "21.1 gal");  // 21.13
  CHECK(plain(c.volume({3'785'411'784})) == "1.0 gal");
  CHECK(plain(c.volume(ml(1325))) == "1.4 qt");
  CHECK(plain(c.volume(ml(355))) == "12 fl oz");
}

TEST_CASE("a limit prints in whole degrees on its safe side") {
  const auto nz = metric(), us = customary();
  const Formatter m(nz, english()), c(us, english());
  const auto celsius = [](double degrees) { return base::Temperature{std::llround(degrees * 1'000'000)}; };
  CHECK(plain(c.leastTemperature(celsius(8))) == "47 °F");   // 46.4
  CHECK(plain(c.mostTemperature(celsius(32))) == "89 °F");   // 89.6
  CHECK(plain(c.leastTemperature(celsius(-3))) == "27 °F");  // 26.6
  CHECK(plain(c.mostTemperature(celsius(-3))) == "26 °F");
  CHECK(plain(c.leastTemperature(celsius(10))) == "50 °F");
  CHECK(plain(c.mostTemperature(celsius(35))) == "95 °F");
  CHECK(plain(c.leastTemperature(celsius(7.777778))) == "46 °F");  // read from '46 F': 7.777...
  CHECK(plain(c.mostTemperature(celsius(32.222222))) == "90 °F");  // from '90 F'
  CHECK(plain(m.leastTemperature(celsius(8))) == "8 °C");
  CHECK(plain(m.leastTemperature(celsius(7.777778))) == "7.8 °C");
  CHECK(plain(m.mostTemperature(celsius(32.222222))) == "32.2 °C");
  CHECK(plain(m.leastTemperature(celsius(7.22))) == "7.3 °C");
}

TEST_CASE("dates and times follow the region") {
  const auto nz = metric(), us = customary();
  const Formatter m(nz, english()), c(us, english());
  const auto d = *base::parseDate("2027-03-16");
  CHECK(plain(m.longDate(d)) == "Tuesday 16 March 2027");
  CHECK(plain(c.longDate(d)) == "Tuesday, March 16, 2027");
  CHECK(plain(m.shortDate(d)) == "Tue 16 Mar");
  CHECK(plain(c.shortDate(d)) == "Tue, Mar 16");
  CHECK(m.clock(450) == "07:30");
  CHECK(plain(c.clock(450)) == "7:30 am");
  CHECK(plain(c.clock(12 * 60)) == "12:00 pm");
  CHECK(plain(c.clock(5)) == "12:05 am");
}

TEST_CASE("waits are told in the unit a person would use") {
  const auto nz = metric();
  const Formatter w(nz, english());
  CHECK(plain(w.wait(base::Hours::whole(12))) == "12 hours");
  CHECK(plain(w.wait(base::Hours::whole(72))) == "3 days");
  CHECK(plain(w.wait(base::Hours::whole(336))) == "2 weeks");
  CHECK(plain(w.wait({1'500'000})) == "90 minutes");
  CHECK(plain(w.wait(base::Hours::whole(84))) == "84 hours");
  CHECK(plain(w.wait(base::Hours::whole(742))) == "31 days");  // 30.9, and never shorter
  CHECK(plain(w.wait(base::Hours::whole(98))) == "5 days");
  CHECK(plain(w.waitRange(base::Hours::whole(98), base::Hours::whole(742))) == "5 days to 30 days");
}

TEST_CASE("a time that is promised goes up to the half hour, over midnight too") {
  const auto day = base::parseDate("2027-04-05").value();
  const auto at = [&](int hour, int minute) { return upToHalfHour({day, hour * 60 + minute}); };
  CHECK(at(16, 55) == base::LocalTime{day, 17 * 60});
  CHECK(at(17, 0) == base::LocalTime{day, 17 * 60});
  CHECK(at(17, 1) == base::LocalTime{day, 17 * 60 + 30});
  CHECK(at(23, 45) == base::LocalTime{day + std::chrono::days{1}, 0});
}

TEST_CASE("a printed column of litres adds up to its printed sum") {
  constexpr std::int64_t step = 100'000'000;  // a tenth of a litre in nanolitres
  // 0.14 + 0.14 + 0.14 = 0.42 L prints as 0.4: each alone would round to 0.1, and one of them takes the rest
  const auto steps = apportioned({140'000'000, 140'000'000, 140'000'000}, step);
  CHECK(steps == std::vector<std::int64_t>{2, 1, 1});
}
