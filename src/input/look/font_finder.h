// The font files a theme or a firm names, by file or by family.
#pragma once

#include "input/yaml/cursor.h"
#include "model/theme.h"

#include <filesystem>
#include <map>

namespace input {

/// Font files by name: beside the file that names them, then anywhere below the system's font folders. Lists
/// those at the first name that needs them, once.
class FontFinder {
 public:
  /// Empty when there is no such file.
  std::string find(const std::string& name, const std::filesystem::path& beside);

 private:
  void list();

  bool isListed_ = false;
  std::map<std::string, std::string> system_;
};

/// The file a theme names; empty (and an error) when it is not found.
std::string fontFile(const Field& f, FontFinder& finder);

/// Reads faces by role, each a file or '{family: Vollkorn, weight: bold, style: italic}'. A family for 'text'
/// or 'sans' without weight and style stands for the faces of its kind that are not named here as well. The
/// keys are all asked for; finish() is left to the caller.
model::FaceFiles readFaceFiles(Record& r, FontFinder& finder);

}  // namespace input
