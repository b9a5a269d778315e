// The man page and the completions of shells, made from the tree of commands and the topics of help.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace app {

/// A text of content/help.
struct Topic {
  std::string name;   // 'weather'
  std::string title;  // 'Weather: which hours are fit for a coat'
  std::string text;   // below the title
};

/// In the macros of man(7).
std::string manPage(const CLI::App& program, const std::vector<Topic>& topics);

std::string bashCompletion(const CLI::App& program, const std::vector<Topic>& topics);
std::string zshCompletion(const CLI::App& program, const std::vector<Topic>& topics);

}  // namespace app
