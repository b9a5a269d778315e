// What must hold for any job, tried on a few thousand random ones. The seed is fixed: a failure comes again.
#include "estimate/estimate.h"
#include "fixtures.h"
#include "model/lookup.h"
#include "random_cases.h"

#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

std::int64_t within(std::int64_t from, std::int64_t to) { return *rc::gen::inRange(from, to + 1); }
bool flip() { return within(0, 1) == 1; }
template <class T>
T anyOf(std::initializer_list<T> values) {
  return *rc::gen::elementOf(std::vector<T>(values));
}
/// A share in hundredths of a percent.
Share shareWithin(std::int64_t from, std::int64_t to) { return {within(from * 100, to * 100) * 10'000}; }

model::Shape anyShape() {
  const auto length = [](std::int64_t most) { return millimetres(within(300, most)); };
  switch (within(0, 5)) {
    case 0:
      return model::Rectangle{length(30'000), length(30'000)};
    case 1:
      return model::Circle{length(20'000)};
    case 2:
      return model::Stairs{static_cast<int>(within(1, 20)), length(3000), length(400), millimetres(170)};
    case 3:
      return model::Strip{length(40'000), length(600)};
    case 4:
      return model::Screen{length(9000), length(2400), 2, shareWithin(20, 100)};
    default:
      return model::Measured{Area{within(1'000'000'000, 900'000'000'000'000)}, {}};
  }
}

model::Deck anyDeck() {
  model::Deck d = sampleDeck();
  d.shape = anyShape();
  d.timber = flip() ? "hardwood" : "softwood";
  d.state = anyOf({model::State::New, model::State::Weathered, model::State::Sanded, model::State::Oiled});
  d.coats = static_cast<int>(within(1, 4));
  if (flip()) {
    d.boards =
        model::Boards{millimetres(within(60, 200)), millimetres(within(0, 12)), millimetres(within(15, 50))};
    d.boards->wetted = anyOf({model::Wetted::Top, model::Wetted::TopAndEdges, model::Wetted::AllFaces});
    d.boards->face = anyOf({model::BoardFace::Smooth, model::BoardFace::Reeded});
  } else {
    d.boards.reset();
  }
  if (flip()) d.rates = {{Area{within(2'000'000'000'000, 30'000'000'000'000)}, litres(1)}};
  if (flip())
    d.testPatch =
        model::TestPatch{{within(100'000'000'000, 9'000'000'000'000)}, millilitres(within(20, 2000))};
  return d;
}

/// A job and the content it points into.
struct World {
  model::Content content = sampleContent();
  model::JobInputs job;
};

void fill(World& w) {
  w.content.products["sample-oil"].openedLoss = shareWithin(0, 100);
  auto& tins = w.content.products["sample-oil"].tins["nz"];
  for (auto& tin : tins) tin.price = cents(within(0, 900'00));
  auto& region = w.content.regions["nz"];
  region.tax.rate = shareWithin(0, 27);
  region.tax.onLines = flip();
  region.tax.rounding = anyOf({Round::HalfUp, Round::HalfDown, Round::HalfEven, Round::Down, Round::Up});
  region.units = anyOf({model::UnitSystem::Metric, model::UnitSystem::UsCustomary});

  w.job = sampleCase(w.content);
  model::Job& j = w.job.job;
  j.areas.clear();
  for (auto n = within(1, 4); n > 0; --n) j.areas.push_back(anyDeck());
  j.work.clear();
  for (const auto work : {model::Work::Wash, model::Work::Fix, model::Work::Sand, model::Work::Oil}) {
    if (flip()) j.work.push_back(work);
  }
  j.loss = shareWithin(0, 20);
  j.allowance = shareWithin(0, 20);
  for (auto n = within(0, 2); n > 0; --n)
    j.inStock.push_back(
        {flip() ? "sample-oil" : "another", millilitres(2500), static_cast<int>(within(0, 9))});
  j.price.discount = shareWithin(0, 100);
  j.price.deposit = shareWithin(0, 60);
  for (auto n = within(0, 3); n > 0; --n) j.price.stages.push_back({shareWithin(1, 50), "then"});
  if (flip()) j.price.margin = shareWithin(0, 90);
  w.job.rates = {cents(within(0, 150'00)), cents(within(0, 300'00)), cents(within(0, 90'00)),
                 shareWithin(0, 40),       shareWithin(0, 20),       cents(78'00),
                 shareWithin(0, 60)};
}

template <class Property>
void holdsForAnyJob(Property property) {
  holdsAlways(1500,
              [&] {
                World w;
                fill(w);
                const int days = static_cast<int>(within(0, 9));
                const auto e = estimate::makeEstimate(w.job, w.content);
                const auto r = estimate::makeResources(w.job, w.content, e, days);
                const auto& job = w.job.job;
                RC_CLASSIFY(job.areas.size() > 1, "several areas");
                RC_CLASSIFY(!e.coats.empty(), "oiled");
                RC_CLASSIFY(!r.product.fromStock.isZero(), "from the shed");
                RC_CLASSIFY(!job.price.stages.empty(), "stages");
                RC_CLASSIFY(w.job.region->tax.onLines, "tax on lines");
                property(w, e, r, estimate::makePrice(w.job, w.content, e, r));
              },
              {"several areas", "oiled", "from the shed", "stages", "tax on lines"});
}

}  // namespace

TEST_CASE("for any job the lines add up and each is its loaded cost", "[estimate]") {
  holdsForAnyJob([](const World& w, const model::Estimate&, const model::Resources&, const model::Price& p) {
    Money sum, cost;
    for (const auto& line : p.lines) {
      RC_ASSERT(line.quantity.millionths > 0);
      RC_ASSERT(line.quantity.millionths % 10'000 == 0);
      // Twice the error is at most a coin: rounded once, to the nearest.
      const auto& rates = w.job.rates;
      const Share margin = w.job.job.price.margin.value_or(rates.margin);
      const Wide loaded = 100'000'000 + rates.overhead.millionths + rates.contingency.millionths,
                 kept = 100'000'000 - margin.millionths;
      const Wide error = loaded * line.cost.minor - kept * line.amount.minor;
      RC_ASSERT(2 * error <= kept && 2 * error >= -kept);
      sum += line.amount;
      cost += line.cost;
    }
    RC_ASSERT(sum == p.subtotal);
    RC_ASSERT(p.net == p.subtotal - p.discount);
    RC_ASSERT(p.total == p.net + p.tax);
    RC_ASSERT(p.discount.minor >= 0 && p.discount <= p.subtotal);
    RC_ASSERT(cost == p.labourCost + p.productCost + p.consumableCost + p.otherCost);
    RC_ASSERT(p.cost == cost + p.overheadCost + p.contingencyCost);
  });
}

TEST_CASE("for any job the payments make up the total", "[estimate]") {
  holdsForAnyJob([](const World&, const model::Estimate&, const model::Resources&, const model::Price& p) {
    Money sum;
    Share shares;
    for (const auto& stage : p.stages) {
      RC_ASSERT(stage.amount.minor >= 0);
      sum += stage.amount;
      shares += stage.share;
    }
    RC_ASSERT(sum == p.total);
    RC_ASSERT(shares == Share::whole(100));
    RC_ASSERT(p.deposit.minor >= 0 && p.deposit <= p.total);
    RC_ASSERT(p.deposit.minor == 0 || p.stages.front().amount == p.deposit);
  });
}

TEST_CASE("for any job enough is bought and not a tin too many", "[estimate]") {
  holdsForAnyJob(
      [](const World& w, const model::Estimate& e, const model::Resources& r, const model::Price&) {
        const auto& p = r.product;
        for (const auto& coat : e.coats) RC_ASSERT(coat.litres > Volume{});
        for (const Volume v : {p.low, p.likely, p.high, p.wanted, p.fromStock, p.toBuy, p.leftOver})
          RC_ASSERT(v >= Volume{});
        RC_ASSERT(p.low <= p.likely && p.likely <= p.high && p.likely <= p.wanted);
        RC_ASSERT(p.bought.volume + p.fromStock >= p.wanted);
        RC_ASSERT(p.leftOver == p.bought.volume + p.fromStock - p.likely);
        Volume held;
        for (const auto& t : p.bought.tins) held += t.tin.size * t.count;
        RC_ASSERT(held == p.bought.volume);
        // Without any one of its tins the set would be too small.
        for (const auto& t : p.bought.tins) RC_ASSERT(p.bought.volume - t.tin.size < p.toBuy);
        RC_ASSERT(e.coats.empty() != model::asksFor(w.job.job.work, model::Work::Oil));
      });
}

TEST_CASE("for any job every hour is charged once", "[estimate]") {
  holdsForAnyJob(
      [](const World& w, const model::Estimate&, const model::Resources& r, const model::Price& p) {
        Hours hours;
        for (const auto& line : r.labour) {
          RC_ASSERT(line.hours > Hours{});
          hours += line.hours;
        }
        RC_ASSERT(hours == r.labourHours);
        // Each line of the quote rounds its labour to the cent once.
        const Wide exact = Wide{hours.millionths} * w.job.rates.labourCostPerHour.minor;
        const Wide error = Wide{p.labourCost.minor} * 1'000'000 - exact;
        const auto most = static_cast<Wide>(p.lines.size()) * 500'000;
        RC_ASSERT(error <= most && error >= -most);
      });
}
