#include "app/after/job_folder.h"
#include "app/after/year_after.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "base/quantity_words.h"
#include "estimate/coverage.h"
#include "input/read.h"
#include "records/learn.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <map>
#include <set>

namespace app {
namespace {

constexpr auto opening = "# Spreading rates learned from ";

records::Kind kindOf(const CoatedJob& job, const model::ActualCoat& coat) {
  const auto& deck = job.c.job.areas[coat.deck];
  return {job.c.job.product, deck.timber, estimate::stateWhenCoated(job.c.job, deck), coat.coat,
          estimate::isSandedFirst(job.c.job, deck)};
}

/// What one job tells: litres recorded for several kinds of boards together tell nothing about either.
std::vector<records::Observation> observationsOf(const CoatedJob& job, const model::Content& content) {
  const auto& done = job.c.job.done;
  std::map<std::size_t, std::set<records::Kind>> kindsOfEntry;
  for (const auto& coat : job.actual) {
    for (const auto record : coat.records) kindsOfEntry[done[record].entry].insert(kindOf(job, coat));
  }
  std::map<records::Kind, records::Observation> found;
  for (const auto& coat : job.actual) {
    const bool isMixed = std::any_of(coat.records.begin(), coat.records.end(), [&](const auto record) {
      return kindsOfEntry.at(done[record].entry).size() > 1;
    });
    if (!coat.litres || isMixed) continue;
    const auto kind = kindOf(job, coat);
    const auto& deck = job.c.job.areas[coat.deck];
    const auto& table =
        job.c.product->rates.at(estimate::uptakeOf(job.c.job, deck, content.timbers.at(deck.timber)));
    auto& o = found[kind];
    o.kind = kind;
    o.wetted += job.estimate.decks[coat.deck].wetted;
    constexpr std::int64_t whole = 100'000'000;  // 100 % in millionths
    o.litres += scaled(*coat.litres, whole, whole + job.c.job.loss.millionths, base::Round::HalfUp);
    o.table = table[std::min(table.size(), static_cast<std::size_t>(coat.coat)) - 1];
    o.lowUse = job.c.product->lowUse;
    o.highUse = job.c.product->highUse;
    for (const auto record : coat.records) o.records.push_back(done[record]);
  }
  std::vector<records::Observation> all;
  for (auto& [kind, o] : found) all.push_back(std::move(o));
  return all;
}

/// Fixed decimals: what is read back is exact.
std::string rate(double squareMetresPerLitre) {
  const double kept = std::min(std::max(squareMetresPerLitre, 0.5), 100.0);  // what a file may hold
  return base::decimal(std::llround(kept * 1000) * 1000, 3, ".", "") + " m2/L";
}

std::string twoDecimals(double squareMetresPerLitre) {
  return base::decimal(std::llround(squareMetresPerLitre * 100) * 10'000, 2, ".", "") + " m2/L";
}

std::string fileText(const std::vector<records::Learned>& rates, std::ptrdiff_t jobs) {
  std::string s = opening + std::to_string(jobs) + (jobs == 1 ? " job" : " jobs") +
                  R"( by 'planksheaf rates'. Name this file under
# 'spreading_rates:' in a job, or put it into the firm's folder as 'spreading_rates.yaml'; a job's own rates and test
# patches still come first.
# Without the loss a job names, as in a product's file. 'low' to 'high' holds the true mean with about 95 %;
# 'spread' is how far one job lies from it. The product's table counts about as much as one job.
rates:
)";
  for (const auto& r : rates) {
    s += "  - {product: " + r.kind.product + ", timber: " + r.kind.timber +
         ", state: " + input::nameOf(r.kind.state) + (r.kind.isSanded ? ", sanded: yes" : "") +
         ", coat: " + std::to_string(r.kind.coat) + ", rate: " + rate(r.rate) + ", low: " + rate(r.low) +
         ", high: " + rate(r.high) +
         ", spread: " + base::decimal(std::llround(r.spread * 1000) * 100'000, 1, ".", "") +
         " %, jobs: " + std::to_string(r.jobs) + "}\n";
  }
  return s;
}

/// The records a job was set aside for, each told once.
void tell(const records::SetAside& one, base::Diagnostics& messages) {
  const auto& kind = one.observation.kind;
  std::set<std::size_t> told;
  for (const auto& record : one.observation.records) {
    if (!told.insert(record.entry).second) continue;
    messages.warn(record.usedPos, "done[" + std::to_string(record.entry + 1) + "].used",
                  "set aside: " + twoDecimals(one.rate) + ", where " + twoDecimals(one.usual) +
                      " is usual for " + kind.product + " on " + kind.timber + ", " +
                      input::nameOf(kind.state) + (kind.isSanded ? " and sanded" : "") + ", coat " +
                      std::to_string(kind.coat),
                  "check the litres; the rates are learned without this record");
  }
}

}  // namespace

int rates(const std::string& folder, const std::string& file, const Choices& choices) {
  const auto older = file.empty() ? std::nullopt : input::readFile(file);
  if (older && !older->starts_with(opening)) {
    std::cerr << base::printable(file) << ": error: is there already and holds something else\n"
              << "  hint: choose another name; only rates are written over\n";
    return 1;
  }
  base::Diagnostics messages;
  std::vector<records::Observation> observations;
  std::map<std::string, int> kept;  // observations by file
  for (const auto& job : readJobs(folder, Wanted::Records, Firms(choices), messages)) {
    const auto told = observationsOf(job, job.shipped->content);
    observations.insert(observations.end(), told.begin(), told.end());
    if (!told.empty()) kept[job.file] = static_cast<int>(told.size());
  }
  const auto lesson = records::learn(observations);
  for (const auto& one : lesson.setAside) {
    tell(one, messages);
    --kept[one.observation.records.front().pos.file];
  }
  std::cerr << base::format(messages);
  if (lesson.rates.empty()) {
    std::cerr << base::printable(folder)
              << (kept.empty()
                      ? ": error: no job records the litres of a coat on one kind of boards\n"
                        "  hint: write them under 'done:' of finished jobs, one entry for each timber "
                        "and state\n"
                      : ": error: every record was set aside, so that none is left to learn from\n"
                        "  hint: check the litres told above\n");
    return 1;
  }
  const auto jobs =
      std::count_if(kept.begin(), kept.end(), [](const auto& counted) { return counted.second > 0; });
  const std::string text = fileText(lesson.rates, jobs);
  if (file.empty()) {
    std::cout << text;
  } else {
    writeAll({{file, text}});
    std::cout << base::printable(file) << ": spreading rates from " << jobs
              << (jobs == 1 ? " job\n" : " jobs\n");
  }
  return messages.ok() ? 0 : 1;
}

}  // namespace app
