// The job of a yearly visit, made from the one before it.
#pragma once

#include "app/pack/compute.h"
#include "input/job/next_year.h"

namespace app {

inline constexpr std::chrono::days quotedBefore{28};  // the start, where nobody says otherwise

struct NextJobOrder {
  base::Date start{}, quoted{};
  std::optional<base::Share> raise;  // of the last job's prices
  std::string file;                  // where to; empty = beside the job, named after its new number
  bool namesFirm = true;             // where the new file would not find it
};

struct NextJob {
  std::string file;
  input::NextYearsJob fresh;
};

/// A wash and one maintenance coat, with what the last coats drank. The last job lays coats, and its last day
/// is before the start.
NextJob nextJob(const JobText& job, const model::JobResult& last, const Shipped& shipped,
                const NextJobOrder& order);

}  // namespace app
