#include "app/pack/shipped.h"

#include "app/firm/firm_folder.h"
#include "app/system/files.h"
#include "input/look/front_matter.h"
#include "input/read.h"
#include "input/yaml/overlay.h"

#include <set>

namespace app {
namespace {

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

}  // namespace app
