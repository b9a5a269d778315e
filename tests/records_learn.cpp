// Spreading rates learned from finished jobs: simulated jobs with known true rates. All figures invented.
#include "estimate/coverage.h"
#include "estimate/measure.h"
#include "fixtures.h"
#include "records/learn.h"

#include <catch2/catch.hpp>
#include <cmath>
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
    const auto learned = records::learn(jobs);
    REQUIRE(learned.size() == kinds.size());
    for (const auto& truth : kinds) {
      const auto found = std::find_if(learned.begin(), learned.end(),
                                      [&](const auto& one) { return one.kind == truth.kind; });
      CHECK(found->jobs == 20);
      CHECK(found->rate == Approx(truth.rate).epsilon(0.16));  // 3.5 standard errors of the widest spread
      CHECK(found->spread == Approx(std::exp(truth.spread) - 1).epsilon(0.8));
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
      const auto learned = records::learn(jobs);
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
  const auto learned = records::learn({plain(100, 20)});
  REQUIRE(learned.size() == 1);
  CHECK(learned[0].rate == Approx(6.3246).epsilon(1e-4));
  CHECK(learned[0].high / learned[0].rate == Approx(std::exp(1.959964 * 0.223144 / std::sqrt(2.0))));
  CHECK(learned[0].rate / learned[0].low == Approx(learned[0].high / learned[0].rate));
  CHECK(learned[0].jobs == 1);
}

TEST_CASE("many jobs that agree leave the table behind") {
  const std::vector<Observation> jobs(50, plain(100, 20));
  const auto learned = records::learn(jobs);
  CHECK(learned[0].rate == Approx(5).epsilon(0.002));
  CHECK(learned[0].spread < 0.06);  // the first guess weighs 3 of 52
}

TEST_CASE("jobs without litres teach nothing") {
  Observation none = plain(100, 20);
  none.litres = {};
  CHECK(records::learn({none}).empty());
  CHECK(records::learn({}).empty());
}

TEST_CASE("a learned rate comes after the job's own and a test patch, and before the product's table") {
  model::Case c = sampleCase();
  model::LearnedRate learned;
  learned.product = c.job.product;
  learned.timber = "hardwood";
  learned.state = model::State::Weathered;
  learned.coat = 1;
  learned.rate = {base::Area{7'523'000'000'000}, base::litres(1)};
  learned.jobs = 12;
  c.job.learnedRates = {learned};
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
