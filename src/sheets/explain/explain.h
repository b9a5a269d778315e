// How each figure came about: a formula with its numbers.
#pragma once

#include "model/job_result.h"

namespace sheets {

struct Explained {
  std::string about;      // 'A Landing', 'litres', 'price'
  std::string name;       // 'area'
  std::string formula;    // '12.40 m x 6.20 m - pi/4 x (1.20 m)^2'
  std::string value;      // '75.75 m2'
  bool isOfTask = false;  // the hours of one task
};

std::vector<Explained> explain(const model::JobResult& x);

/// The noise, vibration and heat of each day, and every hazard: why it is on the sheet, whom it hurts and
/// how, what is done in the order of the hierarchy, what stays, and what the words rest on; or why it was
/// left out.
std::string explainSafety(const model::JobResult& x);

}  // namespace sheets
