#include "app/pack/looks.h"

#include "app/system/files.h"
#include "base/hidden.h"
#include "base/nearest.h"
#include "input/look/front_matter.h"
#include "input/read.h"

#include <filesystem>
#include <iostream>
#include <set>
#include <stdexcept>

namespace app {
namespace fs = std::filesystem;

std::string findLook(const Looks& looks, const std::string& name) {
  for (const auto& folder : looks) {
    const auto path = fs::path(folder) / name;
    if (fs::is_regular_file(path)) return path.string();
  }
  return {};
}

std::vector<std::string> themeNames(const Looks& looks) {
  std::set<std::string> names;
  for (const auto& folder : looks) {
    const auto path = fs::path(folder) / "themes";
    if (!fs::is_directory(path)) continue;
    for (const auto& entry : fs::directory_iterator(path))
      if (entry.path().extension() == ".yaml") names.insert(entry.path().stem().string());
  }
  return {names.begin(), names.end()};
}

Templates readTemplates(const Looks& looks, const std::string& language) {
  Templates templates;
  for (const auto& folder : looks) {
    const auto path = fs::path(folder) / language;
    if (!fs::is_directory(path)) continue;
    for (const auto& entry : fs::directory_iterator(path)) {
      const auto name = entry.path().stem().string();
      if (entry.path().extension() != ".md") continue;
      const auto file = entry.path().string();
      auto text = input::readFile(file);
      if (!text)
        throw std::runtime_error(file + ": the template cannot be read: " + input::whyUnreadable(file));
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

int copyLooks(const std::string& folder) {
  std::vector<OutputFile> files;
  const auto add = [&](const fs::path& from, const fs::path& to) {
    files.push_back({(fs::path(folder) / to).string(), input::readFile(from.string()).value()});
  };
  const fs::path templates = shippedFolder("templates"),
                 brands = fs::path(shippedFolder("content")) / "brands";
  for (const auto& entry : fs::recursive_directory_iterator(templates)) {
    if (entry.is_regular_file()) add(entry.path(), fs::relative(entry.path(), templates));
  }
  add(brands / "demo.yaml", "brand.yaml");
  add(brands / "tideboard.png", "tideboard.png");
  for (const auto& file : files) {
    if (!fs::exists(file.path)) continue;
    std::cerr << base::printable(file.path)
              << ": error: is there already\n  hint: choose an empty folder; nothing is written over\n";
    return 1;
  }
  writeAll(files);
  const std::string name = base::printable(folder);
  std::cout << name << ": " << files.size() << " files to edit; use them with 'planksheaf pack --looks "
            << name << " JOB'\n";
  return 0;
}

}  // namespace app
