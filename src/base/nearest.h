// 'Did you mean ...?': the candidate a mistyped word stands for.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace base {

/// How many letters must be added, taken away, changed or swapped with their neighbour to get from a to b
/// (bytes count as letters).
inline std::size_t editDistance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> beforeLast(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u)});
      const bool isSwap = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (isSwap) row[j] = std::min(row[j], beforeLast[j - 2] + 1);
    }
    std::swap(beforeLast, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

/// The candidate nearest to 'word', the first of equals; empty when none is so near that it may be meant.
inline std::string nearest(const std::string& word, const std::vector<std::string>& candidates) {
  constexpr std::size_t longest = 64;  // longer words are no slips of the finger, and slow to compare
  if (word.size() > longest) return {};
  std::string best;
  // 'oka' may be 'oak'; of a word of two letters one is half: 'uk' is not 'us'.
  std::size_t bestDistance = word.size() < 3 ? 0 : word.size() / 3 + 1;
  for (const auto& candidate : candidates) {
    if (candidate.size() > longest) continue;
    const std::size_t distance = editDistance(word, candidate);
    if (distance < std::max(word.size(), candidate.size()) && distance <= bestDistance &&
        (best.empty() || distance < bestDistance)) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/// "; did you mean 'oak'?", or nothing where there is no guess.
inline std::string didYouMean(const std::string& guess) {
  return guess.empty() ? "" : "; did you mean '" + guess + "'?";
}

}  // namespace base
