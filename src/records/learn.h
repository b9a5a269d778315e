// Spreading rates learned from finished jobs. Statistics: doubles that never meet money; the estimate reads
// the rates back as exact decimals from the file they are written to.
#pragma once

#include "model/job.h"

#include <vector>

namespace records {

/// The coats a rate holds for.
struct Kind {
  std::string product, timber;
  model::State state = model::State::Weathered;  // when it was coated
  int coat = 1;
  friend auto operator<=>(const Kind&, const Kind&) = default;
};

/// What one job tells about one kind of coat, all its decks of that kind together.
struct Observation {
  Kind kind;
  base::Area wetted;
  base::Volume litres;          // without loss
  base::Spread table;           // the product's rate for this kind
  base::Share lowUse, highUse;  // the product's range
};

struct Learned {
  Kind kind;
  double rate = 0, low = 0, high = 0;  // m2/L; the interval holds the true mean with about 95 %
  double spread = 0;                   // how far one job lies from the mean, as a share: 0.09 is 9 %
  int jobs = 0;
};

/// Blends the observations of each kind with the product's table, in order of kind.
///
/// A job's y = ln(litres per m2) is taken as normal about the mean of its kind: uptake is above zero, and
/// boards that drink a tenth more do so on every square metre, whatever the rate. The mean itself is normal
/// about the table's value. With n jobs, the variance s2 between jobs and the variance t2 of the table:
///   mean = (m0 / t2 + n ybar / s2) / (1 / t2 + n / s2),   its variance = 1 / (1 / t2 + n / s2)
/// (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 2.5, eq. 2.11 and 2.12; from memory.)
/// Our choices: half the product's range from low to high use, as a logarithm, is t and the first guess of s,
/// so that the table counts as much as one job; that guess weighs three jobs when s2 is taken from the jobs.
std::vector<Learned> learn(const std::vector<Observation>& observations);

}  // namespace records
