#include "app/commands/year_after.h"

#include "app/firm/firm_folder.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "base/quantity_words.h"
#include "estimate/coverage.h"
#include "input/job/next_year.h"
#include "input/read.h"
#include "records/actual.h"
#include "schedule/crew/calendar.h"

#include <algorithm>
#include <filesystem>
#include <iostream>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1;

int refuse(const std::string& file, const std::string& what, const std::string& hint) {
  base::Diagnostics messages;
  messages.error({file}, "", what, hint);
  std::cerr << base::format(messages);
  return refused;
}

/// LA-2027-031 is followed by LA-2027-031-2, and that by LA-2027-031-3.
std::string nextRef(const model::Job& job) {
  const auto dash = job.ref.rfind('-');
  const std::string last = dash == std::string::npos ? "" : job.ref.substr(dash + 1);
  const bool isNumber =
      !last.empty() && last.size() < 4 && last.find_first_not_of("0123456789") == std::string::npos;
  if (!job.after.empty() && isNumber)
    return job.ref.substr(0, dash + 1) + std::to_string(std::stoi(last) + 1);
  return job.ref + "-2";
}

/// '11.28 m2/L' as a job file takes it.
std::string rateText(const base::Spread& s, model::UnitSystem units) {
  constexpr std::int64_t gallon = 3'785'411'784, squareFoot = 92'903'040'000;  // nL and um2, exactly
  const base::Wide area = s.area.millionths, volume = s.volume.millionths;
  if (units == model::UnitSystem::Metric)
    return base::decimal(base::divide(area * 1000, volume, base::Round::HalfUp), 2, ".", "") + " m2/L";
  const auto rate = base::divide(area * gallon, volume * squareFoot / 1'000'000, base::Round::HalfUp);
  return base::decimal(rate, 1, ".", "") + " ft2/gal";
}

bool isReadable(const base::Spread& s) {  // a job takes 0.5 to 100 m2/L
  const base::Wide area = s.area.millionths, volume = s.volume.millionths;
  return area * 2 >= volume * 1000 && area <= volume * 100'000;
}

/// The maintenance coat of each deck. One coat on boards that had been oiled, as they are again, tells what
/// it takes; the coats of a first job do not, nor does a record that looks wrong.
std::vector<input::NextYear::Area> areasOf(const model::JobResult& x) {
  const auto& job = x.c.job;
  const auto state =
      x.c.product->kind == model::ProductKind::FilmStain ? model::State::Film : model::State::Oiled;
  std::vector<input::NextYear::Area> areas;
  for (std::size_t deck = 0; deck < job.areas.size(); ++deck) {
    input::NextYear::Area area{input::nameOf(state), "", ""};
    const bool wasMaintained =
        job.areas[deck].coats == 1 && estimate::stateWhenCoated(job, job.areas[deck]) == state;
    for (const auto& coat : x.laid.coats) {
      if (!wasMaintained || coat.deck != deck || !coat.rate) continue;
      if (records::isFarFromPlan(*coat.litres, coat.plannedLitres)) continue;
      const auto rate = records::withoutLoss(*coat.rate, job.loss);
      if (!isReadable(rate)) continue;
      area.rate = rateText(rate, x.c.region->units);
      area.why = job.loss.isZero() ? "as it was laid"
                                   : "last year " + rateText(*coat.rate, x.c.region->units) +
                                         " as laid, the loss taken out";
    }
    if (wasMaintained && area.rate.empty() && !job.areas[deck].rates.empty()) {
      area.rate = rateText(job.areas[deck].rates.front(), x.c.region->units);
      area.why = "as in the last job";
    }
    areas.push_back(area);
  }
  return areas;
}

std::vector<std::string> aboutOf(const model::JobResult& x) {
  std::vector<std::string> batches = x.c.job.batches;
  for (const auto& coat : x.c.job.done) records::addBatches(batches, coat.batches);
  std::string listed;
  for (const auto& b : batches) listed += (listed.empty() ? "" : ", ") + b;
  const std::string how = x.laid.coats.size() == x.estimate.coats.size() ? "" : "as planned ";
  return {
      "The year after " + x.c.job.ref + ": last coat " + how + "on " + base::isoDate(x.plan.finished.day) +
          (batches.empty() ? "." : ", batches " + listed + "."),
      "Look the decks over before you quote. What was promised last year stands as comments: put back what "
      "holds."};
}

fs::path folderOf(const fs::path& file) { return fs::absolute(file).lexically_normal().parent_path(); }

/// A path named in the old file, as the new one has to name it; empty when both lie in one folder.
std::string moved(const std::string& path, const fs::path& oldFolder, const fs::path& newFolder) {
  if (path.empty() || oldFolder == newFolder) return {};
  return fs::proximate(fs::absolute(path), newFolder).generic_string();
}

/// The firm as the new file has to name it; empty where the old line can stay, or the same folder is found
/// without one.
std::string movedFirm(const model::Job& job, const Shipped& shipped, const fs::path& oldFile,
                      const fs::path& newFile) {
  const auto oldFolder = folderOf(oldFile), newFolder = folderOf(newFile);
  if (!job.firmFolder.empty()) return moved(job.firmFolder, oldFolder, newFolder);
  const auto found = nearestFirm(newFile.string());
  const auto whole = [](const std::string& folder) { return fs::absolute(folder).lexically_normal(); };
  const bool isSame = !found.empty() && whole(shipped.firmFolder) == whole(found);
  return isSame ? "" : moved(shipped.firmFolder, oldFolder, newFolder);
}

/// The schema the editor's line names, from the new folder; empty where it can stay.
std::string movedSchema(const std::string& text, const fs::path& oldFolder, const fs::path& newFolder) {
  const std::string key = "$schema=";
  const auto at = text.find(key);
  if (at == std::string::npos || at > text.find('\n') || oldFolder == newFolder) return {};
  const auto from = at + key.size();
  const std::string named = text.substr(from, text.find_first_of(" \r\n", from) - from);
  if (!fs::is_regular_file(oldFolder / named)) return {};
  return fs::proximate(oldFolder / named, newFolder).generic_string();
}

/// A start that is sooner than anybody comes back for a year's maintenance, or on a day off.
void warnOfStart(base::Date start, const model::JobResult& last, const model::JobResult& next,
                 const std::string& file, base::Diagnostics& messages) {
  const std::string day = base::isoDate(start);
  if (!schedule::Calendar(next.c.job, next.c.region, 0, 0).isWorkday(start))
    messages.warn({file}, "start", "the crew does not work on " + day, "give a working day under --start");
  const auto visit = std::find_if(last.plan.events.begin(), last.plan.events.end(),
                                  [](const auto& event) { return event.name == "maintenance"; });
  const auto finished = last.plan.finished.day;
  if (visit == last.plan.events.end() || (start - finished) * 2 >= visit->at.day - finished) return;
  const auto days = (start - finished).count();
  messages.warn(
      {file}, "start",
      day + " is only " + std::to_string(days) + (days == 1 ? " day" : " days") + " after the last coat",
      "the yearly visit falls due on " + base::isoDate(visit->at.day));
}

}  // namespace

int again(const AgainOrder& order) {
  base::Diagnostics messages;
  const auto text = input::readFile(order.job);
  if (!text)
    return refuse(order.job, "cannot be read: " + input::whyUnreadable(order.job),
                  "give the path of a finished job");
  const Firms firms(order.choices);
  const auto shipped = firms.of({order.job, *text});
  const auto x = compute(JobText{order.job, *text}, *shipped, order.choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  if (!x->c.job.choices.empty() && !x->c.job.isAccepted)
    return refuse(order.job, "none of its choices is accepted, so there is no work to follow",
                  "add a line like accepted: 1");
  if (x->estimate.coats.empty())
    return refuse(order.job, "lays no coat, so there is none to renew", "give a job with 'oil' under 'work'");
  if (order.start <= x->plan.finished.day)
    return refuse(order.job, "its last coat lies on " + base::isoDate(x->plan.finished.day),
                  "give a later day under --start");
  const auto quoted = order.quoted.value_or(order.start - std::chrono::days{28});
  if (quoted > order.start)
    return refuse(order.job, "the work starts before the date of the quote",
                  "give an earlier day under --quoted");

  input::NextYear next;
  next.ref = nextRef(x->c.job);
  next.after = x->c.job.ref;
  next.quoted = quoted;
  next.start = order.start;
  const fs::path file =
      order.file.empty() ? fs::path(order.job).parent_path() / (next.ref + ".yaml") : fs::path(order.file);
  if (fs::exists(file))
    return refuse(file.string(), "is there already", "choose another name with -o; nothing is written over");
  const auto oldFolder = folderOf(order.job), newFolder = folderOf(file);
  if (order.choices.firm.empty()) next.firm = movedFirm(x->c.job, *shipped, order.job, file);
  next.spreadingRates = moved(x->c.job.ratesFile, oldFolder, newFolder);
  next.schema = movedSchema(*text, oldFolder, newFolder);
  next.areas = areasOf(*x);
  next.about = aboutOf(*x);
  if (!x->c.job.choices.empty()) next.choice = x->c.job.choice;
  const auto fresh = input::nextYearsJob(*text, next);

  base::Diagnostics mistakes, warnings;
  const auto y = compute(JobText{file.string(), fresh.text}, *shipped, order.choices, mistakes);
  if (!y) {
    std::cerr << base::format(mistakes);
    return refuse(order.job, "next year's job has the mistakes above and is not written",
                  "mend the same lines in this job, then run it again");
  }
  writeAll({{file.string(), fresh.text}});
  warnOfStart(order.start, *x, *y, file.string(), warnings);
  std::cerr << base::format(warnings);
  const std::string name = base::printable(file.string());
  if (!fresh.promises.empty()) std::cerr << name << ": comments now, put back what still holds:\n";
  for (const auto& promise : fresh.promises) std::cerr << "  " << base::printable(promise) << "\n";
  std::cout << name << ": look it over; then run 'planksheaf check " << name << "'\n";
  return done;
}

}  // namespace app
