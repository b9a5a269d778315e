#include "app/pack/compute.h"

#include "app/pack/consumer_check.h"
#include "app/pack/files.h"
#include "base/nearest.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "records/actual.h"
#include "safety/exposure.h"
#include "safety/hazards.h"
#include "schedule/crew/records.h"
#include "schedule/plan.h"
#include "schedule/weather/hours.h"

#include <filesystem>

namespace app {
namespace {

constexpr auto defaultTheme = "generous";

std::vector<estimate::LateCoat> lateCoats(const model::Plan& plan) {
  std::vector<estimate::LateCoat> late;
  for (const auto& pass : plan.extraPasses) late.push_back({pass.deck, pass.coat});
  return late;
}

}  // namespace

Shipped readShipped(const Choices& choices) {
  Shipped shipped;
  shipped.contentFolder = shippedFolder("content");
  if (!choices.looks.empty()) shipped.looks.push_back(choices.looks);
  shipped.looks.push_back(shippedFolder("templates"));
  shipped.templates = readTemplates(shipped.looks, "en");
  base::Diagnostics messages;
  shipped.content = input::readContent(shipped.contentFolder, messages);
  shipped.english =
      input::readLanguage(shipped.contentFolder + "/languages/en.yaml", "en", nullptr, {}, messages);
  if (!messages.ok())
    throw std::runtime_error("the content that comes with planksheaf has mistakes:\n" +
                             base::format(messages));
  return shipped;
}

std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages) {
  if (file == "-") return JobText{"<standard input>", readStandardInput()};
  if (auto text = input::readFile(file)) return JobText{file, std::move(*text)};
  messages.error({file}, "", "cannot be read: " + input::whyUnreadable(file),
                 "give the path of a job file; 'planksheaf new FILE' makes one");
  return {};
}

std::optional<Computation> compute(const std::string& file, const Shipped& shipped, const Choices& choices,
                                   base::Diagnostics& messages) {
  const auto job = readJobText(file, messages);
  return job ? computeText(job->text, job->name, shipped, choices, messages) : std::nullopt;
}

std::optional<Computation> computeText(const std::string& text, const std::string& name,
                                       const Shipped& shipped, const Choices& choices,
                                       base::Diagnostics& messages) {
  Computation x;
  const auto& content = shipped.content;
  x.c.job = input::readJob(text, name, content, messages);
  const std::string brand = !choices.brandFile.empty() ? choices.brandFile : x.c.job.brandFile;
  if (const auto region = content.regions.find(x.c.job.site.region); region != content.regions.end())
    schedule::checkSite(x.c.job, region->second, messages);
  schedule::checkRecordedTimes(x.c.job, messages);
  const auto forecast =
      (std::filesystem::path(name).parent_path() / x.c.job.forecast.file).lexically_normal().string();
  schedule::checkForecast(x.c.job, forecast, messages);
  if (!brand.empty())
    x.c.brand = readOnce(shipped.shelves->brands, brand, messages,
                         [&](auto& told) { return input::readBrand(brand, content, told); });
  if (!messages.ok()) return {};
  x.c.product = &content.products.at(x.c.job.product);
  x.c.region = &content.regions.at(x.c.job.site.region);
  const auto rates = input::ratesFor(text, name, x.c.job, x.c.brand, messages);
  if (!rates) return {};
  x.c.rates = *rates;
  const auto& learned = x.c.job.ratesFile.empty() ? x.c.brand.ratesFile : x.c.job.ratesFile;
  if (!learned.empty())
    x.c.job.learnedRates = readOnce(shipped.shelves->learnedRates, learned, messages, [&](auto& told) {
      return input::readLearnedRates(learned, content, told);
    });
  const std::string theme = !choices.theme.empty()     ? choices.theme
                            : !x.c.brand.theme.empty() ? x.c.brand.theme
                                                       : defaultTheme;
  const std::string themeFile = findLook(shipped.looks, "themes/" + theme + ".yaml");
  if (themeFile.empty()) {
    const auto known = themeNames(shipped.looks);
    const std::string near = base::nearest(theme, known);
    std::string hint;
    for (const auto& one : known) hint += (hint.empty() ? "themes: " : ", ") + one;
    messages.error({choices.theme.empty() ? brand : "--theme"}, "theme",
                   "'" + theme + "' is not a theme" + (near.empty() ? "" : "; did you mean '" + near + "'?"),
                   hint);
    return {};
  }
  std::vector<std::string> folders;
  for (const auto& look : shipped.looks) folders.push_back(look + "/themes");
  x.c.theme = readOnce(shipped.shelves->themes, themeFile, messages,
                       [&](auto& told) { return input::readTheme(themeFile, told, folders); });
  if (!messages.ok()) return {};
  input::applyBrand(x.c.theme, x.c.brand, brand, messages);
  if (!messages.ok()) return {};

  try {
    const auto first = estimate::makeEstimate(x.c, content, 0);
    base::Diagnostics planning;
    x.plan = schedule::makePlan(x.c, content, first, planning, choices.bounds);
    if (planning.ok()) schedule::applyRecords(x.plan, x.c, planning);
    messages.addAt(x.c.job.places, planning);
    if (!messages.ok()) return {};
    schedule::checkForecastDays(x.c.job, x.plan, forecast, messages);
    x.estimate =
        estimate::makeEstimate(x.c, content, static_cast<int>(x.plan.days.size()), lateCoats(x.plan));
    records::addActual(x.estimate, x.c);
    records::warnOfUse(x.estimate, x.c, messages);
    x.price = estimate::makePrice(x.c, content, x.estimate);
    x.exposure = safety::exposureOf(x.c, content, x.estimate, x.plan);
    x.hazards = safety::hazardsOf(x.c, content, x.estimate, x.exposure);
  } catch (const std::overflow_error&) {
    messages.error(base::placeOf(x.c.job.places, "areas"), "", "comes to figures too large to compute",
                   "check the sizes, rates and prices");
    return {};
  }
  checkConsumerRules(x.c, x.price, sheets::Formatter(*x.c.region, shipped.english), messages);
  if (!x.c.product->sds && !x.estimate.coats.empty())
    messages.warn(base::placeOf(x.c.job.places, "product"), "product",
                  "'" + x.c.product->id + "' has no safety data, so the crew must not start",
                  "copy them from its safety data sheet (SDS) under 'sds:' in its file");
  return x;
}

}  // namespace app
