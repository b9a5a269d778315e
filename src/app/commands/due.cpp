#include "app/commands/year_after.h"

#include "app/commands/job_folder.h"
#include "app/report/csv.h"
#include "base/joined.h"
#include "base/letters.h"
#include "base/quantity_words.h"
#include "base/units.h"
#include "records/due.h"
#include "records/links.h"
#include "sheets/words/formatter.h"

#include <iostream>
#include <map>
#include <nlohmann/json.hpp>

namespace app {
namespace {

using records::Visit;

/// As exact as it is printed, with a point whatever the region writes.
std::string amountOf(const Visit& v, const sheets::Formatter& w) {
  const int places = w.isMetric() ? 1 : 2;
  const std::int64_t step = w.isMetric() ? 100'000 : 10'000;
  return base::decimal(
      base::divide(v.litres.millionths, w.volumeStep().millionths, base::Round::HalfUp) * step, places, ".",
      "");
}

/// What each job was made from, by its file.
using Origins = std::map<std::string, const Shipped*>;

sheets::Formatter formatterFor(const Visit& v, const Origins& origins) {
  const Shipped& shipped = *origins.at(v.file);
  return {shipped.content.regions.at(v.region), shipped.english};
}

std::string csv(const std::vector<Visit>& visits, const Origins& origins) {
  std::string s = byteOrderMark +
                  csvLine({"due", "job", "customer", "phone", "email", "address", "product", "colour",
                           "batches", "amount", "unit", "amount_from", "last_coat", "open_quotes", "file"});
  for (const auto& v : visits) {
    const auto w = formatterFor(v, origins);
    s += csvLine({base::isoDate(v.due), v.ref, v.customer, v.phone, v.email, base::joined(v.address),
                  v.product, v.colour, base::joined(v.batches), amountOf(v, w), w.volumeUnit(),
                  v.isRecorded ? "records" : "plan", base::isoDate(v.lastCoat), base::joined(v.openQuotes),
                  v.file});
  }
  return s;
}

std::string json(const std::vector<Visit>& visits) {
  auto list = nlohmann::ordered_json::array();
  for (const auto& v : visits) {
    list.push_back({{"due", base::isoDate(v.due)},
                    {"job", v.ref},
                    {"customer", v.customer},
                    {"phone", v.phone},
                    {"email", v.email},
                    {"address", v.address},
                    {"product", v.product},
                    {"colour", v.colour},
                    {"batches", v.batches},
                    {"litres", base::asLitres(v.litres)},
                    {"litres_from", v.isRecorded ? "records" : "plan"},
                    {"last_coat", base::isoDate(v.lastCoat)},
                    {"open_quotes", v.openQuotes},
                    {"file", v.file}});
  }
  // The name of a file may be any bytes.
  return list.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

std::size_t letters(const std::string& s) {
  std::size_t n = 0;
  for (std::size_t at = 0; at < s.size(); ++n) base::nextLetter(s, at);
  return n;
}

/// Columns as wide as their longest field.
std::string table(const std::vector<Visit>& visits, const Origins& origins) {
  std::vector<std::vector<std::string>> rows = {
      {"due", "job", "customer", "address", "product", "colour", "batches", "last coat took", "open quote"}};
  for (const auto& v : visits) {
    const auto w = formatterFor(v, origins);
    rows.push_back({base::isoDate(v.due), v.ref, v.customer, base::joined(v.address), v.product, v.colour,
                    base::joined(v.batches), w.volume(v.litres) + (v.isRecorded ? "" : " (planned)"),
                    base::joined(v.openQuotes)});
  }
  std::vector<std::size_t> widths(rows.front().size());
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], letters(row[i]));
  }
  std::string s;
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i)
      line += row[i] + std::string(widths[i] - letters(row[i]) + 2, ' ');
    s += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return s;
}

}  // namespace

int due(const DueOrder& order) {
  const Firms firms(order.choices);
  base::Diagnostics messages;
  std::vector<Visit> all;
  std::vector<const model::Job*> linked;
  const auto jobs = readJobs(order.folder, Wanted::Dates, firms, messages);
  Origins origins;
  for (const auto& job : jobs) {
    linked.push_back(&job.c.job);
    origins[job.file] = job.shipped.get();
    if (auto visit = records::visitAfter(job.file, job.c, job.estimate, job.actual, job.plan))
      all.push_back(std::move(*visit));
  }
  records::checkLinks(linked, messages);
  std::cerr << base::format(messages);
  const auto visits = records::dueBetween(std::move(all), order.from, order.by);
  switch (order.form) {
    case ListForm::Table:
      std::cout << (visits.empty() ? "nobody falls due\n" : table(visits, origins));
      break;
    case ListForm::Json:
      std::cout << json(visits);
      break;
    case ListForm::Csv:
      std::cout << csv(visits, origins);
      break;
  }
  return messages.ok() ? 0 : 1;
}

}  // namespace app
