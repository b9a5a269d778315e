// Words one after another, each once.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace base {

/// 'a, b, c'; empty words in front leave no mark.
inline std::string joined(const std::vector<std::string>& words, const char* between = ", ") {
  std::string all;
  for (const auto& word : words) all += (all.empty() ? "" : between) + word;
  return all;
}

/// Adds what is not in a list yet.
template <class T>
void addOnce(std::vector<T>& list, const T& value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

}  // namespace base
