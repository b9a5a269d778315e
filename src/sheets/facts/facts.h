// Facts: the ready words a template may print, as a tree of names.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace sheets {

class Fact;
/// Names and their facts, in the order they were set.
using Facts = std::vector<std::pair<std::string, Fact>>;
using FactList = std::vector<Facts>;

/// A word (printed, never interpreted), a yes or no (opens sections), a group of further facts, or a list of
/// groups.
class Fact {
 public:
  std::variant<std::string, bool, Facts, FactList> value;

  Fact(std::string words) : value(std::move(words)) {}
  Fact(const char* words) : value(std::string(words)) {}
  Fact(Facts group) : value(std::move(group)) {}
  Fact(FactList list) : value(std::move(list)) {}
  static Fact yes(bool is) {
    Fact f("");
    f.value = is;
    return f;
  }
};

/// Whose documents may print a name that this reader's may not: 'the office' for 'costs'; empty = nobody's.
using Withheld = std::function<std::string(const std::string& name)>;

/// Looks a name up in one group; null when it is not there.
inline const Fact* find(const Facts& facts, const std::string& name) {
  for (const auto& [key, fact] : facts) {
    if (key == name) return &fact;
  }
  return nullptr;
}

}  // namespace sheets
