// One piece of work after the other on a few threads.
#pragma once

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace app {

/// Calls work(0) to work(count - 1), each once, in any order, on so many threads (0 = as many as the machine
/// has). The first exception is thrown again when all have ended.
template <class Work>
void inParallel(std::size_t count, unsigned wanted, const Work& work) {
  std::atomic<std::size_t> next{0};
  std::exception_ptr failure;
  std::mutex guard;
  const auto run = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        const std::lock_guard lock(guard);
        if (!failure) failure = std::current_exception();
      }
    }
  };
  const std::size_t most = wanted > 0 ? wanted : std::max(1U, std::thread::hardware_concurrency());
  {
    std::vector<std::jthread> threads;
    for (std::size_t i = 1; i < std::min(most, count); ++i) threads.emplace_back(run);
    run();
  }
  if (failure) std::rethrow_exception(failure);
}

}  // namespace app
