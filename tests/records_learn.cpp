// Spreading rates learned from finished jobs: simulated jobs with known true rates. All figures invented.
#include "estimate/coverage.h"
#include "estimate/measure.h"
#include "fixtures.h"
#include "input/read.h"
#include "near.h"
#include "records/learn.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <random>

namespace {

using namespace fixtures;
using records::Kind;
using records::Observation;

/// Normal numbers by Box and Muller's formula: the same on every machine, unlike the library's.
class Chance {
 public:
  explicit Chance(unsigned seed) : bits_(seed) {}
  double uniform() { return (static_cast<double>(bits_()) + 0.5) / 4294967296.0; }
  double normal() { return std::sqrt(-2 * std::log(uniform())) * std::cos(2 * std::acos(-1.0) * uniform()); }

 private:
  std::mt19937 bits_;
};

struct Truth {
  Kind kind;
  base::Spread table;
  double rate;    // m2/L
  double spread;  // between jobs, of the logarithm
};

/// The decks of this firm drink up to a quarter more or less than the table says.
std::vector<Truth> truths() {
  using model::State;
  return {{{"oil", "hardwood", State::New, 1}, spread(12), 11.2, 0.08},
          {{"oil", "hardwood", State::New, 2}, spread(18), 19.5, 0.10},
          {{"oil", "hardwood", State::Weathered, 1}, spread(8), 7.5, 0.12},
          {{"oil", "hardwood", State::Weathered, 2}, spread(12), 11.3, 0.12},
          {{"oil", "hardwood", State::Oiled, 1}, spread(12), 15.0, 0.15},
          {{"oil", "softwood", State::New, 1}, spread(10), 8.4, 0.10},
          {{"oil", "softwood", State::Weathered, 1}, spread(6), 5.1, 0.20},
          {{"oil", "softwood", State::Weathered, 2}, spread(9), 8.8, 0.15},
          {{"oil", "softwood", State::Sanded, 1}, spread(8), 9.2, 0.10},
          {{"oil", "softwood", State::Oiled, 1}, spread(10), 12.5, 0.12}};
}

Observation simulated(const Truth& truth, Chance& chance) {
  Observation o;
  o.kind = truth.kind;
  o.table = truth.table;
  o.lowUse = percent(85);
  o.highUse = percent(120);
  const double squareMetres = 10 + 140 * chance.uniform();
  const double litres = squareMetres / truth.rate * std::exp(truth.spread * chance.normal());
  o.wetted = base::Area{std::llround(squareMetres * 1e12)};
  o.litres = base::millilitres(std::llround(litres * 10) * 100);  // read off the tins to a tenth of a litre
  return o;
}

Observation plain(std::int64_t squareMetres, std::int64_t litresUsed) {
  return {{"oil", "hardwood", model::State::Weathered, 1},
          base::squareMetres(squareMetres),
          base::litres(litresUsed),
          spread(8),
          percent(80),
          percent(125)};
}

}  // namespace

TEST_CASE("200 simulated jobs give back the true rates within the stated interval nine times in ten") {
  int held = 0, all = 0;
  for (unsigned seed = 1; seed <= 20; ++seed) {
    Chance chance(seed);
    std::vector<Observation> jobs;
    const auto kinds = truths();
    for (std::size_t job = 0; job < 200; ++job) jobs.push_back(simulated(kinds[job % kinds.size()], chance));
    const auto learned = records::learn(jobs).rates;
    REQUIRE(learned.size() == kinds.size());
    for (const auto& truth : kinds) {
      const auto found = std::find_if(learned.begin(), learned.end(),
                                      [&](const auto& one) { return one.kind == truth.kind; });
      CHECK(found->jobs == 20);
      CHECK(found->rate == near(truth.rate).epsilon(0.16));  // 3.5 standard errors of the widest spread
      CHECK(found->spread == near(std::exp(truth.spread) - 1).epsilon(0.8));
      held += found->low <= truth.rate && truth.rate <= found->high ? 1 : 0;
      ++all;
    }
  }
  INFO(held << " of " << all);
  CHECK(held * 10 >= all * 9);
}

TEST_CASE("the interval holds nine times in ten after three jobs too") {
  int held = 0, all = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    Chance chance(100 + seed);
    for (const auto& truth : truths()) {
      std::vector<Observation> jobs;
      for (int job = 0; job < 3; ++job) jobs.push_back(simulated(truth, chance));
      const auto learned = records::learn(jobs).rates;
      held += learned[0].low <= truth.rate && truth.rate <= learned[0].high ? 1 : 0;
      ++all;
    }
  }
  INFO(held << " of " << all);
  CHECK(held * 10 >= all * 9);
}

TEST_CASE("one job counts as much as the product's table") {
  // ln(125 / 80) / 2 = 0.22314 is both the table's spread and the jobs'. The table says 8 m2/L, the job 100
  // m2 by 20 L = 5 m2/L: the mean of the logarithms is that of sqrt(8 x 5) = 6.3246, its spread 0.22314 /
  // sqrt(2). Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, eq. 2.11 and 2.12 with equal variances;
  // from memory.
  const auto learned = records::learn({plain(100, 20)}).rates;
  REQUIRE(learned.size() == 1);
  CHECK(learned[0].rate == near(6.3246).epsilon(1e-4));
  CHECK(learned[0].high / learned[0].rate ==
        near(std::exp(1.959964 * 0.223144 / std::sqrt(2.0))).margin(1e-6));
  CHECK(learned[0].rate / learned[0].low == near(learned[0].high / learned[0].rate));
  CHECK(learned[0].jobs == 1);
}

TEST_CASE("many jobs that agree leave the table behind") {
  const std::vector<Observation> jobs(50, plain(100, 20));
  const auto learned = records::learn(jobs).rates;
  CHECK(learned[0].rate == near(5).epsilon(0.002));
  // The first guess weighs as 3 jobs: 0.22314 x sqrt(3 / 52).
  CHECK(learned[0].spread == near(std::exp(0.223144 * std::sqrt(3.0 / 52)) - 1).margin(1e-6));
}

TEST_CASE("a wrong record is set aside, whether nine good ones stand beside it or none") {
  // 2.1 L on 20.79 m2 are 9.9 m2/L; somebody wrote 21 L. The table says 8.
  Observation good = plain(1, 1), wrong = good;
  good.wetted = wrong.wetted = base::Area{20'790'000'000'000};
  good.litres = base::millilitres(2100);
  wrong.litres = base::litres(21);
  wrong.records = {model::DoneCoat{}};
  std::vector<Observation> jobs(9, good);
  const double alone = records::learn(jobs).rates.at(0).rate;
  CHECK(alone > 9.8);
  jobs.insert(jobs.begin() + 4, wrong);
  const auto lesson = records::learn(jobs);
  CHECK(lesson.rates.at(0).rate == alone);
  CHECK(lesson.rates.at(0).jobs == 9);
  REQUIRE(lesson.setAside.size() == 1);
  CHECK_THAT(lesson.setAside[0].rate, Catch::WithinAbs(0.99, 1e-9));
  CHECK_THAT(lesson.setAside[0].usual, Catch::WithinAbs(9.9, 1e-9));
  CHECK(lesson.setAside[0].observation.records.size() == 1);
  for (const std::size_t n : {0U, 1U, 2U}) {
    jobs.assign(n, good);
    jobs.push_back(wrong);
    const auto few = records::learn(jobs);
    INFO(n << " good jobs");
    CHECK(few.setAside.size() == 1);
    CHECK(few.rates.size() == (n == 0 ? 0 : 1));
  }
}

TEST_CASE("boards that drink twice what the table says are learned as soon as two jobs agree") {
  CHECK(records::learn({plain(100, 30)}).setAside.size() == 1);  // 3.3 m2/L, where the table says 8
  const auto two = records::learn({plain(100, 30), plain(90, 26)});
  CHECK(two.setAside.empty());
  CHECK(two.rates.at(0).jobs == 2);
}

TEST_CASE("a job at half or twice the usual is kept, one beyond is set aside") {
  CHECK(records::learn({plain(100, 24)}).setAside.empty());  // 12.5 L by the table
  CHECK(records::learn({plain(100, 26)}).setAside.size() == 1);
  CHECK(records::learn({plain(100, 7)}).setAside.empty());
  CHECK(records::learn({plain(100, 6)}).setAside.size() == 1);
}

TEST_CASE("a table without a range counts as one of a twentieth") {
  Observation exact = plain(100, 20);
  exact.lowUse = exact.highUse = percent(100);
  const auto learned = records::learn({exact}).rates;
  CHECK(learned.at(0).high / learned.at(0).rate == near(std::exp(1.959964 * 0.05 / std::sqrt(2.0))));
}

TEST_CASE("among scattered jobs one lies far from three deviations of their median on") {
  // Logarithms about the table's 12.5 L for 100 m2: with 0, +-0.2 and +-0.4 the two outer ones make distances
  // whose median is 0.4. 3 x 1.4826 x 0.4 = 1.779: the median absolute deviation as a normal one, Rousseeuw
  // and Croux (1993), from memory.
  const auto setAside = [](double farthest) {
    std::vector<Observation> jobs;
    for (const double off : {-farthest, -0.4, -0.2, 0.2, 0.4, farthest}) {
      jobs.push_back(plain(100, 1));
      jobs.back().litres = base::millilitres(std::llround(12'500 * std::exp(off)));
    }
    return records::learn(jobs).setAside.size();
  };
  CHECK(setAside(1.75) == 0);
  CHECK(setAside(1.81) == 2);
}

TEST_CASE("sanded and unsanded boards of one state are two kinds") {
  Observation sanded = plain(100, 10);
  sanded.kind.isSanded = true;
  const auto rates = records::learn({plain(100, 12), sanded}).rates;
  REQUIRE(rates.size() == 2);
  CHECK(rates[0].rate < rates[1].rate);
}

TEST_CASE("jobs without litres teach nothing") {
  Observation none = plain(100, 20);
  none.litres = {};
  CHECK(records::learn({none}).rates.empty());
  CHECK(records::learn({}).rates.empty());
}

TEST_CASE("a learned rate comes after the job's own and a test patch, and before the product's table") {
  model::JobInputs c = sampleCase();
  model::LearnedRate learned;
  learned.product = c.job.product;
  learned.timber = "hardwood";
  learned.state = model::State::Weathered;
  learned.coat = 1;
  learned.rate = {base::Area{7'523'000'000'000}, base::litres(1)};
  learned.jobs = 12;
  learned.isSanded = true;  // as the sample job's work asks
  c.learnedRates = {learned};
  const auto first = [&] {
    return estimate::coatsOf(c, sampleContent(), 0, estimate::measureDeck(c.job.areas[0])).at(0);
  };
  const auto second = [&] {
    return estimate::coatsOf(c, sampleContent(), 0, estimate::measureDeck(c.job.areas[0])).at(1);
  };
  CHECK(first().rateFrom == "12 of your own jobs");
  CHECK(first().rate.area == learned.rate.area);
  CHECK_FALSE(first().uptake);
  CHECK(second().rateFrom == "product table, open");
  CHECK(second().rate.area.millionths == 12 * second().rate.volume.millionths * 1000);

  c.learnedRates[0].isSanded = false;
  CHECK(first().rateFrom == "product table, open");
  c.learnedRates[0].isSanded = true;

  c.job.areas[0].testPatch = model::TestPatch{base::squareMetres(1), base::millilitres(125)};
  CHECK(first().rateFrom.starts_with("test patch"));
  c.job.areas[0].testPatch.reset();
  c.job.areas[0].rates = {spread(9)};
  CHECK(first().rateFrom == "the job");
  c.job.areas[0].rates.clear();
  // Sanding takes the old oil off: such a deck is coated as sanded boards are, of which nothing is learned.
  c.job.areas[0].state = model::State::Oiled;
  CHECK(first().rateFrom == "product table, medium");
  CHECK(estimate::stateWhenCoated(c.job, c.job.areas[0]) == model::State::Sanded);
}

TEST_CASE("the range of a learned rate is the spread between the jobs it is from") {
  // 40 m2 by 8 m2/L are 5 L; 25 % spread: 5 / 1.25 = 4 L to 5 x 1.25 = 6.25 L.
  model::JobInputs c = sampleCase();
  model::LearnedRate learned;
  learned.product = c.job.product;
  learned.timber = "hardwood";
  learned.isSanded = true;
  learned.rate = spread(8);
  learned.spread = percent(25);
  learned.jobs = 3;
  c.learnedRates = {learned};
  const auto first = [&] {
    return estimate::coatsOf(c, sampleContent(), 0, estimate::measureDeck(c.job.areas[0])).at(0);
  };
  CHECK(first().low == base::litres(4));
  CHECK(first().high == base::millilitres(6250));
  c.learnedRates[0].spread = {};  // the product's 85 % to 120 %
  CHECK(first().low == base::millilitres(4250));
  CHECK(first().high == base::litres(6));
  c.job.loss = percent(10);
  const auto product = estimate::productNeed(c, {first()});
  CHECK(product.low == base::millilitres(4675));
  CHECK(product.high == base::millilitres(6600));
}

TEST_CASE("the file of learned rates gives rate, spread and whether the boards were sanded") {
  const auto file = std::filesystem::temp_directory_path() / "planksheaf-learned-rates.yaml";
  std::ofstream(file)
      << "rates:\n"
         "  - {product: sample-oil, timber: hardwood, state: weathered, coat: 1, rate: 8 m2/L, jobs: 2}\n"
         "  - {product: sample-oil, timber: hardwood, state: weathered, sanded: yes, coat: 1, rate: "
         "9.5 m2/L, low: 9 m2/L, high: 10 m2/L, spread: 12.5 %, jobs: 7}\n";
  base::Diagnostics messages;
  const auto rates = input::readLearnedRates(file.string(), sampleContent(), messages);
  std::filesystem::remove(file);
  REQUIRE(messages.ok());
  REQUIRE(rates.size() == 2);
  CHECK_FALSE((rates[0].isSanded || rates[0].spread));
  CHECK((rates[1].isSanded && rates[1].spread == base::Share{12'500'000}));
}
