#include "app/after/next_visits.h"

#include "app/after/next_job.h"
#include "app/system/parallel.h"

namespace app {
namespace {

void computeBoth(NextVisit& v, const Firms& firms, const Choices& choices, base::Diagnostics& messages) {
  const auto job = readJobText(v.visit.file, messages);
  if (!job) return;
  v.job = *job;
  v.shipped = firms.of(*job);
  auto last = compute(v.job, *v.shipped, choices, messages);
  if (!last) return;
  v.last.emplace(std::move(*last));
  const auto next = nextJob(v.job, *v.last, *v.shipped,
                            {v.visit.due, v.visit.due - quotedBefore, {}, {}, choices.firm.empty()});
  auto x = compute({next.file, next.fresh.text}, *v.shipped, choices, messages);
  if (x) v.next.emplace(std::move(*x));
}

}  // namespace

std::vector<NextVisit> nextVisits(const std::vector<records::Visit>& visits, const Firms& firms,
                                  const Choices& choices, base::Diagnostics& messages) {
  std::vector<NextVisit> list;
  for (const auto& v : visits) {
    if (v.progress == model::Progress::Done) list.push_back({v, {}, {}, {}, {}});
  }
  std::vector<base::Diagnostics> told(list.size());
  inParallel(list.size(), 0, [&](std::size_t i) {
    tellingFailures(list[i].visit, told[i], [&] { computeBoth(list[i], firms, choices, told[i]); });
  });
  for (const auto& own : told) {
    if (!own.ok()) messages.add(own);
  }
  return list;
}

}  // namespace app
