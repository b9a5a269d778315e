#include "app/commands/commands.h"
#include "app/pack/parallel.h"
#include "base/hidden.h"
#include "input/read.h"

#include <unistd.h>
#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
#include <mutex>
#include <optional>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1, broken = 2;

/// What became of one job.
struct Outcome {
  base::Diagnostics messages;
  std::string news;     // of a job that is in order
  std::string failure;  // of the world: a font that is gone, a disk that is full
};

/// Tells the outcomes in the order of the jobs, each as soon as those before it are known, and on a terminal
/// how many there are yet to come.
class Report {
 public:
  explicit Report(const std::vector<std::string>& jobs) : jobs_(jobs), outcomes_(jobs.size()) {}

  void add(std::size_t job, Outcome outcome) {
    const std::lock_guard lock(guard_);
    outcomes_[job] = std::move(outcome);
    ++known_;
    showProgress("");
    for (; told_ < jobs_.size() && outcomes_[told_]; ++told_) {
      tell(jobs_[told_], *outcomes_[told_]);
      outcomes_[told_] = Outcome{};
    }
    if (known_ < jobs_.size())
      showProgress(std::to_string(known_) + " of " + std::to_string(jobs_.size()) + " jobs");
  }

  int status() const { return status_; }

 private:
  void tell(const std::string& job, const Outcome& out) {
    std::cerr << base::format(out.messages);
    if (!out.failure.empty()) {
      std::cerr << base::printable(job) << ": error: " << base::printable(out.failure, base::Lines::Keep)
                << "\n";
      status_ = broken;
    } else if (!out.messages.ok()) {
      status_ = std::max(status_, refused);
    } else {
      std::cout << base::printable(out.news) << "\n" << std::flush;
    }
  }

  void showProgress(const std::string& words) const {
    if (!isShown_) return;
    std::cerr << "\r" << words;
    if (words.empty()) std::cerr << std::string(40, ' ') << "\r";
  }

  const std::vector<std::string>& jobs_;
  const bool isShown_ = jobs_.size() > 1 && ::isatty(STDERR_FILENO) == 1;
  std::mutex guard_;
  std::vector<std::optional<Outcome>> outcomes_;
  std::size_t told_ = 0, known_ = 0;
  int status_ = done;
};

using Jobs = std::vector<std::optional<JobText>>;  // nothing: cannot be read

/// The jobs that would write over each other, each with the name of another one. Those with mistakes do not
/// count: they write nothing.
std::map<std::size_t, std::string> twinsOf(const Jobs& jobs, const PackOrder& order, const Shipped& shipped) {
  std::map<fs::path, std::vector<std::size_t>> users;
  for (std::size_t i = 0; i < jobs.size() && jobs.size() > 1; ++i) {
    const auto ref = jobs[i] ? input::refOf(jobs[i]->text, jobs[i]->name) : "";
    if (!ref.empty())
      users[fs::weakly_canonical(fs::absolute(packFolder(jobs[i]->name, ref, order.folder)))].push_back(i);
  }
  std::map<std::size_t, std::string> twins;
  for (auto& [folder, same] : users) {
    if (same.size() < 2) continue;
    std::erase_if(same, [&](std::size_t i) {
      base::Diagnostics told;  // as any failure is, when the job is made
      try {
        return !computeText(jobs[i]->text, jobs[i]->name, shipped, order.choices, told);
      } catch (const std::exception&) {
        return true;
      }
    });
    if (same.size() < 2) continue;
    for (const auto i : same) twins[i] = order.jobs[same[i == same[0] ? 1 : 0]];
  }
  return twins;
}

/// Makes one job, writes its pack where that is wanted, and says so.
std::string makeOne(const JobText& job, const Shipped& shipped, const PackOrder& order, bool isWritten,
                    base::Diagnostics& messages) {
  const auto pack = makePack(job, shipped, order, messages);
  if (!pack) return {};
  if (!isWritten) return job.name + ": in order";
  writePack(*pack, order, shipped);
  const auto n = pack->files.size();
  return pack->folder + ": " + std::to_string(n) + (n == 1 ? " file" : " files");
}

/// Makes every job on its own thread of a few, in any order.
int makeAll(const PackOrder& order, bool isWritten) {
  const Shipped shipped = readShipped(order.choices);
  std::vector<Outcome> outcomes(order.jobs.size());
  Jobs jobs;
  for (std::size_t i = 0; i < order.jobs.size(); ++i)
    jobs.push_back(readJobText(order.jobs[i], outcomes[i].messages));
  const auto twins = isWritten ? twinsOf(jobs, order, shipped) : std::map<std::size_t, std::string>{};
  Report report(order.jobs);
  inParallel(jobs.size(), order.threads, [&](std::size_t i) {
    auto& out = outcomes[i];
    const auto twin = twins.find(i);
    if (twin != twins.end())
      out.messages.error({order.jobs[i]}, "ref", "has the same number and folder as '" + twin->second + "'",
                         "give each job a number of its own");
    try {
      if (out.messages.ok()) out.news = makeOne(*jobs[i], shipped, order, isWritten, out.messages);
    } catch (const std::exception& e) {
      out.failure = e.what();
    }
    report.add(i, std::move(out));
  });
  return report.status();
}

}  // namespace

int pack(const PackOrder& order) { return makeAll(order, true); }

int check(const std::vector<std::string>& jobs, const Choices& choices) {
  PackOrder order;
  order.jobs = jobs;
  order.choices = choices;
  return makeAll(order, false);
}

}  // namespace app
