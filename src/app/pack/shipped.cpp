#include "app/pack/shipped.h"

#include "app/firm/firm_folder.h"
#include "app/system/files.h"
#include "input/content/texts.h"
#include "input/look/front_matter.h"
#include "input/read.h"
#include "input/yaml/overlay.h"

#include <set>

namespace app {
namespace {

std::string languageFile(const std::string& language) { return "/languages/" + language + ".yaml"; }

/// What the firm's own file says of a product stands in every English.
void keepFirmsWords(base::Language& regional, const std::string& firm) {
  std::erase_if(regional.content, [&](const auto& text) {
    const std::string& path = text.first;
    const auto id = path.find('.') + 1;
    const std::string file = path.substr(0, id - 1) + "/" + path.substr(id, path.find('.', id) - id);
    return input::isThere(firm + "/" + file + ".yaml");
  });
}

/// Reads a language and translates the content into it; nothing (and messages) when its file has mistakes.
std::shared_ptr<const Translation> readTranslation(const std::string& language, const Shipped& shipped,
                                                   base::Diagnostics& messages) {
  Translation t;
  const std::string file = languageFile(language), &firm = shipped.firmFolder;
  t.language = input::readLanguage(shipped.contentFolder + file, language, &shipped.english, shipped.content,
                                   messages, firm.empty() ? "" : firm + file);
  if (!messages.ok()) return {};
  t.language.id = language.substr(0, language.find('-'));
  if (t.language.id != language && !firm.empty()) keepFirmsWords(t.language, firm);
  t.content = input::translated(shipped.content, t.language);
  return std::make_shared<const Translation>(std::move(t));
}

/// The templates and the documents they are: those of a pack, then the others by name.
void addDocuments(Shipped& shipped, base::Diagnostics& messages) {
  std::set<std::string> names;
  for (const auto& language : shipped.content.languages) {
    const auto& templates = shipped.templates[language] = readTemplates(shipped.looks, language, messages);
    for (const auto& [name, head] : templates.documents) names.insert(name);
  }
  shipped.packed = input::readPackList(findLook(shipped.looks.templates, "pack.yaml"),
                                       {names.begin(), names.end()}, messages);
  for (const auto& name : shipped.packed) names.erase(name);
  auto& documents = shipped.content.documents;
  documents = shipped.packed;
  documents.insert(documents.end(), names.begin(), names.end());
}

void addLooks(Looks& looks, const std::string& templates, const std::string& themes) {
  looks.templates.push_back(templates);
  looks.themes.push_back(themes);
}

/// The firm's own English over the shipped one.
base::Language readEnglish(const std::string& content, const std::string& firm, base::Diagnostics& messages) {
  const auto file = content + "/languages/en.yaml";
  const auto shipped = input::readLanguage(file, "en", nullptr, {}, messages);
  const auto own = firm + "/languages/en.yaml";
  if (firm.empty() || !input::isThere(own)) return shipped;
  return input::readLanguage(file, "en", &shipped, {}, messages, own);
}

}  // namespace

Shipped readShipped(const std::string& firm) {
  Shipped shipped;
  shipped.contentFolder = shippedFolder("content");
  shipped.firmFolder = firm;
  if (!firm.empty()) addLooks(shipped.looks, firm + "/templates", firm + "/themes");
  addLooks(shipped.looks, shippedFolder("templates"), shippedFolder("templates") + "/themes");
  base::Diagnostics messages;
  shipped.content = input::readContent(shipped.contentFolder, messages, firm);
  shipped.english = readEnglish(shipped.contentFolder, firm, messages);
  addDocuments(shipped, messages);
  if (firm.empty() && !messages.ok())
    throw std::runtime_error("the content that comes with planksheaf has mistakes:\n" +
                             base::format(messages));
  if (firm.empty()) return shipped;
  shipped.firmFiles = firmFiles(firm, shipped.content.languages, messages);
  shipped.firm = input::readFirm(firm, shipped.content, messages);
  shipped.firmMistakes = std::move(messages);
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
  if (!isEnglish || !input::isThere(shipped.contentFolder + languageFile(region.language))) return {};
  return translationInto(region.language, shipped, messages);
}

}  // namespace app
