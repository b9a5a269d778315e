// Costs become the lines of a quote: each line's cost is rounded once to whole coins, loaded with overhead,
// contingency and margin, and rounded once more to what the customer pays.
#include "base/quantity_words.h"
#include "estimate/consumer_rules.h"
#include "estimate/estimate.h"
#include "estimate/shed.h"
#include "estimate/tins.h"
#include "model/lookup.h"

#include <algorithm>

namespace estimate {
namespace {

using base::Count;
using base::divide;
using base::Hours;
using base::Money;
using base::mulDiv;
using base::Round;
using base::Share;
using base::Wide;

constexpr std::int64_t wholeShare = 100'000'000;  // 100 % in millionths
constexpr std::int64_t one = 1'000'000;           // in millionths

class Pricer {
 public:
  Pricer(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
         const model::Resources& r)
      : c_(c), content_(content), e_(e), r_(r), margin_(c.job.price.margin.value_or(c.rates.margin)) {}

  model::Price price() {
    addWork();
    addPreparation();
    addProduct();
    addConsumables();
    addTravel();
    if (c_.rates.disposalPerJob > Money{}) {
      price_.otherCost += c_.rates.disposalPerJob;
      add(model::LineKind::Disposal, Count::whole(1), model::LineUnit::Lot, c_.rates.disposalPerJob);
    }
    addTotals();
    addPayments();
    addCosts();
    return std::move(price_);
  }

 private:
  model::PriceLine& add(model::LineKind kind, Count quantity, model::LineUnit unit, Money cost) {
    model::PriceLine line;
    line.kind = kind;
    line.quantity = quantity;
    line.unit = unit;
    line.cost = cost;
    // amount = cost x (1 + overhead + contingency) x (1 + raise) / (1 - margin)
    const Wide loaded = wholeShare + c_.rates.overhead.millionths + c_.rates.contingency.millionths;
    const Wide raised = wholeShare + c_.job.price.raise.millionths;
    const Wide kept = wholeShare - margin_.millionths;
    line.amount = {divide(loaded * raised * cost.minor, kept * wholeShare, Round::HalfUp)};
    price_.subtotal += line.amount;
    return price_.lines.emplace_back(line);
  }

  Money labour(Hours hours) {
    const Money cost = {mulDiv(c_.rates.labourCostPerHour.minor, hours.millionths, one, Round::HalfUp)};
    price_.labourCost += cost;
    return cost;
  }

  template <class Belongs>
  Hours hoursOf(Belongs belongs) const {
    Hours hours;
    for (const auto& line : r_.labour) {
      if (belongs(line, taskOf(content_, line.task))) hours += line.hours;
    }
    return hours;
  }

  void addWork() {
    for (std::size_t deck = 0; deck < e_.decks.size(); ++deck) {
      for (const model::Work work : c_.job.work) {
        const Hours hours = hoursOf([&](const model::LabourLine& line, const model::Task& task) {
          return line.deck == deck && task.work == work;
        });
        if (hours.isZero()) continue;
        const model::Measures& m = e_.decks[deck];
        auto& line = add(model::LineKind::Work, printedArea(m.area), model::LineUnit::Area, labour(hours));
        line.deck = deck;
        line.work = work;
      }
    }
  }

  /// In the region's unit, to two decimals, at least 0.01.
  Count printedArea(base::Area area) const {
    const bool isUs = c_.region->units == model::UnitSystem::UsCustomary;
    const std::int64_t exact = isUs ? base::inSquareFeet(area) : base::inSquareMetres(area);
    return {std::max<std::int64_t>(1, divide(exact, 10'000, Round::HalfUp)) * 10'000};
  }

  /// Everything that is neither one kind of work on one deck nor done anew each day.
  void addPreparation() {
    const Hours hours = hoursOf([](const model::LabourLine& line, const model::Task& task) {
      return task.measure != model::Measure::Day && !(line.deck && task.work);
    });
    if (hours.isZero()) return;
    add(model::LineKind::Preparation, Count::whole(1), model::LineUnit::Lot, labour(hours));
  }

  /// The tins bought, whole, and what the job needs of those in the shed, as one amount by volume.
  void addProduct() {
    const auto& need = r_.product;
    const auto& sold = c_.product->tins.at(c_.job.site.region);
    Money shed;
    for (const auto& tin : need.opened) shed += priceAgain(tin.size, sold) * tin.count;
    if (!need.fromStock.isZero())
      shed = {mulDiv(shed.minor, need.drawn.millionths, need.fromStock.millionths, Round::HalfUp)};
    // Tins in the shed never make a job dearer than tins bought for all of it.
    const Money alone = cheapestTins(need.wanted, sold).cost;
    price_.productCost = need.bought.cost + std::min(shed, std::max(Money{}, alone - need.bought.cost));
    const base::Volume volume = need.bought.volume + need.drawn;
    if (volume.isZero()) return;
    add(model::LineKind::Product, printedVolume(volume), model::LineUnit::Volume, price_.productCost);
  }

  Count printedVolume(base::Volume volume) const {
    constexpr std::int64_t litre = 1'000'000'000,
                           gallon = 3'785'411'784;  // NIST SP 811 (2008), App. B.8: exact
    const std::int64_t unit = c_.region->units == model::UnitSystem::UsCustomary ? gallon : litre;
    return {std::max<std::int64_t>(1, divide(Wide{volume.millionths} * 100, unit, Round::HalfUp)) * 10'000};
  }

  void addConsumables() {
    for (const auto& line : r_.consumables) price_.consumableCost += line.cost;
    if (price_.consumableCost == Money{}) return;
    add(model::LineKind::Consumables, Count::whole(1), model::LineUnit::Lot, price_.consumableCost);
  }

  void addTravel() {
    if (r_.crewDays == 0) return;
    const Hours hours = hoursOf([](const model::LabourLine&, const model::Task& task) {
      return task.measure == model::Measure::Day;
    });
    const Money travel = c_.rates.travelPerDay * r_.crewDays;
    price_.otherCost += travel;
    const Money cost = travel + labour(hours);
    if (cost == Money{}) return;
    add(model::LineKind::Travel, Count::whole(r_.crewDays), model::LineUnit::Days, cost);
  }

  model::TaxRule taxRule() const {
    model::TaxRule rule = c_.region->tax;
    rule.rate = c_.job.price.tax.value_or(rule.rate);
    return rule;
  }

  void addTotals() {
    price_.discount = share(price_.subtotal, c_.job.price.discount);
    price_.net = price_.subtotal - price_.discount;
    std::vector<Money> net;
    for (const auto& line : price_.lines) net.push_back(line.amount);
    net.push_back(Money{} - price_.discount);
    price_.tax = tax(net, taxRule());
    price_.total = price_.net + price_.tax;
    for (const auto& option : c_.job.price.options)
      price_.options.push_back(option.price + tax({option.price}, taxRule()));
  }

  /// Deposit, stages and the rest on hand-over. Each is rounded; the last takes what is left.
  void addPayments() {
    Share shareLeft = Share::whole(100);
    Money left = price_.total;
    const auto pay = [&](Share part, const std::string& when, Money amount) {
      if (part >= shareLeft) amount = left;
      price_.stages.push_back({std::min(part, shareLeft), when, std::min(amount, left)});
      shareLeft = shareLeft - price_.stages.back().share;
      left = left - price_.stages.back().amount;
    };
    // Rounded down: a law's highest deposit must not be passed by half a coin.
    const Share deposit = c_.job.price.deposit;
    price_.deposit = share(price_.total, std::min(deposit, shareLeft), Round::Down);
    price_.depositCap = depositCapFor(*c_.region, c_.job.site.state, price_.total);
    if (price_.deposit > Money{}) pay(deposit, "", price_.deposit);
    for (const auto& stage : c_.job.price.stages) {
      if (!shareLeft.isZero()) pay(stage.share, stage.when, share(price_.total, stage.share));
    }
    if (!shareLeft.isZero()) pay(shareLeft, "", left);
  }

  void addCosts() {
    model::Price& p = price_;
    const Money direct = p.labourCost + p.productCost + p.consumableCost + p.otherCost;
    p.overheadCost = share(direct, c_.rates.overhead);
    p.contingencyCost = share(direct, c_.rates.contingency);
    p.cost = direct + p.overheadCost + p.contingencyCost;
    if (p.net > Money{})
      p.marginReached = {mulDiv((p.net - p.cost).minor, wholeShare, p.net.minor, Round::HalfUp)};
  }

  const model::JobInputs& c_;
  const model::Content& content_;
  const model::Estimate& e_;
  const model::Resources& r_;
  Share margin_;
  model::Price price_;
};

}  // namespace

model::Price makePrice(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
                       const model::Resources& r) {
  return Pricer(c, content, e, r).price();
}

}  // namespace estimate
