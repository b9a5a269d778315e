#include "app/pack/compute.h"

#include "app/pack/consumer_check.h"
#include "app/pack/files.h"
#include "app/pack/weather_file.h"
#include "base/nearest.h"
#include "estimate/estimate.h"
#include "input/look/front_matter.h"
#include "input/read.h"
#include "records/actual.h"
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

std::vector<estimate::LateCoat> lateCoats(const model::Plan& plan) {
  std::vector<estimate::LateCoat> late;
  for (const auto& pass : plan.extraPasses) late.push_back({pass.deck, pass.coat});
  return late;
}

/// The templates and the documents they are: those of a pack, then the others by name.
void addDocuments(Shipped& shipped) {
  std::set<std::string> names;
  for (const auto& language : shipped.content.languages) {
    const auto& templates = shipped.templates[language] = readTemplates(shipped.looks, language);
    for (const auto& [name, head] : templates.documents) names.insert(name);
  }
  base::Diagnostics messages;
  shipped.packed =
      input::readPackList(findLook(shipped.looks, "pack.yaml"), {names.begin(), names.end()}, messages);
  if (!messages.ok()) throw std::runtime_error("the looks have mistakes:\n" + base::format(messages));
  for (const auto& name : shipped.packed) names.erase(name);
  auto& documents = shipped.content.documents;
  documents = shipped.packed;
  documents.insert(documents.end(), names.begin(), names.end());
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

}  // namespace

Shipped readShipped(const Choices& choices) {
  Shipped shipped;
  shipped.contentFolder = shippedFolder("content");
  if (!choices.looks.empty()) shipped.looks.push_back(choices.looks);
  shipped.looks.push_back(shippedFolder("templates"));
  base::Diagnostics messages;
  shipped.content = input::readContent(shipped.contentFolder, messages);
  shipped.english =
      input::readLanguage(shipped.contentFolder + "/languages/en.yaml", "en", nullptr, {}, messages);
  if (!messages.ok())
    throw std::runtime_error("the content that comes with planksheaf has mistakes:\n" +
                             base::format(messages));
  addDocuments(shipped);
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
  readWeatherFile(x.c.job, name, messages);
  const auto brandPos =
      choices.brandFile.empty() ? base::placeOf(x.c.job.places, "brand") : base::SourcePos{"--brand"};
  if (!brand.empty() && isReadable(brand, brandPos, "brand", messages))
    x.c.brand = readOnce(shipped.shelves->brands, brand, messages,
                         [&](auto& told) { return input::readBrand(brand, content, told); });
  if (!messages.ok()) return {};
  x.c.product = &content.products.at(x.c.job.product);
  x.c.region = &content.regions.at(x.c.job.site.region);
  const auto rates = input::ratesFor(text, name, x.c.job, x.c.brand, messages);
  if (!rates) return {};
  x.c.rates = *rates;
  const bool isJobs = !x.c.job.ratesFile.empty();
  const auto& learned = isJobs ? x.c.job.ratesFile : x.c.brand.ratesFile;
  const auto learnedPos = isJobs ? base::placeOf(x.c.job.places, "spreading_rates") : x.c.brand.ratesPos;
  if (!learned.empty() && isReadable(learned, learnedPos, "spreading_rates", messages))
    x.c.job.learnedRates = readOnce(shipped.shelves->learnedRates, learned, messages, [&](auto& told) {
      return input::readLearnedRates(learned, content, told);
    });
  const std::string theme = !choices.theme.empty()     ? choices.theme
                            : !x.c.brand.theme.empty() ? x.c.brand.theme
                                                       : defaultTheme;
  const std::string themeFile = findLook(shipped.looks, "themes/" + theme + ".yaml");
  if (themeFile.empty()) {
    reportUnknown({choices.theme.empty() ? brand : "--theme"}, "theme", theme, "theme",
                  themeNames(shipped.looks), messages);
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
    schedule::checkForecastDays(x.c.job, x.plan, weatherPath(x.c.job, name), messages);
    schedule::checkUsualWeather(x.c, x.plan, messages);
    schedule::checkHolidays(x.c, x.plan, messages);
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
