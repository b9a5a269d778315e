// 'planksheaf help': the topics of content/help, and what is made from the tree of commands.
#pragma once

#include <string>

namespace CLI {
class App;
}  // namespace CLI

namespace app {

struct HelpOrder {
  const CLI::App* program = nullptr;
  std::string topic;                                  // or a command; empty = what there is
  bool isMan = false, isBash = false, isZsh = false;  // at most one; then the topic does not count
};

/// Prints what is asked for; 2, and a guess, for a topic that there is not.
int help(const HelpOrder& order);

}  // namespace app
