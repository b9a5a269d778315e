// Font files by name: beside the file that names them, then anywhere below the system's font folders.
#pragma once

#include "input/cursor.h"

#include <filesystem>
#include <map>

namespace input {

/// Lists the system's folders at the first name that needs them, once.
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

}  // namespace input
