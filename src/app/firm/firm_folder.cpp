#include "app/firm/firm_folder.h"

#include "base/joined.h"
#include "base/nearest.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

namespace app {
namespace fs = std::filesystem;
namespace {

const std::vector<std::string> ownFiles = [] {
  std::vector<std::string> files = {"firm.yaml", "customers.csv", "customers.vcf", "spreading_rates.yaml"};
  for (const auto* table : firmTables) files.push_back(table + std::string(".yaml"));
  return files;
}();
const std::vector<std::string> ownFolders = {"languages", "products", "regions", "templates", "themes"};

}  // namespace

bool isFirm(const std::string& folder) {
  std::error_code failed;
  return fs::is_directory(folder, failed) &&
         fs::exists(fs::symlink_status(fs::path(folder) / "firm.yaml", failed));
}

namespace {

std::string userFolder() {
  const char* config = std::getenv("XDG_CONFIG_HOME");
  if (config != nullptr && fs::path(config).is_absolute()) return (fs::path(config) / "planksheaf").string();
  const char* home = std::getenv("HOME");
  return home == nullptr || *home == 0 ? "" : (fs::path(home) / ".config/planksheaf").string();
}

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

class Lister {
 public:
  Lister(const fs::path& top, const std::vector<std::string>& languages, base::Diagnostics& messages)
      : top_(top), languages_(languages), messages_(messages) {}

  std::vector<std::string> list() {
    for (const auto& name : namesIn("")) {
      if (has(ownFiles, name)) files_.push_back(name);
      else if (has(ownFolders, name)) addFolder(name);
      else refuseNear(name);
    }
    std::sort(files_.begin(), files_.end(), [](const auto& a, const auto& b) {
      return std::pair(a != "firm.yaml", a) < std::pair(b != "firm.yaml", b);
    });
    return files_;
  }

 private:
  /// In order; what is hidden is not ours.
  std::vector<std::string> namesIn(const std::string& folder) {
    std::vector<std::string> names;
    std::error_code failed;
    const auto path = folder.empty() ? top_ : top_ / folder;
    for (auto entry = fs::directory_iterator(path, failed); !failed && entry != fs::directory_iterator();
         entry.increment(failed)) {
      const auto name = entry->path().filename().string();
      if (!name.starts_with(".")) names.push_back(name);
    }
    if (failed)
      messages_.error({path.string()}, "", "the folder cannot be read", "check that it may be read");
    std::sort(names.begin(), names.end());
    return names;
  }

  bool isFolder(const std::string& name) const {
    std::error_code failed;
    return fs::is_directory(top_ / name, failed);
  }

  void error(const std::string& name, const std::string& what, const std::string& hint) {
    messages_.error({(top_ / name).string()}, "", what, hint);
  }

  void addFolder(const std::string& folder) {
    if (!isFolder(folder))
      return error(folder, "is not a folder", "'" + folder + "' is a folder of files, one for each");
    for (const auto& name : namesIn(folder)) {
      const auto path = folder + "/" + name;
      if (folder == "templates" && name != "pack.yaml") addTemplates(path);
      else if (isWanted(path, ".yaml")) addYaml(folder, path);
    }
  }

  void addYaml(const std::string& folder, const std::string& path) {
    const auto id = fs::path(path).stem().string();
    if (folder == "languages" && !has(languages_, id)) refuseLanguage(path, id);
    else files_.push_back(path);
  }

  void addTemplates(const std::string& folder) {
    const auto name = fs::path(folder).filename().string();
    if (!isFolder(folder)) return;
    if (name == "themes")
      return error(folder, "themes do not belong in 'templates'", "move it up, beside 'templates'");
    if (!has(languages_, name)) return refuseLanguage(folder, name);
    for (const auto& file : namesIn(folder)) {
      if (isWanted(folder + "/" + file, ".md")) files_.push_back(folder + "/" + file);
    }
  }

  bool isWanted(const std::string& path, const std::string& ending) {
    const auto its = fs::path(path).extension();
    if (its == ".yml") error(path, "would not be read", "end its name in .yaml");
    return its == ending;
  }

  void refuseLanguage(const std::string& path, const std::string& name) {
    error(path, "'" + name + "' is not a known language" + base::didYouMean(base::nearest(name, languages_)),
          "known: " + base::joined(languages_));
  }

  /// Other things may lie there, copies of ours too, but no slip of the pen.
  void refuseNear(const std::string& name) {
    constexpr std::size_t slip = 2;  // letters
    const bool isOfFolders = isFolder(name);
    const auto ending = fs::path(name).extension();
    const bool isYaml = !isOfFolders && (ending == ".yaml" || ending == ".yml");
    const bool isBook = !isOfFolders && (ending == ".csv" || ending == ".vcf");
    if (!isOfFolders && !isYaml && !isBook) return;
    const auto& known = isOfFolders ? ownFolders : ownFiles;
    const auto near = base::nearest(name, known);
    if (!isYaml && (near.empty() || base::editDistance(name, near) > slip)) return;
    error(name, "is not part of a firm's folder" + base::didYouMean(near), "known: " + base::joined(known));
  }

  const fs::path top_;
  const std::vector<std::string>& languages_;
  base::Diagnostics& messages_;
  std::vector<std::string> files_;
};

}  // namespace

std::string nearestFirm(const std::string& file) {
  std::error_code failed;
  const auto here = fs::current_path(failed);
  const auto path = fs::absolute(file, failed).lexically_normal();
  for (auto folder = path.parent_path(); !folder.empty(); folder = folder.parent_path()) {
    const auto firm = folder / "firm";
    if (isFirm(firm.string()))
      return (fs::path(file).is_absolute() ? firm : firm.lexically_proximate(here)).string();
    if (folder == folder.parent_path()) break;
  }
  const auto own = userFolder();
  return !own.empty() && isFirm(own) ? own : "";
}

std::vector<std::string> firmFiles(const std::string& folder, const std::vector<std::string>& languages,
                                   base::Diagnostics& messages) {
  return Lister(folder, languages, messages).list();
}

std::vector<std::string> firmFolders(const std::string& folder) {
  std::vector<std::string> folders;
  std::error_code failed;
  for (const auto& name : ownFolders) {
    const auto path = fs::path(folder) / name;
    if (fs::is_directory(path, failed)) folders.push_back(path.string());
  }
  return folders;
}

std::string firmWords(const std::string& folder, const std::vector<std::string>& files) {
  constexpr std::size_t most = 8;
  const auto end = files.begin() + static_cast<std::ptrdiff_t>(std::min(files.size(), most));
  std::string words = base::joined({files.begin(), end});
  if (files.size() > most) words += " and " + std::to_string(files.size() - most) + " more";
  return folder + " (" + words + ")";
}

}  // namespace app
