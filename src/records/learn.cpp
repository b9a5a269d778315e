#include "records/learn.h"

#include <cmath>
#include <map>

namespace records {
namespace {

constexpr double guessWeighs = 3;        // jobs
constexpr double leastGuess = 0.05;      // of a product whose range is narrower than anything measured
constexpr double coverage95 = 1.959964;  // standard deviations: the normal quantile of 97.5 %

double logUse(base::Area wetted, base::Volume litres) {
  const double squareMetres = static_cast<double>(wetted.millionths) / 1e12;
  return std::log(static_cast<double>(litres.millionths) / 1e9 / squareMetres);
}

double halfRange(const Observation& o) {
  const auto log = [](base::Share s) { return std::log(static_cast<double>(s.millionths) / 1e8); };
  return o.lowUse.millionths <= 0 ? leastGuess : std::max(leastGuess, (log(o.highUse) - log(o.lowUse)) / 2);
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

std::vector<Learned> learn(const std::vector<Observation>& observations) {
  std::map<Kind, std::vector<const Observation*>> kinds;
  for (const auto& o : observations) {
    if (!o.wetted.isZero() && !o.litres.isZero()) kinds[o.kind].push_back(&o);
  }
  std::vector<Learned> rates;
  for (const auto& [kind, jobs] : kinds) rates.push_back(blend(kind, jobs));
  return rates;
}

}  // namespace records
