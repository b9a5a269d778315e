#include "app/pack/compute.h"

#include "app/pack/consumer_check.h"
#include "app/pack/weather_file.h"
#include "app/system/files.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "records/actual.h"
#include "safety/exposure.h"
#include "safety/hazards.h"
#include "schedule/crew/records.h"
#include "schedule/plan.h"
#include "schedule/weather/hours.h"

#include <filesystem>
#include <fstream>

namespace app {
namespace {

constexpr auto defaultTheme = "generous";

/// The theme asked for, or the brand's; nothing (and an error) where there is none of that name.
std::optional<model::Theme> themeFor(const model::Brand& brand, const std::string& brandFile,
                                     const Shipped& shipped, const Choices& choices,
                                     base::Diagnostics& messages) {
  const std::string name = !choices.theme.empty() ? choices.theme
                           : !brand.theme.empty() ? brand.theme
                                                  : defaultTheme;
  const std::string file = findLook(shipped.looks, "themes/" + name + ".yaml");
  if (file.empty()) {
    reportUnknown({choices.theme.empty() ? brandFile : "--theme"}, "theme", name, "theme",
                  themeNames(shipped.looks), messages);
    return {};
  }
  std::vector<std::string> folders;
  for (const auto& look : shipped.looks) folders.push_back(look + "/themes");
  auto theme = readOnce(shipped.caches->themes, file, messages,
                        [&](auto& mistakes) { return input::readTheme(file, mistakes, folders); });
  if (messages.ok()) input::applyBrand(theme, brand, brandFile, messages);
  return theme;
}

/// A file that cannot be read is told where it is named.
bool isReadable(const std::string& file, const base::SourcePos& pos, const std::string& key,
                base::Diagnostics& messages) {
  std::error_code failed;
  if (std::filesystem::is_regular_file(file, failed) && std::ifstream(file)) return true;
  messages.error(pos, key, "'" + file + "' cannot be read: " + input::whyUnreadable(file),
                 key == "brand" ? "the path starts at the folder of the file it stands in"
                                : "'planksheaf rates FOLDER' writes it; the path starts at the folder of the "
                                  "file it stands in");
  return false;
}

/// A job with all it refers to; nothing when there were errors.
std::optional<model::JobInputs> readInputs(const JobText& text, const Shipped& shipped,
                                           const Choices& choices, base::Diagnostics& messages) {
  const auto& content = shipped.content;
  auto job = input::readJob(text.text, text.name, content, messages);
  if (const auto region = content.regions.find(job.site.region); region != content.regions.end())
    schedule::checkSite(job, region->second, messages);
  schedule::checkRecordedTimes(job, messages);
  readWeatherFile(job, text.name, messages);
  const std::string brandFile = !choices.brandFile.empty() ? choices.brandFile : job.brandFile;
  const auto brandPos =
      choices.brandFile.empty() ? base::placeOf(job.places, "brand") : base::SourcePos{"--brand"};
  model::Brand brand;
  if (!brandFile.empty() && isReadable(brandFile, brandPos, "brand", messages))
    brand = readOnce(shipped.caches->brands, brandFile, messages,
                     [&](auto& mistakes) { return input::readBrand(brandFile, content, mistakes); });
  if (!messages.ok()) return {};
  const auto rates = input::ratesFor(text.text, text.name, job, brand, messages);
  if (!rates) return {};
  const bool isJobs = !job.ratesFile.empty();
  const auto& learnedFile = isJobs ? job.ratesFile : brand.ratesFile;
  const auto learnedPos = isJobs ? base::placeOf(job.places, "spreading_rates") : brand.ratesPos;
  std::vector<model::LearnedRate> learned;
  if (!learnedFile.empty() && isReadable(learnedFile, learnedPos, "spreading_rates", messages))
    learned = readOnce(shipped.caches->learnedRates, learnedFile, messages, [&](auto& mistakes) {
      return input::readLearnedRates(learnedFile, content, mistakes);
    });
  auto theme = themeFor(brand, brandFile, shipped, choices, messages);
  if (!theme || !messages.ok()) return {};
  const auto& product = content.products.at(job.product);
  const auto& region = content.regions.at(job.site.region);
  return model::JobInputs{std::move(job), &product,           &region,          std::move(brand),
                          *rates,         std::move(learned), std::move(*theme)};
}

std::vector<estimate::LateCoat> lateCoats(const model::Plan& plan) {
  std::vector<estimate::LateCoat> late;
  for (const auto& pass : plan.extraPasses) late.push_back({pass.deck, pass.coat});
  return late;
}

/// The stages in their order.
std::optional<model::JobResult> computeInputs(model::JobInputs c, const std::string& forecast,
                                              const Shipped& shipped, const schedule::Bounds& bounds,
                                              base::Diagnostics& messages) try {
  const auto& content = shipped.content;
  auto estimate = estimate::makeEstimate(c, content);
  base::Diagnostics planning;
  auto plan = schedule::makePlan(c, content, estimate, planning, bounds);
  if (planning.ok()) schedule::applyRecords(plan, c, planning);
  messages.addAt(c.job.places, planning);
  if (!messages.ok()) return {};
  schedule::checkForecastDays(c.job, plan, forecast, messages);
  schedule::checkUsualWeather(c, plan, messages);
  schedule::checkHolidays(c, plan, messages);
  auto resources =
      estimate::makeResources(c, content, estimate, static_cast<int>(plan.days.size()), lateCoats(plan));
  auto laid = records::asLaid(c, estimate, resources.product);
  records::warnOfUse(c, laid, resources.product, messages);
  auto price = estimate::makePrice(c, content, estimate, resources);
  auto exposure = safety::exposureOf(c, content, estimate, resources, plan);
  auto hazards = safety::hazardsOf(c, content, estimate, resources, exposure);
  return model::JobResult{
      std::move(c),         content,         shipped.english,  std::move(estimate), std::move(plan),
      std::move(resources), std::move(laid), std::move(price), std::move(exposure), std::move(hazards)};
} catch (const std::overflow_error&) {
  messages.error(base::placeOf(c.job.places, "areas"), "", "comes to figures too large to compute",
                 "check the sizes, rates and prices");
  return {};
}

}  // namespace

std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages) {
  if (file == "-") return JobText{"<standard input>", readStandardInput()};
  if (auto text = input::readFile(file)) return JobText{file, std::move(*text)};
  messages.error({file}, "", "cannot be read: " + input::whyUnreadable(file),
                 "give the path of a job file; 'planksheaf new FILE' makes one");
  return {};
}

std::optional<model::JobResult> compute(const std::string& file, const Shipped& shipped,
                                        const Choices& choices, base::Diagnostics& messages) {
  const auto job = readJobText(file, messages);
  return job ? compute(*job, shipped, choices, messages) : std::nullopt;
}

std::optional<model::JobResult> compute(const JobText& job, const Shipped& shipped, const Choices& choices,
                                        base::Diagnostics& messages) {
  auto c = readInputs(job, shipped, choices, messages);
  if (!c) return {};
  const auto forecast = weatherPath(c->job, job.name);
  auto x = computeInputs(std::move(*c), forecast, shipped, choices.bounds, messages);
  if (!x) return {};
  checkConsumerRules(x->c, x->price, sheets::Formatter(*x->c.region, shipped.english), messages);
  if (!x->c.product->sds && !x->estimate.coats.empty())
    messages.warn(base::placeOf(x->c.job.places, "product"), "product",
                  "'" + x->c.product->id + "' has no safety data, so the crew must not start",
                  "copy them from its safety data sheet (SDS) under 'sds:' in its file");
  return x;
}

}  // namespace app
