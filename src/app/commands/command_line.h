// The command line: its tree of commands and options, and what runs when one is given.
#pragma once

#include <string>

namespace app {

/// Runs the command that the words name, with 'version' for --version. Returns the program's exit status:
/// that of the command (commands.h), or 2 for words that make none.
int runCommand(int argc, char** argv, const std::string& version);

}  // namespace app
