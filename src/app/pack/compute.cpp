#include "app/pack/compute.h"

#include "app/pack/consumer_check.h"
#include "app/pack/drawings.h"
#include "app/pack/ten_years.h"
#include "app/pack/weather_file.h"
#include "app/system/files.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "model/lookup.h"
#include "records/actual.h"
#include "records/enough.h"
#include "safety/exposure.h"
#include "safety/hazards.h"
#include "schedule/crew/records.h"
#include "schedule/plan.h"
#include "schedule/weather/hours.h"

#include <filesystem>
#include <fstream>
#include <set>

namespace app {
namespace {

constexpr auto defaultTheme = "generous";

std::string firmFileOf(const Shipped& shipped) { return shipped.firmFolder + "/firm.yaml"; }

model::Theme readTheme(const std::string& file, const Shipped& shipped, base::Diagnostics& messages) {
  auto theme = readOnce(shipped.caches->themes, file, messages, [&](auto& mistakes) {
    return input::readTheme(file, mistakes, shipped.looks.themes);
  });
  if (messages.ok()) input::applyFirm(theme, shipped.firm, firmFileOf(shipped), messages);
  return theme;
}

/// The theme asked for, or the firm's; nothing (and an error) where there is none of that name.
std::optional<model::Theme> themeFor(const Shipped& shipped, const Choices& choices,
                                     base::Diagnostics& messages) {
  const auto& firm = shipped.firm;
  const std::string name = !choices.theme.empty() ? choices.theme
                           : !firm.theme.empty()  ? firm.theme
                                                  : defaultTheme;
  const std::string file = findLook(shipped.looks.themes, name + ".yaml");
  if (file.empty()) {
    reportUnknown({choices.theme.empty() ? firmFileOf(shipped) : "--theme"}, "theme", name, "theme",
                  themeNames(shipped.looks), messages);
    return {};
  }
  return readTheme(file, shipped, messages);
}

/// Why a job has no firm: told where it is named, if it is.
void tellNoFirm(const JobText& text, const model::Job& job, const Choices& choices,
                base::Diagnostics& messages) {
  const bool isChosen = !choices.firm.empty();
  const auto& folder = isChosen ? choices.firm : job.firmFolder;
  if (folder.empty()) {
    messages.error({text.name}, "firm", "there is no firm's folder: no 'firm' beside the job or above it",
                   "'planksheaf firm DIR' makes one; name it 'firm', or in the job: firm: DIR");
    return;
  }
  std::error_code failed;
  const bool isFolder = std::filesystem::is_directory(folder, failed);
  messages.error(isChosen ? base::SourcePos{"--firm"} : base::placeOf(job.places, "firm"), "firm",
                 "'" + folder + "' is not a firm's folder: " +
                     (isFolder                                  ? "it has no 'firm.yaml'"
                      : std::filesystem::exists(folder, failed) ? "it is not a folder"
                                                                : "there is no such folder"),
                 "'planksheaf firm DIR' makes one" +
                     std::string(isChosen ? "" : "; the path starts at the job's folder"));
}

/// The firm's for the region of the job; nothing (and an error) where it has none.
std::optional<model::Rates> ratesFor(const model::Job& job, const model::Firm& firm,
                                     base::Diagnostics& messages) {
  const auto& region = job.site.region;
  const auto found = firm.rates.find(region);
  if (found != firm.rates.end()) return found->second;
  messages.error(
      firm.ratesPos, "rates",
      "'" + firm.name + "' has no rates for region '" + region + "', that of job '" + job.ref + "'",
      "add them, under rates: " + region);
  return {};
}

/// The spreading rates the job names, or the firm's own; a file that cannot be read is told where it is
/// named.
std::vector<model::LearnedRate> learnedRates(const model::Job& job, const Shipped& shipped,
                                             base::Diagnostics& messages) {
  const auto& file = job.ratesFile.empty() ? shipped.firm.spreadingRates : job.ratesFile;
  if (file.empty()) return {};
  std::error_code failed;
  if (!std::filesystem::is_regular_file(file, failed) || !std::ifstream(file)) {
    messages.error(
        job.ratesFile.empty() ? base::SourcePos{file} : base::placeOf(job.places, "spreading_rates"),
        "spreading_rates", "'" + file + "' cannot be read: " + input::whyUnreadable(file),
        "'planksheaf rates FOLDER' writes it; the path starts at the folder of the file it stands in");
    return {};
  }
  return readOnce(shipped.caches->learnedRates, file, messages,
                  [&](auto& mistakes) { return input::readLearnedRates(file, shipped.content, mistakes); });
}

/// A job with all it refers to; nothing when there were errors.
std::optional<model::JobInputs> inputsOf(const JobText& text, model::Job job, const Shipped& shipped,
                                         const Choices& choices, base::Diagnostics& messages) {
  const auto& content = shipped.content;
  if (const auto region = content.regions.find(job.site.region); region != content.regions.end())
    schedule::checkSite(job, region->second, messages);
  schedule::checkRecordedTimes(job, messages);
  readWeatherFile(job, text.name, messages);
  checkPhotos(job, messages);
  const bool isNamed = !choices.firm.empty() || !job.firmFolder.empty();
  if (shipped.firmFolder.empty() && (isNamed || messages.ok())) tellNoFirm(text, job, choices, messages);
  messages.add(shipped.firmMistakes);
  if (!messages.ok()) return {};
  const auto rates = ratesFor(job, shipped.firm, messages);
  if (!rates) return {};
  auto learned = learnedRates(job, shipped, messages);
  auto theme = themeFor(shipped, choices, messages);
  if (!theme || !messages.ok()) return {};
  const auto& product = content.products.at(job.product);
  const auto& region = content.regions.at(job.site.region);
  return model::JobInputs{std::move(job), &product,           &region,          shipped.firm,
                          *rates,         std::move(learned), std::move(*theme)};
}

/// A coat that comes past its longest wait is sanded first: not on boards that may hold arsenic, without
/// papers.
void checkLateSanding(const model::JobInputs& c, const model::Content& content, const model::Plan& plan,
                      base::Diagnostics& messages) {
  if (model::progressOf(c.job) == model::Progress::Done || model::maySandTreated(c.job)) return;
  const std::string* whom = model::authorityFor(*c.region, "treated");
  std::set<std::pair<std::size_t, int>> told;  // a deck laid in parts is told once
  for (const auto& pass : plan.extraPasses) {
    const auto& deck = c.job.areas.at(pass.deck);
    if (!model::mayBeTreated(deck, content) || !told.emplace(pass.deck, pass.coat).second) continue;
    messages.error(
        deck.pos, "areas",
        "coat " + std::to_string(pass.coat) + " of '" + deck.name +
            "' comes so late that the boards are sanded first, and they may hold arsenic",
        "give the crew more days, take another product, or write 'licensed_for: [treated]' where your "
        "papers and " +
            (whom ? *whom : "the authority") + " allow it");
  }
}

/// The stages in their order.
std::optional<model::JobResult> computeInputs(model::JobInputs c, const std::string& forecast,
                                              const Shipped& shipped, const schedule::Bounds& bounds,
                                              base::Diagnostics& messages) try {
  const auto regional = regionalEnglish(*c.region, shipped, messages);  // the cache keeps it
  const auto& content = regional ? regional->content : shipped.content;
  const auto& english = regional ? regional->language : shipped.english;
  c.product = &content.products.at(c.job.product);
  c.region = &content.regions.at(c.job.site.region);
  auto estimate = estimate::makeEstimate(c, content);
  base::Diagnostics planning;
  auto plan = schedule::makePlan(c, content, estimate, planning, bounds);
  if (planning.ok()) schedule::applyRecords(plan, c, planning);
  if (c.job.doneOn) schedule::applyDayDone(plan, c);
  messages.addAt(c.job.places, planning);
  if (!messages.ok()) return {};
  checkLateSanding(c, content, plan, messages);
  if (!messages.ok()) return {};
  schedule::checkForecastDays(c.job, plan, forecast, messages);
  schedule::checkUsualWeather(c, plan, messages);
  schedule::checkHolidays(c, plan, messages);
  auto resources =
      estimate::makeResources(c, content, estimate, static_cast<int>(plan.days.size()), plan.extraPasses);
  auto enough = records::enoughFor(c, estimate, resources.product);
  auto laid = records::asLaid(c, estimate, resources.product);
  records::warnOfUse(c, laid, resources.product, messages);
  auto price = estimate::makePrice(c, content, estimate, resources);
  auto exposure = safety::exposureOf(c, content, estimate, resources, plan);
  auto hazards = safety::hazardsOf(c, content, estimate, resources, exposure);
  return model::JobResult{std::move(c),        content,           english,
                          std::move(estimate), std::move(plan),   std::move(resources),
                          std::move(enough),   std::move(laid),   std::move(price),
                          std::move(exposure), std::move(hazards)};
} catch (const std::overflow_error&) {
  messages.error(base::placeOf(c.job.places, "areas"), "", "comes to figures too large to compute",
                 "check the sizes, rates and prices");
  return {};
}

/// Adds to 'messages' all that is wrong.
std::optional<model::JobResult> computeRead(const JobText& text, input::ReadJob read, const Shipped& shipped,
                                            const Choices& choices, base::Diagnostics& messages) {
  messages.add(read.messages);
  auto c = inputsOf(text, std::move(read.job), shipped, choices, messages);
  if (!c) return {};
  const auto forecast = weatherPath(c->job, text.name);
  auto x = computeInputs(std::move(*c), forecast, shipped, choices.bounds, messages);
  if (!x) return {};
  if (x->c.job.price.asksTenYears) x->tenYears = tenYearsOf(*x, messages);
  if (!messages.ok()) return {};
  checkConsumerRules(x->c, x->price, sheets::Formatter(*x->c.region, shipped.english), messages);
  if (!x->c.product->sds && !x->estimate.coats.empty())
    messages.warn(base::placeOf(x->c.job.places, "product"), "product",
                  "'" + x->c.product->id + "' has no safety data, so the crew must not start",
                  "copy them from its safety data sheet (SDS) under 'sds:' in its file");
  return x;
}

}  // namespace

model::Theme usualTheme(const Shipped& shipped, base::Diagnostics& messages) {
  return readTheme(findLook(shipped.looks.themes, std::string(defaultTheme) + ".yaml"), shipped, messages);
}

std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages) {
  if (file == "-") return JobText{"<standard input>", readStandardInput()};
  if (auto text = input::readFile(file)) return JobText{file, std::move(*text)};
  messages.error({file}, "", "cannot be read: " + input::whyUnreadable(file),
                 "give the path of a job file; 'planksheaf new FILE' makes one");
  return {};
}

ComputedJob computeFile(const std::string& file, const Choices& choices, base::Diagnostics& messages) {
  const auto job = readJobText(file, messages);
  if (!job) return {};
  auto shipped = Firms(choices).of(*job);
  auto result = compute(*job, *shipped, choices, messages);
  return {std::move(shipped), std::move(result)};
}

std::optional<model::JobResult> compute(const JobText& text, const Shipped& shipped, const Choices& choices,
                                        base::Diagnostics& messages) {
  auto jobs = input::readJobs(text.text, text.name, shipped.content);
  if (jobs.size() == 1) return computeRead(text, std::move(jobs.front()), shipped, choices, messages);
  const auto driving = input::driving(jobs);
  std::vector<base::Diagnostics> told(jobs.size());
  std::vector<std::optional<model::JobResult>> results;
  for (std::size_t i = 0; i < jobs.size(); ++i)
    results.push_back(computeRead(text, std::move(jobs[i]), shipped, choices, told[i]));
  input::addOfChoices(told, messages);
  if (!messages.ok()) return {};
  std::vector<std::shared_ptr<const model::JobResult>> others;
  for (std::size_t i = 0; i < results.size(); ++i) {
    if (i != driving) others.push_back(std::make_shared<const model::JobResult>(std::move(*results[i])));
  }
  results[driving]->others = std::move(others);
  return std::move(results[driving]);
}

}  // namespace app
