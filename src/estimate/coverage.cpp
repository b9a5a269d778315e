#include "estimate/coverage.h"

#include "estimate/shed.h"
#include "estimate/tins.h"
#include "model/lookup.h"
#include "model/names.h"
#include "model/plain.h"

#include <algorithm>
#include <numeric>

namespace estimate {
namespace {

using base::Round;
using base::Spread;
using base::Volume;
using base::Wide;

constexpr std::int64_t wholeShare = 100'000'000;  // 100 % in millionths

Wide commonDivisor(Wide a, Wide b) {
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

/// Exact when the amounts fit once reduced; otherwise the area is cut and the volume rounded up, so that
/// never too little is bought.
Spread reduced(Wide area, Wide volume) {
  const Wide common = commonDivisor(area, volume);
  area /= common;
  volume /= common;
  while (area > INT64_MAX || volume > INT64_MAX) {
    area = std::max<Wide>(area / 2, 1);
    volume = (volume + 1) / 2;
  }
  return {{static_cast<std::int64_t>(area)}, {static_cast<std::int64_t>(volume)}};
}

/// The rate of a later coat in the table's proportion: patch x later / first.
Spread inProportion(Spread patch, Spread later, Spread first) {
  const Spread ratio = reduced(Wide{later.area.millionths} * first.volume.millionths,
                               Wide{later.volume.millionths} * first.area.millionths);
  return reduced(Wide{patch.area.millionths} * ratio.area.millionths,
                 Wide{patch.volume.millionths} * ratio.volume.millionths);
}

/// A share of the use; half as far from 100 % where a test patch has told more about the deck.
Volume at(base::Share use, Volume litres, bool isTested) {
  return isTested ? scaled(litres, wholeShare + use.millionths, 2 * wholeShare, Round::HalfUp)
                  : scaled(litres, use.millionths, wholeShare, Round::HalfUp);
}

/// The spread of learned rates is that of a logarithm: as many times less as it may be more.
void addRange(model::CoatNeed& coat, const model::JobInputs& c) {
  if (coat.learnedSpread) {
    const std::int64_t beyond = wholeShare + coat.learnedSpread->millionths;
    coat.low = scaled(coat.litres, wholeShare, beyond, Round::HalfUp);
    coat.high = scaled(coat.litres, beyond, wholeShare, Round::HalfUp);
    return;
  }
  const bool isTested = c.job.areas.at(coat.deck).testPatch.has_value();
  coat.low = at(c.product->lowUse, coat.litres, isTested);
  coat.high = at(c.product->highUse, coat.litres, isTested);
}

/// Tins of the job's product in the shed.
std::vector<model::StockTin> stockOf(const model::Job& job) {
  std::vector<model::StockTin> tins;
  for (const auto& tin : job.inStock) {
    if (tin.product == job.product) tins.push_back(tin);
  }
  return tins;
}

/// What finished jobs have taught about a coat of a deck; null when they say nothing.
const model::LearnedRate* learnedRate(const model::JobInputs& c, const model::Deck& deck, int coat) {
  const auto& job = c.job;
  for (const auto& r : c.learnedRates) {
    if (r.product == job.product && r.timber == deck.timber && r.state == stateWhenCoated(job, deck) &&
        r.isSanded == isSandedFirst(job, deck) && r.coat == coat)
      return &r;
  }
  return nullptr;
}

}  // namespace

bool isSandedFirst(const model::Job& job, const model::Deck& deck) {
  return stateWhenCoated(job, deck) != model::State::Sanded && model::asksFor(job.work, model::Work::Sand);
}

model::State stateWhenCoated(const model::Job& job, const model::Deck& deck) {
  const bool isFinished = deck.state == model::State::Oiled || deck.state == model::State::Film;
  return isFinished && model::asksFor(job.work, model::Work::Sand) ? model::State::Sanded : deck.state;
}

model::Uptake uptakeOf(const model::Job& job, const model::Deck& deck, const model::Timber& timber) {
  return timber.uptake.at(stateWhenCoated(job, deck));
}

std::vector<model::CoatNeed> coatsOf(const model::JobInputs& c, const model::Content& content,
                                     std::size_t deck, const model::Measures& measures) {
  std::vector<model::CoatNeed> coats;
  if (!model::asksFor(c.job.work, model::Work::Oil)) return coats;

  const model::Deck& d = c.job.areas.at(deck);
  const bool isJobs = !d.rates.empty();
  const model::Uptake uptake = uptakeOf(c.job, d, content.timbers.at(d.timber));
  const std::vector<Spread>& table = isJobs ? d.rates : c.product->rates.at(uptake);
  const std::string from = isJobs ? "the job" : std::string("product table, ") + model::nameOf(uptake);

  for (int n = 1; n <= d.coats; ++n) {
    const Spread listed = table[std::min(table.size(), static_cast<std::size_t>(n)) - 1];
    model::CoatNeed need;
    need.deck = deck;
    need.coat = n;
    need.rate = listed;
    need.rateFrom = from;
    const auto* learned = isJobs || d.testPatch ? nullptr : learnedRate(c, d, n);
    if (!isJobs && !d.testPatch && learned == nullptr) need.uptake = uptake;
    need.source = isJobs ? model::RateSource::Job : model::RateSource::Table;
    if (learned != nullptr) {
      need.source = model::RateSource::Learned;
      need.learnedFrom = learned->jobs;
      need.learnedSpread = learned->spread;
      need.rate = learned->rate;
      need.rateFrom = std::to_string(learned->jobs) + " of your own jobs";
    }
    if (d.testPatch) {
      const Spread patch = {d.testPatch->area, d.testPatch->used};
      need.source = n == 1   ? model::RateSource::Patch
                    : isJobs ? model::RateSource::PatchByJob
                             : model::RateSource::PatchByProduct;
      need.rate = n == 1 ? patch : inProportion(patch, listed, table.front());
      need.rateFrom =
          n == 1 ? "test patch " + model::plainArea(patch.area, c.region->units) + " with " +
                       model::plainVolume(patch.volume, c.region->units)
                 : std::string("test patch, in the ") + (isJobs ? "job" : "product") + "'s proportion";
    }
    need.litres = measures.wetted / need.rate;
    addRange(need, c);
    coats.push_back(std::move(need));
  }
  return coats;
}

model::ProductNeed productNeed(const model::JobInputs& c, const std::vector<model::CoatNeed>& coats) {
  model::ProductNeed p;
  if (coats.empty()) return p;
  for (const auto& coat : coats) {
    p.low += coat.low;
    p.likely += coat.litres;
    p.high += coat.high;
  }
  p.low = increased(p.low, c.job.loss);
  p.likely = increased(p.likely, c.job.loss);
  p.high = increased(p.high, c.job.loss);
  p.wanted = increased(p.likely, c.job.allowance);

  const auto& tins = c.product->tins.at(c.job.site.region);
  Shed shed = openShed(p.wanted, stockOf(c.job), tins, c.product->openedLoss);
  p.opened = std::move(shed.opened);
  p.shut = std::move(shed.shut);
  for (const auto& tin : p.opened) p.fromStock += tin.size * tin.count;
  p.drawn = std::min(p.wanted, p.fromStock);
  p.toBuy = p.wanted - p.drawn;
  p.bought = cheapestTins(p.toBuy, tins);
  p.leftOver = p.bought.volume + p.fromStock - p.likely;
  return p;
}

}  // namespace estimate
