#include "app/commands/command_tree.h"

#include <CLI/CLI.hpp>

namespace app {

std::vector<const CLI::App*> commandsOf(const CLI::App& program) {
  return program.get_subcommands([](const CLI::App*) { return true; });
}

std::vector<std::string> namesOf(const CLI::Option& option) {
  std::vector<std::string> names;
  for (const auto& name : option.get_snames()) names.push_back("-" + name);
  for (const auto& name : option.get_lnames()) names.push_back("--" + name);
  return names;
}

std::vector<std::string> namesOfOptions(const CLI::App& command) {
  std::vector<std::string> all;
  for (const auto* option : command.get_options()) {
    for (const auto& name : namesOf(*option)) all.push_back(name);
  }
  return all;
}

}  // namespace app
