// One target under libFuzzer: TARGET=job fuzz FOLDER; without TARGET their names. SEEDS=FOLDER writes its
// samples.
#include "fuzz/targets.h"

#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

const fuzz::Target& target() {
  static const fuzz::Target chosen = fuzz::targetOf(std::getenv("TARGET"));
  return chosen;
}

void writeSamples(const std::string& folder) {
  int number = 0;
  for (const auto& sample : target().samples)
    std::ofstream(folder + "/sample-" + std::to_string(++number), std::ios::binary) << sample;
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int*, char***) {
  if (std::getenv("TARGET") == nullptr) {
    for (const auto& name : fuzz::targetNames()) std::cout << name << "\n";
    std::exit(0);
  }
  if (const char* folder = std::getenv("SEEDS")) {
    writeSamples(folder);
    std::exit(0);
  }
  return 0;
}

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                               unsigned seed) {
  std::mt19937 random(seed);
  if (random() % 2 == 0) return LLVMFuzzerMutate(data, size, most);
  const auto made = fuzz::changed({reinterpret_cast<const char*>(data), size}, target().samples, random);
  const auto length = std::min(made.size(), most);
  std::memcpy(data, made.data(), length);
  return length;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  target().read({reinterpret_cast<const char*>(data), size});
  return 0;
}
