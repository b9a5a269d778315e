// Spreading rates learned from finished jobs. Statistics: doubles that never meet money; the estimate reads
// the rates back as exact decimals from the file they are written to.
#pragma once

#include "model/job.h"

#include <vector>

namespace records {

constexpr int guessWeighs = 3;  // jobs, that the first guess of the spread between jobs counts for

/// The coats a rate holds for.
struct Kind {
  std::string product, timber;
  model::State state = model::State::Weathered;  // when it was coated
  int coat = 1;
  bool isSanded = false;  // new or weathered boards, sanded first
  friend auto operator<=>(const Kind&, const Kind&) = default;
};

/// What one job tells about one kind of coat, all its decks of that kind together.
struct Observation {
  Kind kind;
  base::Area wetted;
  base::Volume litres;          // without loss
  base::Spread table;           // the product's rate for this kind
  base::Share lowUse, highUse;  // the product's range
  std::vector<model::DoneCoat> records = {};
};

struct Learned {
  Kind kind;
  double rate = 0, low = 0, high = 0;  // m2/L; the interval holds the true mean with about 95 %
  double spread = 0;                   // how far one job lies from the mean, as a share: 0.09 is 9 %
  int jobs = 0;
};

/// A job that drank so unlike the others that its record looks wrong.
struct SetAside {
  Observation observation;
  double rate = 0, usual = 0;  // m2/L
};

struct Lesson {
  std::vector<Learned> rates;      // in order of kind
  std::vector<SetAside> setAside;  // in order of kind, then as given
};

/// Blends the observations of each kind with the product's table, but for those set aside.
///
/// A job's y = ln(litres per m2) is taken as normal about the mean of its kind: uptake is above zero, and
/// boards that drink a tenth more do so on every square metre, whatever the rate. The mean itself is normal
/// about the table's value. With n jobs, the variance s2 between jobs and the variance t2 of the table:
///   mean = (m0 / t2 + n ybar / s2) / (1 / t2 + n / s2),   its variance = 1 / (1 / t2 + n / s2)
/// (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 2.5, eq. 2.11 and 2.12; from memory.)
/// Our choices: half the product's range from low to high use, as a logarithm, is t and the first guess of s,
/// so that the table counts as much as one job; that guess weighs three jobs when s2 is taken from the jobs.
///
/// One wrong record would move a mean, but not a median: an observation is set aside when y lies further from
/// the median than three times 1.4826 MAD, the median distance from it, and than ln 2, for twice or half as
/// much (the Hampel identifier: Davies and Gather, The identification of multiple outliers, JASA 88, 1993;
/// from memory; the least distance is our choice). The table stands among the observations, so that two jobs
/// have a median, too; a job alone is held against the table.
Lesson learn(const std::vector<Observation>& observations);

}  // namespace records
