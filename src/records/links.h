// Which job of a folder follows which.
#pragma once

#include "base/diagnostic.h"
#include "model/job.h"

namespace records {

/// Whom a job is for, and where.
struct Party {
  std::string name;
  std::vector<std::string> address;  // of the site, else of the customer
};

Party partyOf(const model::Job& job);

/// The same name, capitals aside, or the same address: customers move, and houses are sold.
bool isSame(const Party& a, const Party& b);

/// Warns of numbers that several jobs have, and of numbers under 'after' that no job of the same party has.
/// An error for jobs that follow each other in a circle.
void checkLinks(const std::vector<const model::Job*>& jobs, base::Diagnostics& messages);

}  // namespace records
