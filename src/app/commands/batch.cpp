#include "app/commands/commands.h"
#include "app/commands/job_list.h"
#include "app/commands/report.h"
#include "app/commands/unchanged.h"
#include "app/firm/firm_folder.h"
#include "app/system/parallel.h"
#include "app/system/process.h"
#include "input/read.h"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int refused = 1, broken = 2;

/// The texts of jobs. A file is read again when it is wanted, so that thousands need no memory; standard
/// input is kept.
class JobTexts {
 public:
  explicit JobTexts(const std::vector<std::string>& jobs) {
    if (std::find(jobs.begin(), jobs.end(), "-") != jobs.end()) standardInput_ = readJobText("-", told_);
  }

  std::optional<JobText> read(const std::string& job, base::Diagnostics& messages) const {
    return job == "-" ? standardInput_ : readJobText(job, messages);
  }

 private:
  std::optional<JobText> standardInput_;
  base::Diagnostics told_;
};

struct Batch {
  const PackOrder& order;
  const Firms& firms;
  const JobTexts texts;
  std::optional<PackInputs> inputs;  // where packs that are as they would be are passed over
};

/// Where each job's pack will lie; empty for a job that does not tell.
std::vector<std::string> foldersOf(const Batch& batch) {
  const auto& jobs = batch.order.jobs;
  std::vector<std::string> folders(jobs.size());
  inParallel(jobs.size(), batch.order.threads, [&](std::size_t i) {
    base::Diagnostics told;  // when the job is made
    const auto job = batch.texts.read(jobs[i], told);
    const auto ref = job ? input::headOf(job->text, job->name).ref : "";
    if (!ref.empty())
      folders[i] =
          fs::weakly_canonical(fs::absolute(packFolder(job->name, ref, batch.order.folder))).string();
  });
  return folders;
}

bool isInOrder(const std::string& file, const Batch& batch) {
  base::Diagnostics told;  // as any failure is, when the job is made
  try {
    const auto job = batch.texts.read(file, told);
    return job && compute(*job, *batch.firms.of(*job), batch.order.choices, told);
  } catch (const std::exception&) {
    return false;
  }
}

/// The jobs that would write over each other, each with the name of another one. Those with mistakes do not
/// count: they write nothing.
std::map<std::size_t, std::string> twinsOf(const Batch& batch) {
  const auto& jobs = batch.order.jobs;
  std::map<std::string, std::vector<std::size_t>> users;
  if (jobs.size() > 1) {
    const auto folders = foldersOf(batch);
    for (std::size_t i = 0; i < jobs.size(); ++i) {
      if (!folders[i].empty()) users[folders[i]].push_back(i);
    }
  }
  std::map<std::size_t, std::string> twins;
  for (auto& [folder, same] : users) {
    if (same.size() < 2) continue;
    std::erase_if(same, [&](std::size_t i) { return !isInOrder(jobs[i], batch); });
    if (same.size() < 2) continue;
    for (const auto i : same) twins[i] = jobs[same[i == same[0] ? 1 : 0]];
  }
  return twins;
}

void setFiles(JobOutcome& out, const Pack& pack) {
  out.folder = pack.folder;
  for (const auto& file : pack.files) out.files.push_back(file.path);
}

/// Tells which of the documents asked for there are no templates of; whether there are all.
bool areKnown(const std::vector<std::string>& asked, const std::vector<std::string>& known,
              base::Diagnostics& messages) {
  base::Diagnostics told;
  for (const auto& name : asked) {
    if (std::find(known.begin(), known.end(), name) == known.end())
      reportUnknown({"--only"}, "", name, "document", known, told);
  }
  messages.add(told);
  return told.ok();
}

/// The documents of any of the firms, where some are asked for.
std::vector<std::string> documentsOf(const Batch& batch) {
  std::vector<std::string> documents;
  if (batch.order.only.empty()) return documents;
  std::set<std::string> known;
  base::Diagnostics told;  // when the job is made
  for (const auto& file : batch.order.jobs) {
    const auto job = batch.texts.read(file, told);
    for (const auto& name : batch.firms.of(job.value_or(JobText{file, ""}))->content.documents) {
      if (known.insert(name).second) documents.push_back(name);
    }
  }
  return documents;
}

/// Makes one job, and writes its pack where that is wanted.
void makeOne(const JobText& job, const Batch& batch, bool isWritten, JobOutcome& out) {
  const PackOrder& order = batch.order;
  const auto shipped = batch.firms.of(job);
  if (!areKnown(order.only, shipped->content.documents, out.messages)) return;
  const std::string digest = batch.inputs ? batch.inputs->digestOf(job, *shipped) : "";
  if (batch.inputs) {
    const auto folder = packFolder(job.name, input::headOf(job.text, job.name).ref, order.folder);
    if (auto files = filesIfUnchanged(folder, digest); !files.empty()) {
      out.status = JobStatus::Unchanged;
      out.folder = folder;
      out.files = std::move(files);
      return;
    }
  }
  auto pack = makePack(job, *shipped, order, out.messages);
  if (!pack) return;
  out.status = isWritten ? JobStatus::Written : JobStatus::InOrder;
  out.weather = pack->weather;
  if (!isWritten) {
    out.firm = firmWords(shipped->firmFolder, shipped->firmFiles);
    return;
  }
  setFiles(out, *pack);
  if (batch.inputs) pack->files.push_back(stampOf(*pack, digest));
  writePack(*pack, order, *shipped);
}

std::string lastWords(const PackOrder& order) {
  if (order.jobs.size() < 2) return {};
  return order.onlyIfChanged
             ? "planksheaf: stopped between two packs; give the same command again to go on\n"
             : "planksheaf: stopped between two packs; one with --if-changed can be given again to go on\n";
}

/// Makes every job on its own thread of a few, in any order.
int makeAll(const PackOrder& asked, bool isWritten) {
  const Firms firms(asked.choices);
  PackOrder order = asked;
  base::Diagnostics unfound;
  order.jobs = jobsNamed(asked.jobs, unfound);
  std::cerr << base::format(unfound);
  Batch batch{order, firms, JobTexts(order.jobs), {}};
  base::Diagnostics unknown;
  if (!areKnown(order.only, documentsOf(batch), unknown)) {
    std::cerr << base::format(unknown);
    return broken;
  }
  if (order.onlyIfChanged) batch.inputs.emplace(order);
  const auto twins = isWritten ? twinsOf(batch) : std::map<std::size_t, std::string>{};
  BatchReport report(order.jobs, order.report, order.isJson);
  if (isWritten) setLastWords(lastWords(order));
  inParallel(order.jobs.size(), order.threads, [&](std::size_t i) {
    const auto from = std::chrono::steady_clock::now();
    JobOutcome out;
    const auto job = batch.texts.read(order.jobs[i], out.messages);
    const auto twin = twins.find(i);
    if (twin != twins.end())
      out.messages.error({order.jobs[i]}, "ref", "has the same number and folder as '" + twin->second + "'",
                         "give each job a number of its own");
    try {
      if (out.messages.ok()) makeOne(*job, batch, isWritten, out);
    } catch (const std::exception& e) {
      out.status = JobStatus::Failed;
      out.failure = e.what();
      out.folder.clear();
      out.files.clear();
    }
    out.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
    report.add(i, std::move(out));
  });
  setLastWords("");
  return std::max(report.status(), unfound.ok() ? 0 : refused);
}

}  // namespace

int pack(const PackOrder& order) { return makeAll(order, true); }

int check(const PackOrder& order) { return makeAll(order, false); }

}  // namespace app
