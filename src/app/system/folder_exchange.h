// A folder of which some files change together: all of them, or none.
#pragma once

#include "app/system/files.h"

#include <set>

namespace app {

struct FolderChange {
  std::string folder;
  std::vector<OutputFile> files;   // by their names in the folder
  std::set<std::string> replaced;  // written anew, or to go: those not among the files
  std::set<std::string> ours;      // every name that is not the user's own
};

/// Makes the new folder beside the old one, with all that is not replaced, and exchanges the two in one step;
/// runs at the same time go one after the other. What a run that was killed left behind goes as well. Where
/// the file system cannot exchange folders, or the program was started inside, the files change places one
/// after the other, and back if that fails. Throws std::runtime_error, and all is as it was, when something
/// cannot be written, 'folder' is something else, or a folder has one of the replaced names.
void exchangeFolder(const FolderChange& change);

}  // namespace app
