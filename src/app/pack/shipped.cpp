#include "app/pack/shipped.h"

#include "app/system/files.h"
#include "input/content/texts.h"
#include "input/look/front_matter.h"
#include "input/read.h"

#include <filesystem>
#include <set>

namespace app {
namespace {

std::string languageFile(const std::string& language, const Shipped& shipped) {
  return shipped.contentFolder + "/languages/" + language + ".yaml";
}

/// Reads a language and translates the content into it; nothing (and messages) when its file has mistakes.
std::shared_ptr<const Translation> readTranslation(const std::string& language, const Shipped& shipped,
                                                   base::Diagnostics& messages) {
  Translation t;
  t.language = input::readLanguage(languageFile(language, shipped), language, &shipped.english,
                                   shipped.content, messages);
  if (!messages.ok()) return {};
  t.language.id = language.substr(0, language.find('-'));
  t.content = input::translated(shipped.content, t.language);
  return std::make_shared<const Translation>(std::move(t));
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

std::shared_ptr<const Translation> translationInto(const std::string& language, const Shipped& shipped,
                                                   base::Diagnostics& messages) {
  return readOnce(shipped.caches->translations, language, messages,
                  [&](auto& told) { return readTranslation(language, shipped, told); });
}

std::shared_ptr<const Translation> regionalEnglish(const model::Region& region, const Shipped& shipped,
                                                   base::Diagnostics& messages) {
  const bool isEnglish = region.language.starts_with(shipped.english.id + "-");
  if (!isEnglish || !std::filesystem::exists(languageFile(region.language, shipped))) return {};
  return translationInto(region.language, shipped, messages);
}

}  // namespace app
