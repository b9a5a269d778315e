// Yearly visits that nobody has quoted yet, computed as the jobs they would be.
#pragma once

#include "app/pack/compute.h"
#include "records/due.h"

#include <exception>

namespace app {

/// The job a visit comes after, and the one it would be.
struct NextVisit {
  records::Visit visit;
  std::shared_ptr<const Shipped> shipped;  // what both are made from
  JobText job;
  std::optional<model::JobResult> last, next;  // both, but where there were mistakes
};

/// What the world refuses is told at the job of the visit, and stops no other.
template <class Work>
void tellingFailures(const records::Visit& visit, base::Diagnostics& messages, const Work& work) {
  try {
    work();
  } catch (const std::exception& e) {
    messages.error({visit.file}, "", e.what(), "");
  }
}

/// Of the visits to write to, in their order; each starts on the day it falls due. Errors go to 'messages'.
std::vector<NextVisit> nextVisits(const std::vector<records::Visit>& visits, const Firms& firms,
                                  const Choices& choices, base::Diagnostics& messages);

}  // namespace app
