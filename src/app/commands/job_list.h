// The jobs that the words of a command line name.
#pragma once

#include "base/diagnostic.h"

#include <string>
#include <vector>

namespace app {

/// A file as it is named, of a folder every job below it, of a pattern ('*', '?', '[a-c]') that is no file
/// the files it fits: in the order of the words and then of the paths, each once. Errors for a folder without
/// jobs and a pattern that fits none.
std::vector<std::string> jobsNamed(const std::vector<std::string>& words, base::Diagnostics& messages);

}  // namespace app
