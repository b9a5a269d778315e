#include "records/learn.h"

#include "base/units.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace records {
namespace {

constexpr double leastGuess = 0.05;   // of a product whose range is narrower than anything measured
constexpr double normalMad = 1.4826;  // MAD to standard deviation, for normal numbers
constexpr double farDeviations = 3;
constexpr double coverage95 = 1.959964;  // standard deviations: the normal quantile of 97.5 %

double logUse(base::Area wetted, base::Volume litres) {
  return std::log(base::asLitres(litres) / base::asSquareMetres(wetted));
}

double halfRange(const Observation& o) {
  const auto log = [](base::Share s) { return std::log(static_cast<double>(s.millionths) / 1e8); };
  return o.lowUse.millionths <= 0 ? leastGuess : std::max(leastGuess, (log(o.highUse) - log(o.lowUse)) / 2);
}

double median(std::vector<double> all) {
  std::sort(all.begin(), all.end());
  return (all[(all.size() - 1) / 2] + all[all.size() / 2]) / 2;
}

/// What is usual for boards of a kind, and how far from it a job may lie, as logarithms of L/m2.
struct Usual {
  double middle = 0, farthest = 0;
};

Usual usualOf(const std::vector<const Observation*>& jobs) {
  const double table = logUse(jobs.front()->table.area, jobs.front()->table.volume);
  const double twice = std::log(2);
  if (jobs.size() == 1) return {table, twice};
  std::vector<double> uses = {table}, distances;
  for (const auto* job : jobs) uses.push_back(logUse(job->wetted, job->litres));
  const double middle = median(uses);
  for (const double use : uses) distances.push_back(std::abs(use - middle));
  return {middle, std::max(twice, farDeviations * normalMad * median(distances))};
}

Learned blend(const Kind& kind, const std::vector<const Observation*>& jobs) {
  const auto n = static_cast<double>(jobs.size());
  const double table = logUse(jobs.front()->table.area, jobs.front()->table.volume);
  const double guess = halfRange(*jobs.front());
  double sum = 0, squares = 0;
  for (const auto* job : jobs) sum += logUse(job->wetted, job->litres);
  const double mean = sum / n;
  for (const auto* job : jobs) squares += std::pow(logUse(job->wetted, job->litres) - mean, 2);
  const double between = (guessWeighs * guess * guess + squares) / (guessWeighs + n - 1);
  const double ofTable = 1 / (guess * guess), ofJobs = n / between;
  const double blended = (table * ofTable + mean * ofJobs) / (ofTable + ofJobs);
  const double half = coverage95 / std::sqrt(ofTable + ofJobs);
  return {kind,
          std::exp(-blended),
          std::exp(-blended - half),
          std::exp(-blended + half),
          std::exp(std::sqrt(between)) - 1,
          static_cast<int>(jobs.size())};
}

}  // namespace

Lesson learn(const std::vector<Observation>& observations) {
  std::map<Kind, std::vector<const Observation*>> kinds;
  for (const auto& o : observations) {
    if (!o.wetted.isZero() && !o.litres.isZero()) kinds[o.kind].push_back(&o);
  }
  Lesson lesson;
  for (const auto& [kind, jobs] : kinds) {
    const Usual usual = usualOf(jobs);
    std::vector<const Observation*> kept;
    for (const auto* job : jobs) {
      const double use = logUse(job->wetted, job->litres);
      if (std::abs(use - usual.middle) <= usual.farthest) kept.push_back(job);
      else lesson.setAside.push_back({*job, std::exp(-use), std::exp(-usual.middle)});
    }
    if (!kept.empty()) lesson.rates.push_back(blend(kind, kept));
  }
  return lesson;
}

}  // namespace records
