#include "records/links.h"

#include "base/letters.h"

#include <algorithm>
#include <map>

namespace records {
namespace {

using Jobs = std::vector<const model::Job*>;

std::map<std::string, Jobs> byNumber(const Jobs& jobs) {
  std::map<std::string, Jobs> numbered;
  for (const auto* job : jobs) numbered[job->ref].push_back(job);
  return numbered;
}

/// 'A, B and C' in quotes.
std::string listed(const Jobs& jobs) {
  std::string s;
  for (std::size_t i = 0; i < jobs.size(); ++i)
    s += (i == 0 ? "'" : i + 1 == jobs.size() ? " and '" : ", '") + jobs[i]->ref + "'";
  return s;
}

/// The job that this one follows; null (and a warning) when there is none of the same customer.
const model::Job* followed(const model::Job& job, const std::map<std::string, Jobs>& numbered,
                           base::Diagnostics& messages) {
  if (job.after.empty()) return nullptr;
  const auto found = numbered.find(job.after);
  if (found == numbered.end()) {
    messages.warn(job.afterPos, "after", "no job of this folder has the number '" + job.after + "'",
                  "check the number; as long as it is not found, the job it follows counts as due");
    return nullptr;
  }
  for (const auto* other : found->second) {
    if (isSame(partyOf(job), partyOf(*other))) return other;
  }
  messages.warn(job.afterPos, "after",
                "'" + job.after + "' is a job for '" + found->second.front()->customer.name + "', not for '" +
                    job.customer.name + "'",
                "check the number, or write customer or address as they stand there");
  return nullptr;
}

/// Follows the links from each job; whoever comes back to where he began has found a circle.
void findCircles(const Jobs& jobs, const std::map<const model::Job*, const model::Job*>& links,
                 base::Diagnostics& messages) {
  std::map<const model::Job*, std::size_t> visitedFrom;
  for (std::size_t start = 0; start < jobs.size(); ++start) {
    const auto* job = jobs[start];
    while (job != nullptr && !visitedFrom.contains(job)) {
      visitedFrom[job] = start;
      const auto link = links.find(job);
      job = link == links.end() ? nullptr : link->second;
    }
    if (job == nullptr || visitedFrom.at(job) != start) continue;
    Jobs circle = {job};
    for (const auto* next = links.at(job); next != job; next = links.at(next)) circle.push_back(next);
    messages.error(job->afterPos, "after", listed(circle) + " follow each other in a circle",
                   "take 'after' out of the one that came first");
  }
}

}  // namespace

Party partyOf(const model::Job& job) {
  return {job.customer.name, job.site.address.empty() ? job.customer.address : job.site.address};
}

bool isSame(const Party& a, const Party& b) {
  if (base::lowered(a.name) == base::lowered(b.name)) return true;
  return !a.address.empty() &&
         std::equal(a.address.begin(), a.address.end(), b.address.begin(), b.address.end(),
                    [](const auto& x, const auto& y) { return base::lowered(x) == base::lowered(y); });
}

void checkLinks(const Jobs& jobs, base::Diagnostics& messages) {
  const auto numbered = byNumber(jobs);
  std::map<const model::Job*, const model::Job*> links;
  for (const auto* job : jobs) {
    const auto& same = numbered.at(job->ref);
    if (same.size() > 1)
      messages.warn(job->refPos, "ref",
                    "'" + job->ref + "' is the number of another job too, in '" +
                        same[job == same.front() ? 1 : 0]->refPos.file + "'",
                    "give each job a number of its own, or delete the file that no longer counts");
    if (const auto* other = followed(*job, numbered, messages)) links[job] = other;
  }
  findCircles(jobs, links, messages);
}

}  // namespace records
