#include "input/font_finder.h"

#include <algorithm>

namespace input {

namespace fs = std::filesystem;

std::string FontFinder::find(const std::string& name, const fs::path& beside) {
  std::error_code failed;
  const fs::path near = fs::absolute(beside / name, failed).lexically_normal();
  if (!failed && fs::is_regular_file(near, failed)) return near.string();
  if (!isListed_) list();
  const auto found = system_.find(name);
  return found == system_.end() ? "" : found->second;
}

void FontFinder::list() {
  isListed_ = true;
  for (const char* folder : {"/usr/local/share/fonts", "/usr/share/fonts"}) {
    std::error_code failed;
    std::vector<std::string> files;
    auto it = fs::recursive_directory_iterator(folder, fs::directory_options::skip_permission_denied, failed);
    for (; !failed && it != fs::recursive_directory_iterator(); it.increment(failed)) {
      std::error_code ignored;
      if (it->is_regular_file(ignored)) files.push_back(it->path().string());
    }
    std::sort(files.begin(), files.end());  // the same choice on every run
    for (const std::string& f : files) system_.emplace(fs::path(f).filename().string(), f);
  }
}

std::string fontFile(const Field& f, FontFinder& finder) {
  const fs::path beside = fs::path(f.source().file).parent_path();
  const std::string name = text(f);
  if (name.empty()) return {};
  std::string file = finder.find(name, beside);
  if (file.empty())
    f.error("the font file '" + name + "' is not found",
            fs::path(name).has_extension() ? "install the package that brings it, or write its path"
                                           : "fonts are named by their files, like Carlito-Regular.ttf");
  return file;
}

}  // namespace input
