#include "app/pack/pack.h"

#include "app/pack/documents.h"
#include "app/pack/job_calendar.h"
#include "app/pack/weather_file.h"
#include "app/system/folder_exchange.h"
#include "input/read.h"

#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr auto calendar = "job.ics";

/// The files of these documents, in any language.
std::set<std::string> filesOf(const std::vector<std::string>& documents, const Shipped& shipped) {
  std::set<std::string> names;
  for (const auto& name : documents) {
    names.insert(name + ".pdf");
    for (const auto& language : shipped.content.languages) names.insert(name + "-" + language + ".pdf");
  }
  return names;
}

/// The calendar file that lies in the pack's folder; empty where there is none.
std::string calendarBefore(const std::string& folder) {
  const auto path = fs::path(folder) / calendar;
  return fs::is_regular_file(path) ? input::readFile(path.string()).value_or("") : "";
}

}  // namespace

std::string packFolder(const std::string& job, const std::string& ref, const std::string& folder) {
  const auto parent = folder.empty() ? fs::path(job).parent_path() : fs::path(folder);
  return (parent / ref).lexically_normal().string();
}

std::optional<Pack> makePack(const JobText& job, const Shipped& shipped, const PackOrder& order,
                             base::Diagnostics& messages) {
  const auto x = compute(job, shipped, order.choices, messages);
  if (!x) return {};
  Pack pack{packFolder(job.name, x->c.job.ref, order.folder),
            makeDocuments(*x, shipped, order.choices, order.only, messages),
            x->c.job.forecast.steps.empty() ? "" : weatherWords(x->c.job)};
  if (order.only.empty() && messages.ok()) {
    const auto language = languagesOf("office", *x, order.choices).front();
    if (const auto own = localized(*x, shipped, language, messages))
      pack.files.push_back({calendar, jobCalendar(*own, calendarBefore(pack.folder))});
  }
  return messages.ok() ? std::optional(std::move(pack)) : std::nullopt;
}

void writePack(const Pack& pack, const PackOrder& order, const Shipped& shipped) {
  const bool isWhole = order.only.empty();
  auto replaced = filesOf(isWhole ? shipped.packed : order.only, shipped),
       ours = filesOf(shipped.content.documents, shipped);
  if (isWhole) replaced.insert(calendar);
  ours.insert(calendar);
  replaced.insert(stampName);
  ours.insert(stampName);
  exchangeFolder({pack.folder, pack.files, std::move(replaced), std::move(ours)});
}

}  // namespace app
