#include "records/enough.h"

#include "records/learn.h"

#include <algorithm>
#include <cmath>

namespace records {
namespace {

constexpr int halvings = 30;  // to a billionth of the span

/// Where a function that rises with x reaches 'wanted', between two x.
template <class Function>
double reached(double wanted, double from, double to, Function f) {
  for (int i = 0; i < halvings; ++i) {
    const double middle = (from + to) / 2;
    (f(middle) < wanted ? from : to) = middle;
  }
  return (from + to) / 2;
}

double studentAt(double share, int freedom) {
  constexpr double farthest = 1000;
  return reached(share, -farthest, farthest, [&](double t) { return studentShare(t, freedom); });
}

/// Litres of a coat that this share of jobs stay below.
double litresAt(double share, const model::CoatNeed& coat) {
  const double likely = base::asLitres(coat.litres);
  if (coat.learnedSpread) {
    const int jobs = coat.learnedFrom;
    const double spread =
        std::log1p(base::floating(*coat.learnedSpread) / 100) * std::sqrt(1 + 1.0 / (jobs + 1));
    return likely * std::exp(spread * studentAt(share, guessWeighs + jobs - 1));
  }
  const double low = base::asLitres(coat.low), high = base::asLitres(coat.high), width = high - low;
  return share * width < likely - low ? low + std::sqrt(share * width * (likely - low))
                                      : high - std::sqrt((1 - share) * width * (high - likely));
}

}  // namespace

double studentShare(double t, int freedom) {
  const double angle = std::atan(t / std::sqrt(freedom)), sine = std::sin(angle), cosine = std::cos(angle);
  const bool isOdd = freedom % 2 == 1;
  double sum = 0, term = isOdd ? cosine : 1;
  for (int k = isOdd ? 1 : 0; k <= freedom - 2; k += 2) {
    sum += term;
    term *= (k + 1.0) / (k + 2.0) * cosine * cosine;
  }
  const double within = isOdd ? (angle + sine * sum) * 2 / std::acos(-1.0) : sine * sum;
  return (1 + within) / 2;
}

base::Share chanceOfMore(base::Volume have, const std::vector<model::CoatNeed>& coats, base::Share loss) {
  const double withoutLoss = base::asLitres(have) / (1 + base::floating(loss) / 100);
  const double below = reached(withoutLoss, 0, 1, [&](double share) {
    double sum = 0;
    for (const auto& coat : coats) sum += litresAt(share, coat);
    return sum;
  });
  return {std::llround((1 - below) * 1000) * 100'000};
}

model::Enough enoughFor(const model::JobInputs& c, const model::Estimate& e,
                        const model::ProductNeed& product) {
  model::Enough enough;
  if (e.coats.empty()) return enough;
  const base::Volume have = product.bought.volume + product.fromStock;
  const auto chanceWith = [&](base::Volume more) { return chanceOfMore(have + more, e.coats, c.job.loss); };
  enough.chanceOfMore = chanceWith({});
  enough.isInShed = !product.shut.empty();
  std::vector<model::Tin> tins;
  for (const auto& tin : product.shut) tins.push_back({tin.size, {}});
  std::reverse(tins.begin(), tins.end());
  if (tins.empty()) tins = c.product->tins.at(c.job.site.region);
  for (const auto& tin : tins) {
    enough.oneMore = tin;
    enough.chanceWithOneMore = chanceWith(tin.size);
    if (enough.chanceWithOneMore * 2 <= enough.chanceOfMore) break;
  }
  return enough;
}

}  // namespace records
