// How long the stages of a pack take, in one run, so that their ratios can be read: cmake --build build --target bench
#include "app/compute.h"
#include "app/documents.h"

#include <benchmark/benchmark.h>

namespace {

const std::string job = SOURCE_DIR "/out_examples/lakeside/job.yaml";

app::Computation computed(const app::Shipped& shipped) {
  base::Diagnostics messages;
  auto x = app::compute(job, shipped, {}, messages);
  if (!x) throw std::runtime_error("the example job has mistakes");
  return *x;
}

void readContent(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(app::readShipped({}));
}

void computeJob(benchmark::State& state) {
  const auto shipped = app::readShipped({});
  for (auto _ : state) benchmark::DoNotOptimize(computed(shipped));
}

void setDocuments(benchmark::State& state, const std::vector<std::string>& only) {
  const auto shipped = app::readShipped({});
  const auto x = computed(shipped);
  for (auto _ : state) {
    base::Diagnostics messages;
    benchmark::DoNotOptimize(app::makeDocuments(x, shipped, {}, only, "", messages));
  }
}

BENCHMARK(readContent)->Unit(benchmark::kMillisecond);
BENCHMARK(computeJob)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(setDocuments, quote, {"quote"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(setDocuments, pack, {})->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
