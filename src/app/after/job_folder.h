// Every job below a folder, read as far as its coats.
#pragma once

#include "app/pack/compute.h"

namespace app {

/// A job with its sizes, its coats as planned and as recorded, and its dates.
struct CoatedJob {
  std::string file;
  std::shared_ptr<const Shipped> shipped;  // what it is made from
  model::JobInputs c;                      // without firm, rates and theme
  model::Estimate estimate;
  std::vector<model::ActualCoat> actual;
  model::Plan plan;  // events and finish only, and those of a job that is done
};

/// Firms, themes and rates lie among the jobs; none of them has 'areas' or 'customer' at its top.
bool looksLikeJob(const std::string& text);

/// The YAML files below a folder, in order of their paths. Folders that begin with a dot are passed over.
std::vector<std::string> jobFiles(const std::string& folder);

enum class Wanted {
  Dates,   // of every job: one that is done, but not wholly recorded, is planned
  Records  // of recorded jobs only
};

/// Reads them on a few threads; a job with mistakes is told in 'messages' and left out. Copies of a job and
/// links to it are left out, too: the first path counts.
std::vector<CoatedJob> readJobs(const std::string& folder, Wanted wanted, const Firms& firms,
                                base::Diagnostics& messages);

}  // namespace app
