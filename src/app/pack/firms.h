// The firm a job is of.
#pragma once

#include "app/pack/shipped.h"

namespace app {

struct JobText {
  std::string name;  // its file, for messages and for what it names beside itself
  std::string text;
};

/// What jobs are made from, by their firm.
class Firms {
 public:
  explicit Firms(const Choices& choices = {}) : chosen_(choices.firm) {}

  /// With the folder that was chosen; else that the job names, if it is a firm's; else the nearest; else with
  /// none.
  std::shared_ptr<const Shipped> of(const JobText& job) const;

 private:
  const std::string chosen_;
  mutable base::Cache<std::string, std::string> nearest_;  // by the folder of the job
  mutable base::Cache<std::string, Shipped> read_{20};     // by its folder
};

}  // namespace app
