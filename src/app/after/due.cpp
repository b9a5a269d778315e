#include "app/after/year_after.h"

#include "app/after/job_folder.h"
#include "app/after/letters.h"
#include "app/after/next_visits.h"
#include "app/after/rounds.h"
#include "app/report/visit_lists.h"
#include "app/report/year_changes.h"
#include "base/hidden.h"
#include "records/links.h"

#include <algorithm>
#include <ctime>
#include <iostream>
#include <map>

namespace app {
namespace {

/// By the clock and the time zone of the machine.
base::Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm here{};
  localtime_r(&now, &here);
  return std::chrono::year{here.tm_year + 1900} / std::chrono::month{static_cast<unsigned>(here.tm_mon) + 1} /
         std::chrono::day{static_cast<unsigned>(here.tm_mday)};
}

Stop stopOf(const NextVisit& v) {
  const auto& site = v.last->c.job.site;
  if (site.latitudeMicro == 0 && site.longitudeMicro == 0) return {v.visit.due, {}};
  return {v.visit.due, schedule::Place{static_cast<double>(site.latitudeMicro) / 1e6,
                                       static_cast<double>(site.longitudeMicro) / 1e6}};
}

/// The visits that are computed, as rounds. They come first in the list, in the same order.
std::vector<VisitRound> roundsOf(const std::vector<NextVisit>& next) {
  std::vector<std::size_t> known;
  std::vector<Stop> stops;
  for (std::size_t i = 0; i < next.size(); ++i) {
    if (!next[i].next) continue;
    known.push_back(i);
    stops.push_back(stopOf(next[i]));
  }
  std::vector<VisitRound> rounds;
  for (const auto& round : roundsOf(stops)) {
    VisitRound& told = rounds.emplace_back();
    told.hasPlaces = round.hasPlaces;
    for (std::size_t k = 0; k < round.stops.size(); ++k) {
      const auto visit = known[round.stops[k]];
      const auto& x = *next[visit].next;
      told.stops.push_back({visit, round.kilometres[k], x.resources.labourHours, litresOf(x)});
    }
  }
  return rounds;
}

void print(const VisitList& list, ListForm form) {
  switch (form) {
    case ListForm::Table:
      std::cout << visitsText(list);
      break;
    case ListForm::Json:
      std::cout << visitsJson(list);
      break;
    case ListForm::Csv:
      std::cout << visitsCsv(list);
      break;
  }
}

/// Makes and writes the letters, and says which are missing; whether none is.
bool sendLetters(std::vector<NextVisit>& next, base::Date today, const DueOrder& order) {
  base::Diagnostics messages;
  auto letters = makeLetters(next, today, order.choices, messages);
  const auto unmade = std::stable_partition(letters.begin(), letters.end(),
                                            [](const Reminder& letter) { return !letter.files.empty(); });
  std::string missing;
  for (auto letter = unmade; letter != letters.end(); ++letter)
    missing += "no letter to " + letter->customer + ", " + letter->ref + ": mend what is told above\n";
  letters.erase(unmade, letters.end());
  const bool isWritten = !letters.empty() && writeLetters(order.letters, letters, messages);
  std::cerr << base::format(messages) << base::printable(missing, base::Lines::Keep);
  const std::string count =
      std::to_string(letters.size()) + (letters.size() == 1 ? " customer" : " customers");
  if (isWritten)
    std::cout << "\n" << base::printable(order.letters) << ": letters and e-mails to " << count << "\n";
  if (next.empty()) std::cout << "\nnobody to write to\n";
  return missing.empty() && messages.ok();
}

}  // namespace

int due(const DueOrder& order) {
  const Firms firms(order.choices);
  base::Diagnostics messages;
  std::vector<records::Visit> all;
  std::vector<const model::Job*> linked;
  const auto jobs = readJobs(order.folder, Wanted::Dates, firms, messages);
  std::map<std::string, const CoatedJob*> byFile;
  for (const auto& job : jobs) {
    linked.push_back(&job.c.job);
    byFile[job.file] = &job;
    if (auto visit = records::visitAfter(job.file, job.c, job.estimate, job.actual, job.plan))
      all.push_back(std::move(*visit));
  }
  records::checkLinks(linked, messages);
  const auto visits = records::dueBetween(std::move(all), order.from, order.by);
  const base::Date day = order.today.value_or(today());
  std::vector<NextVisit> next;
  if (order.byPlace || !order.letters.empty()) next = nextVisits(visits, firms, order.choices, messages);
  std::cerr << base::format(messages);
  const auto formatterOf = [&](const records::Visit& v) {
    const CoatedJob& job = *byFile.at(v.file);
    return sheets::Formatter(*job.c.region, job.shipped->english);
  };
  print({visits, order.byPlace ? roundsOf(next) : std::vector<VisitRound>{}, day, formatterOf}, order.form);
  const bool isSent = order.letters.empty() || sendLetters(next, day, order);
  return isSent && messages.ok() ? 0 : 1;
}

}  // namespace app
