#include "app/after/job_folder.h"

#include "app/pack/weather_file.h"
#include "app/system/parallel.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "input/yaml/tree.h"
#include "model/lookup.h"
#include "records/actual.h"
#include "records/links.h"
#include "schedule/crew/records.h"
#include "schedule/plan.h"

#include <algorithm>
#include <filesystem>
#include <set>

namespace app {
namespace fs = std::filesystem;
namespace {

/// Past comments and empty lines; 0 when there is nothing else.
char firstLetter(const std::string& text) {
  for (std::size_t at = 0; (at = text.find_first_not_of(" \r\n", at)) != std::string::npos;) {
    if (text[at] != '#') return text[at];
    at = std::min(text.find('\n', at), text.size());
  }
  return 0;
}

/// The same for copies of one job: number, customer, areas, start and records.
std::string identityOf(const model::Job& job) {
  std::string key = job.ref + '\n' + job.after + '\n' + job.customer.name + '\n' + base::isoDate(job.start);
  for (const auto& day : {job.accepted, job.declined, job.doneOn})
    key += '\n' + (day ? base::isoDate(*day) : "");
  for (const auto& line : records::partyOf(job).address) key += '\n' + line;
  for (const auto& deck : job.areas) key += '\n' + deck.name;
  for (const auto& d : job.done)
    key += '\n' + std::to_string(d.deck) + ' ' + std::to_string(d.coat) + ' ' + base::isoTime(d.start) + ' ' +
           base::isoTime(d.end) + ' ' + std::to_string(d.used.value_or(base::Volume{}).millionths);
  return key;
}

struct Outcome {
  std::optional<CoatedJob> job;
  base::Diagnostics messages;
};

/// The dates of a job that is done; it is planned where they are wanted and a coat has no record.
base::Diagnostics addDays(CoatedJob& j, Wanted wanted) {
  base::Diagnostics planning;
  if (j.c.job.doneOn) {
    schedule::applyDayDone(j.plan, j.c);
    return planning;
  }
  if (wanted == Wanted::Dates && j.actual.size() != j.estimate.coats.size())
    j.plan = schedule::makePlan(j.c, j.shipped->content, j.estimate, planning);
  if (planning.ok()) schedule::applyRecords(j.plan, j.c, planning);
  return planning;
}

Outcome readOne(const std::string& file, Wanted wanted, const Firms& firms) {
  Outcome out;
  const auto text = input::readFile(file);
  if (!text) {
    out.messages.error({file}, "", "cannot be read: " + input::whyUnreadable(file),
                       "check that it may be read, or take it out of the folder");
    return out;
  }
  if (!looksLikeJob(*text)) return out;
  CoatedJob j;
  j.file = file;
  j.shipped = firms.of({file, *text});
  const auto& content = j.shipped->content;
  out.messages.add(j.shipped->firmMistakes);
  j.c.job = input::readJob(*text, file, content, out.messages);
  if (const auto region = content.regions.find(j.c.job.site.region); region != content.regions.end())
    schedule::checkSite(j.c.job, region->second, out.messages);
  schedule::checkRecordedTimes(j.c.job, out.messages);
  readWeatherFile(j.c.job, file, out.messages);
  if (!out.messages.ok()) return out;
  j.c.product = &content.products.at(j.c.job.product);
  j.c.region = &content.regions.at(j.c.job.site.region);
  if (wanted == Wanted::Records && j.c.job.done.empty()) return out;
  try {
    j.estimate = estimate::makeEstimate(j.c, content);
    j.actual = records::actualCoats(j.c, j.estimate);
    if (!j.estimate.coats.empty() && model::progressOf(j.c.job) == model::Progress::Done)
      out.messages.addAt(j.c.job.places, addDays(j, wanted));
  } catch (const std::overflow_error&) {
    out.messages.error(base::placeOf(j.c.job.places, "areas"), "", "comes to figures too large to compute",
                       "check the sizes, rates and prices");
  }
  if (out.messages.ok()) out.job = std::move(j);
  return out;
}

}  // namespace

// The tree is asked only where no line tells it: of a job in braces, indented or with its keys in quotes.
bool looksLikeJob(const std::string& text) {
  constexpr const char* keys[] = {"areas", "customer"};
  bool mayBe = false;
  for (const std::string key : keys) {
    if (text.starts_with(key + ":") || text.find("\n" + key + ":") != std::string::npos) return true;
    mayBe = mayBe || text.find(key) != std::string::npos;
  }
  if (!mayBe) return false;
  base::Diagnostics ignored;
  const auto root = input::parseTree(text, "", ignored);
  if (!root) return firstLetter(text) == '{';  // broken, and told so
  return std::any_of(root->entries.begin(), root->entries.end(), [&](const auto& entry) {
    return std::find(std::begin(keys), std::end(keys), entry.key) != std::end(keys);
  });
}

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

std::vector<CoatedJob> readJobs(const std::string& folder, Wanted wanted, const Firms& firms,
                                base::Diagnostics& messages) {
  const auto files = jobFiles(folder);
  std::vector<Outcome> outcomes(files.size());
  inParallel(files.size(), 0, [&](std::size_t i) { outcomes[i] = readOne(files[i], wanted, firms); });
  std::vector<CoatedJob> jobs;
  std::set<std::string> known;
  for (auto& out : outcomes) {
    if (!out.messages.ok()) messages.add(out.messages);
    if (out.job && known.insert(identityOf(out.job->c.job)).second) jobs.push_back(std::move(*out.job));
  }
  return jobs;
}

}  // namespace app
