#include "app/pack/shipped.h"

#include "app/system/files.h"
#include "input/look/front_matter.h"
#include "input/read.h"

#include <set>

namespace app {
namespace {

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

}  // namespace app
