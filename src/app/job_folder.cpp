#include "app/job_folder.h"

#include "app/parallel.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "plan/plan.h"
#include "plan/records.h"
#include "records/actual.h"

#include <algorithm>
#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

/// Brands, themes and rates lie among the jobs; none of them has these keys.
bool looksLikeJob(const std::string& text) {
  const auto hasLine = [&](const std::string& begin) {
    return text.starts_with(begin) || text.find("\n" + begin) != std::string::npos;
  };
  return hasLine("areas:") || hasLine("customer:");
}

bool isWhollyRecorded(const model::Estimate& e) { return e.actual.size() == e.coats.size(); }

struct Outcome {
  std::optional<CoatedJob> job;
  base::Diagnostics messages;
};

Outcome readOne(const std::string& file, Wanted wanted, const Shipped& shipped) {
  Outcome out;
  const auto text = input::readFile(file);
  if (!text) {
    out.messages.error({file}, "", "cannot be read: " + input::whyUnreadable(file),
                       "check that it may be read, or take it out of the folder");
    return out;
  }
  if (!looksLikeJob(*text)) return out;
  const auto& content = shipped.content;
  CoatedJob j;
  j.file = file;
  j.c.job = input::readJob(*text, file, content, out.messages);
  if (const auto region = content.regions.find(j.c.job.site.region); region != content.regions.end())
    plan::checkSite(j.c.job, region->second, out.messages);
  if (!out.messages.ok()) return out;
  j.c.product = &content.products.at(j.c.job.product);
  j.c.region = &content.regions.at(j.c.job.site.region);
  if (wanted == Wanted::Records && j.c.job.done.empty()) return out;
  try {
    for (std::size_t deck = 0; deck < j.c.job.areas.size(); ++deck) {
      j.estimate.decks.push_back(estimate::measureDeck(j.c.job.areas[deck]));
      for (auto& coat : estimate::coatsOf(j.c, content, deck, j.estimate.decks.back()))
        j.estimate.coats.push_back(std::move(coat));
    }
    if (j.estimate.coats.empty()) return out;
    records::addActual(j.estimate, j.c);
    base::Diagnostics planning;
    if (wanted == Wanted::Dates && !isWhollyRecorded(j.estimate))
      j.plan = plan::makePlan(j.c, content, estimate::makeEstimate(j.c, content, 0), planning);
    if (planning.ok()) plan::applyRecords(j.plan, j.c, planning);
    out.messages.addAt(j.c.job.places, planning);
  } catch (const std::overflow_error&) {
    out.messages.error(base::placeOf(j.c.job.places, "areas"), "", "comes to figures too large to compute",
                       "check the sizes, rates and prices");
  }
  if (out.messages.ok()) out.job = std::move(j);
  return out;
}

}  // namespace

std::vector<std::string> jobFiles(const std::string& folder) {
  std::vector<std::string> files;
  auto entry = fs::recursive_directory_iterator(folder, fs::directory_options::skip_permission_denied);
  for (; entry != fs::recursive_directory_iterator(); ++entry) {
    const bool isHidden = entry->path().filename().string().starts_with(".");
    if (isHidden && entry->is_directory()) entry.disable_recursion_pending();
    const auto kind = entry->path().extension();
    if (!isHidden && (kind == ".yaml" || kind == ".yml") && entry->is_regular_file())
      files.push_back(entry->path().string());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<CoatedJob> readJobs(const std::string& folder, Wanted wanted, const Shipped& shipped,
                                base::Diagnostics& messages) {
  const auto files = jobFiles(folder);
  std::vector<Outcome> outcomes(files.size());
  inParallel(files.size(), 0, [&](std::size_t i) { outcomes[i] = readOne(files[i], wanted, shipped); });
  std::vector<CoatedJob> jobs;
  for (auto& out : outcomes) {
    if (!out.messages.ok()) messages.add(out.messages);
    if (out.job) jobs.push_back(std::move(*out.job));
  }
  return jobs;
}

}  // namespace app
