// Words one after another.
#pragma once

#include <string>
#include <vector>

namespace base {

/// 'a, b, c'; empty words in front leave no mark.
inline std::string joined(const std::vector<std::string>& words, const char* between = ", ") {
  std::string all;
  for (const auto& word : words) all += (all.empty() ? "" : between) + word;
  return all;
}

}  // namespace base
