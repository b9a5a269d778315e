#include "app/after/next_job.h"

#include "app/firm/firm_folder.h"
#include "base/quantity_words.h"
#include "estimate/coverage.h"
#include "input/read.h"
#include "model/plain.h"
#include "records/actual.h"

#include <algorithm>
#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

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
  const bool isKnown = x.c.job.doneOn || x.laid.coats.size() == x.estimate.coats.size();
  const std::string how = isKnown ? "" : "as planned ";
  return {
      "The year after " + x.c.job.ref + ": last coat " + how + "on " + base::isoDate(x.plan.finished.day) +
          (batches.empty() ? "." : ", batches " + listed + "."),
      "Look the decks over before you quote. What was promised last year stands as comments: put back what "
      "holds."};
}

/// '8.16 %': 4 % on prices that were raised by 4 % before.
std::string raisedFurther(base::Share before, base::Share raise) {
  const base::Wide whole = base::Share::whole(100).millionths;
  const base::Wide both = (whole + before.millionths) * (whole + raise.millionths);
  return model::plain(base::Share{base::divide(both, whole, base::Round::HalfUp) - 100'000'000}) + " %";
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

}  // namespace

NextJob nextJob(const JobText& job, const model::JobResult& last, const Shipped& shipped,
                const NextJobOrder& order) {
  input::NextYear next;
  next.ref = nextRef(last.c.job);
  next.after = last.c.job.ref;
  next.quoted = order.quoted;
  next.start = order.start;
  if (order.raise) next.raise = raisedFurther(last.c.job.price.raise, *order.raise);
  const fs::path file =
      order.file.empty() ? fs::path(job.name).parent_path() / (next.ref + ".yaml") : fs::path(order.file);
  const auto oldFolder = folderOf(job.name), newFolder = folderOf(file);
  if (order.namesFirm) next.firm = movedFirm(last.c.job, shipped, job.name, file);
  next.spreadingRates = moved(last.c.job.ratesFile, oldFolder, newFolder);
  next.schema = movedSchema(job.text, oldFolder, newFolder);
  next.areas = areasOf(last);
  next.about = aboutOf(last);
  return {file.string(), input::nextYearsJob(job.text, next)};
}

}  // namespace app
