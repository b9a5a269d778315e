// All that the program reads, changed at random: nothing but messages may come of it. tests/fuzz/run.sh tries
// longer.
#include "fuzz/targets.h"

#include "random_cases.h"

TEST_CASE("whatever the program reads is taken whole, and told where it was changed at random") {
  const auto seed = static_cast<unsigned>(fromEnvironment("RANDOM_SEED", 20270316));
  for (const auto& name : fuzz::targetNames()) {
    const auto target = fuzz::targetOf(name);
    std::mt19937 random(seed);
    REQUIRE_FALSE(target.samples.empty());
    for (const auto& sample : target.samples) {
      INFO(name << ":\n" << sample);
      CHECK(target.read(sample));
    }
    int refused = 0;
    const int changes = target.changes * fromEnvironment("RANDOM_TIMES", 1);
    for (int i = 0; i < changes; ++i) {
      const auto& sample = target.samples[static_cast<std::size_t>(i) % target.samples.size()];
      const auto bytes = fuzz::changed(sample, target.samples, random);
      INFO(name << ":\n" << bytes);
      CHECK_NOTHROW(refused += target.read(bytes) ? 0 : 1);
    }
    INFO(name << ": " << refused << " of " << changes << " refused");
    CHECK(refused > 0);
  }
}
