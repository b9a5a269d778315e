// Everything the program reads from others, with whole samples of each, and changes that spoil them.
#pragma once

#include <random>
#include <string>
#include <vector>

namespace fuzz {

struct Target {
  std::string name;
  std::vector<std::string> samples;
  /// Whether any bytes are taken without a mistake. Throws what the program would not have expected.
  bool (*read)(const std::string& bytes);
  int changes = 0;  // that are tried in a second or two under sanitizers
};

std::vector<std::string> targetNames();
/// Throws std::runtime_error for an unknown name.
Target targetOf(const std::string& name);

/// One change or a few: pieces and lines go, come twice or from another sample, numbers and bytes are others.
std::string changed(std::string bytes, const std::vector<std::string>& samples, std::mt19937& random);

}  // namespace fuzz
