#include "app/firm/new_firm.h"

#include "app/firm/firm_folder.h"
#include "app/firm/new_file.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "base/nearest.h"
#include "input/read.h"
#include "input/yaml/overlay.h"

#include <iostream>
#include <map>
#include <optional>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1, wrongUse = 2;

/// Shipped files by the names they have in a firm's folder.
std::map<std::string, fs::path> shippedFiles() {
  std::map<std::string, fs::path> files;
  const fs::path content = shippedFolder("content"), templates = shippedFolder("templates");
  for (const auto* name : firmTables)
    files[name + std::string(".yaml")] = content / (name + std::string(".yaml"));
  const auto addAll = [&](const fs::path& folder, const fs::path& as) {
    for (const auto& entry : fs::directory_iterator(folder)) {
      if (entry.is_regular_file()) files[(as / entry.path().filename()).string()] = entry.path();
    }
  };
  for (const auto* folder : {"languages", "products", "regions"}) addAll(content / folder, folder);
  addAll(templates / "themes", "themes");
  addAll(templates, "templates");
  for (const auto& entry : fs::directory_iterator(templates)) {
    const auto name = entry.path().filename();
    if (entry.is_directory() && name != "themes") addAll(entry.path(), "templates" / name);
  }
  return files;
}

/// The files of these names, or below folders of them; nothing, and said on standard error, where one is not
/// known.
std::optional<std::map<std::string, fs::path>> filesNamed(const std::vector<std::string>& names) {
  const auto all = shippedFiles();
  std::map<std::string, fs::path> wanted;
  for (const auto& name : names) {
    std::vector<std::string> known;
    const auto before = wanted.size();
    for (const auto& [file, from] : all) {
      known.push_back(file);
      if (file == name || file.starts_with(name + "/")) wanted.emplace(file, from);
    }
    if (wanted.size() > before) continue;
    std::cerr << "--copy: error: there is no '" << base::printable(name) << "' that comes with planksheaf"
              << base::didYouMean(base::nearest(name, known))
              << "\n  hint: name it as in the firm's folder, like templates/en/quote.md or themes\n";
    return {};
  }
  return wanted;
}

}  // namespace

int newFirm(const std::string& folder, const std::string& region, const std::vector<std::string>& copies) {
  base::Diagnostics ignored;  // what is shipped has none, or no job can be made
  const auto content = input::readContent(shippedFolder("content"), ignored);
  const auto* chosen = newRegion(region, content);
  const auto wanted = filesNamed(copies);
  if (chosen == nullptr || !wanted) return wrongUse;
  std::vector<OutputFile> files;
  if (copies.empty() || !isFirm(folder)) {
    for (const auto* name : {"firm.yaml", "customers.csv"}) {
      const auto sample =
          movedText(fs::path(shippedFolder("content")) / ("new_" + std::string(name)), folder);
      files.push_back({(fs::path(folder) / name).string(), sampleFor(*chosen, sample)});
    }
  }
  for (const auto& [name, from] : *wanted) {
    const auto to = fs::path(folder) / name;
    files.push_back({to.string(), movedText(from, to.parent_path())});
  }
  for (const auto& file : files) {
    if (!input::isThere(file.path)) continue;
    std::cerr << base::printable(file.path)
              << ": error: is there already\n  hint: choose another folder; nothing is written over\n";
    return refused;
  }
  writeAll(files);
  const std::string name = base::printable(folder);
  const bool isFound = fs::absolute(folder).lexically_normal().filename() == "firm";
  std::cout << name << ": " << files.size() << (files.size() == 1 ? " file" : " files") << " to edit; "
            << (isFound ? "jobs beside it and below find it\n" : "name it in each job: firm: " + name + "\n");
  return done;
}

}  // namespace app
