// Reading the tree of commands, and guessing at words that are none of it.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace app {

/// In the order of '--help'.
std::vector<const CLI::App*> commandsOf(const CLI::App& program);
/// '-o' and '--output', as they are typed; none for a word without an option's name.
std::vector<std::string> namesOf(const CLI::Option& option);
std::vector<std::string> namesOfOptions(const CLI::App& command);

/// Tells of words that are nearly a command or an option, or were one; whether there are such.
bool tellOfSlip(const CLI::App& program, const std::string& first);

}  // namespace app
