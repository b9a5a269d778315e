// The jobs of out_examples.
#pragma once

#include <algorithm>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace examples {

/// The job files, by name of their folders; never none, with which a loop over them would prove nothing.
inline std::vector<std::filesystem::path> jobs() {
  std::vector<std::filesystem::path> all;
  for (const auto& entry : std::filesystem::directory_iterator(SOURCE_DIR "/out_examples"))
    if (const auto job = entry.path() / "job.yaml"; std::filesystem::exists(job)) all.push_back(job);
  if (all.empty()) throw std::runtime_error("no jobs in out_examples");
  std::sort(all.begin(), all.end());
  return all;
}

/// 'landing' of '.../landing/job.yaml'.
inline std::string nameOf(const std::filesystem::path& job) { return job.parent_path().filename().string(); }

}  // namespace examples
