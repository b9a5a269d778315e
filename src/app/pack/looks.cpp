#include "app/pack/looks.h"

#include "base/nearest.h"
#include "input/look/front_matter.h"
#include "input/read.h"
#include "input/yaml/overlay.h"

#include <filesystem>
#include <set>

namespace app {
namespace fs = std::filesystem;

std::string findLook(const std::vector<std::string>& folders, const std::string& name) {
  for (const auto& folder : folders) {
    const auto path = (fs::path(folder) / name).string();
    if (input::isThere(path)) return path;
  }
  return {};
}

std::vector<std::string> themeNames(const Looks& looks) {
  std::set<std::string> names;
  for (const auto& folder : looks.themes) {
    if (!fs::is_directory(folder)) continue;
    for (const auto& entry : fs::directory_iterator(folder))
      if (entry.path().extension() == ".yaml") names.insert(entry.path().stem().string());
  }
  return {names.begin(), names.end()};
}

Templates readTemplates(const Looks& looks, const std::string& language, base::Diagnostics& unreadable) {
  Templates templates;
  for (const auto& folder : looks.templates) {
    const auto path = fs::path(folder) / language;
    if (!fs::is_directory(path)) continue;
    for (const auto& entry : fs::directory_iterator(path)) {
      const auto name = entry.path().stem().string();
      if (entry.path().extension() != ".md") continue;
      const auto file = entry.path().string();
      auto text = input::readFile(file);
      if (!text) {
        unreadable.error({file}, "", "the template cannot be read: " + input::whyUnreadable(file),
                         "check that it may be read");
        continue;
      }
      base::Diagnostics messages;
      auto [kind, body, firstLine] = input::readTemplate(*text, file, messages);
      while (body.ends_with('\n')) body.pop_back();  // so that a partial can stand inside a line
      // Of the firm's own text that has no head the one below holds.
      if (kind) templates.documents.try_emplace(name, DocumentHead{std::move(*kind), std::move(messages)});
      templates.texts.try_emplace(name, sheets::Template{file, std::move(body), firstLine});
    }
  }
  return templates;
}

void reportUnknown(base::SourcePos pos, std::string path, const std::string& word, const std::string& what,
                   const std::vector<std::string>& known, base::Diagnostics& messages) {
  const std::string near = base::nearest(word, known);
  std::string hint;
  for (const auto& one : known) hint += (hint.empty() ? what + "s: " : ", ") + one;
  messages.error(std::move(pos), std::move(path), "'" + word + "' is not a " + what + base::didYouMean(near),
                 hint);
}

}  // namespace app
