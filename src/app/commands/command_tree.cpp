#include "app/commands/command_tree.h"

#include "base/hidden.h"
#include "base/nearest.h"

#include <CLI/CLI.hpp>
#include <iostream>

namespace app {
namespace {

/// What the firm's folder has taken the place of.
bool tellOfOld(const std::string& word) {
  constexpr auto hint = "\n  hint: 'planksheaf help firm' says what goes where in it\n";
  if (word == "looks") std::cerr << "planksheaf: 'looks' is now 'firm DIR --copy templates,themes'" << hint;
  else if (word == "--looks" || word == "--brand")
    std::cerr << "planksheaf: '" << word << "' is now '--firm DIR': one folder for all that is the firm's"
              << hint;
  else return false;
  return true;
}

}  // namespace

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

bool tellOfSlip(const CLI::App& program, const std::string& first) {
  if (tellOfOld(first)) return true;
  const auto commands = commandsOf(program);
  std::vector<std::string> names;
  for (const auto* command : commands) names.push_back(command->get_name());
  if (!first.starts_with("-") && std::find(names.begin(), names.end(), first) == names.end()) {
    std::cerr << "planksheaf: '" << base::printable(first) << "' is not a command"
              << base::didYouMean(base::nearest(first, names)) << "\n  hint: see 'planksheaf --help'\n";
    return true;
  }
  const auto given = program.get_subcommands();
  const CLI::App& command = given.empty() ? program : *given.front();
  const std::string name = given.empty() ? "planksheaf" : "planksheaf " + command.get_name();
  for (const std::string& word : program.remaining(true)) {
    if (!word.starts_with("-") || word == "-") continue;
    const std::string option = word.substr(0, word.find('='));
    if (tellOfOld(option)) return true;
    std::cerr << name << ": '" << base::printable(option) << "' is not an option"
              << base::didYouMean(base::nearest(option, namesOfOptions(command))) << "\n  hint: see '" << name
              << " --help'\n";
    return true;
  }
  return false;
}

}  // namespace app
