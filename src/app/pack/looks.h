// Where templates and themes come from: the firm's own folder first, then the ones that come with the
// program.
#pragma once

#include "sheets/template/fill.h"

#include <map>
#include <string>
#include <vector>

namespace app {

/// Folders that hold '<language>/*.md' and 'themes/*.yaml'; the first that has a file wins.
using Looks = std::vector<std::string>;

/// The path of a file of the looks; empty when none of the folders has it.
std::string findLook(const Looks& looks, const std::string& name);

/// The names of all themes, in order.
std::vector<std::string> themeNames(const Looks& looks);

/// All templates of a language by name, the firm's own over the shipped ones.
std::map<std::string, sheets::Template> readTemplates(const Looks& looks, const std::string& language);

/// Copies the shipped templates and themes and the demo brand into a folder, ready to edit. Refuses a folder
/// in which one of the files is there already. Returns the program's exit status.
int copyLooks(const std::string& folder);

}  // namespace app
