#include "app/commands/help.h"

#include "app/commands/command_tree.h"
#include "app/commands/manual.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "base/joined.h"
#include "base/nearest.h"
#include "input/read.h"

#include <CLI/CLI.hpp>
#include <filesystem>
#include <iostream>

namespace app {
namespace fs = std::filesystem;
namespace {

std::vector<Topic> readTopics() {
  std::vector<Topic> topics;
  for (const auto& entry : fs::directory_iterator(fs::path(shippedFolder("content")) / "help")) {
    const std::string whole = input::readFile(entry.path().string()).value_or("");
    const auto end = whole.find('\n');  // the first line is '# Title'
    topics.push_back({entry.path().stem().string(), whole.substr(2, end - 2), whole.substr(end + 1)});
  }
  std::sort(topics.begin(), topics.end(), [](const Topic& a, const Topic& b) { return a.name < b.name; });
  return topics;
}

void list(const std::vector<Topic>& topics) {
  std::cout << "planksheaf help TOPIC\n";
  for (const auto& topic : topics)
    std::cout << "  " << topic.name << std::string(12 - std::min<std::size_t>(topic.name.size(), 11), ' ')
              << topic.title << "\n";
  std::cout << "planksheaf help COMMAND prints what 'planksheaf COMMAND --help' does.\n";
}

}  // namespace

int help(const HelpOrder& order) {
  const CLI::App& program = *order.program;
  const auto topics = readTopics();
  if (order.isMan) return std::cout << manPage(program, topics), 0;
  if (order.isBash) return std::cout << bashCompletion(program, topics), 0;
  if (order.isZsh) return std::cout << zshCompletion(program, topics), 0;
  if (order.topic.empty()) return list(topics), 0;
  std::vector<std::string> names;
  bool isFound = false;
  for (const auto& topic : topics) {
    names.push_back(topic.name);
    if (topic.name != order.topic) continue;
    std::cout << topic.title << "\n" << topic.text;
    isFound = true;
  }
  const std::string known = base::joined(names);
  for (const auto* command : commandsOf(program)) {
    names.push_back(command->get_name());
    if (command->get_name() != order.topic) continue;
    std::cout << (isFound ? "\n" : "") << command->help("planksheaf");  // 'firm' is a topic, too
    isFound = true;
  }
  if (isFound) return 0;
  std::cerr << "planksheaf help: '" << base::printable(order.topic) << "' is neither a topic nor a command"
            << base::didYouMean(base::nearest(order.topic, names)) << "\n  hint: topics: " << known << "\n";
  return 2;
}

}  // namespace app
