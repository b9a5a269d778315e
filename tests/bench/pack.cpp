// How long the stages of a pack take, in one run, so that their ratios can be read: cmake --build build
// --target bench
#include "app/after/job_folder.h"
#include "app/pack/compute.h"
#include "app/pack/documents.h"
#include "app/system/files.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "schedule/plan.h"

#include <benchmark/benchmark.h>
#include <time.h>
#include <unistd.h>
#include <filesystem>

namespace {

std::string jobFile(const std::string& example) {
  return SOURCE_DIR "/out_examples/" + example + "/job.yaml";
}
const std::string largest = "lakeside";
const std::vector<std::string> customerAndCrew = {"quote", "aftercare", "safety"};

/// What an example is made from, without its caches.
app::Shipped shippedOf(const std::string& example) {
  return app::readShipped(input::firmFolder(input::readFile(jobFile(example)).value(), jobFile(example)));
}

model::JobResult computed(const app::Shipped& shipped, const std::string& example = largest) {
  base::Diagnostics messages;
  auto x = app::compute(app::readJobText(jobFile(example), messages).value(), shipped, {}, messages);
  if (!x) throw std::runtime_error("the example job has mistakes");
  return std::move(*x);
}

void readContent(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(app::readShipped());
}

void computeJob(benchmark::State& state) {
  const auto shipped = shippedOf(largest);
  for (auto _ : state) benchmark::DoNotOptimize(computed(shipped));
}

/// The calendar of a job of which nothing is recorded, from its labour, with the other days it could start
/// on.
void planDays(benchmark::State& state, const std::string& example) {
  const auto shipped = shippedOf(example);
  auto x = computed(shipped, example);
  x.c.job.done.clear();
  const auto estimate = estimate::makeEstimate(x.c, shipped.content);
  for (auto _ : state) {
    base::Diagnostics messages;
    benchmark::DoNotOptimize(schedule::makePlan(x.c, shipped.content, estimate, messages));
  }
}

/// The pages, without their bytes.
void setPages(benchmark::State& state) {
  const auto shipped = shippedOf(largest);
  const auto x = computed(shipped);
  for (auto _ : state) {
    base::Diagnostics messages;
    benchmark::DoNotOptimize(app::setDocuments(x, shipped, {}, customerAndCrew, messages));
  }
}

void makeFiles(benchmark::State& state, const std::vector<std::string>& only) {
  const auto shipped = shippedOf(largest);
  const auto x = computed(shipped);
  for (auto _ : state) {
    base::Diagnostics messages;
    benchmark::DoNotOptimize(app::makeDocuments(x, shipped, {}, only, messages));
  }
}

/// Milliseconds this thread has worked.
double worked() {
  timespec t{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return static_cast<double>(t.tv_sec) * 1e3 + static_cast<double>(t.tv_nsec) / 1e6;
}

/// A pack from the job file to the last byte, against its floor: the same pages, laid out beforehand, only
/// written. Both in turn, so that a busy machine slows both.
void packAndFloor(benchmark::State& state, const std::string& example) {
  const auto shipped = shippedOf(example);
  base::Diagnostics messages;
  const auto documents =
      app::setDocuments(computed(shipped, example), shipped, {}, customerAndCrew, messages);
  std::size_t pages = 0, bytes = 0;
  double pack = 0, floor = 0;
  for (const auto& document : documents) pages += document.pages.pages.size();
  for (auto _ : state) {
    const double begin = worked();
    const auto files = app::makeDocuments(computed(shipped, example), shipped, {}, customerAndCrew, messages);
    const double made = worked();
    for (const auto& document : documents) benchmark::DoNotOptimize(pdf::write(document.pages));
    pack += made - begin;
    floor += worked() - made;
    bytes = 0;
    for (const auto& file : files) bytes += file.bytes.size();
  }
  const auto each = [](double sum) { return benchmark::Counter(sum, benchmark::Counter::kAvgIterations); };
  state.counters["pack_ms"] = each(pack);
  state.counters["floor_ms"] = each(floor);
  state.counters["ratio"] = pack / floor;
  state.counters["pages"] = static_cast<double>(pages);
  state.counters["kB"] = static_cast<double>(bytes) / 1000;
}

/// A folder of 10,000 jobs read as 'due' reads it, all coats recorded or none.
void readFolder(benchmark::State& state, bool isRecorded) {
  namespace fs = std::filesystem;
  constexpr int jobs = 10'000;
  const fs::path folder = fs::temp_directory_path() / ("planksheaf-bench-" + std::to_string(::getpid()));
  std::string text = input::readFile(jobFile("landing")).value();
  if (!isRecorded) text = text.substr(0, text.find("\ndone:") + 1);
  const std::string forecast = SOURCE_DIR "/out_examples/landing/forecast.csv";
  std::vector<app::OutputFile> files{{(folder / "forecast.csv").string(), input::readFile(forecast).value()}};
  for (int i = 0; i < jobs; ++i) {
    std::string job = text;
    job.replace(job.find("ref: ") + 5, 1, "J" + std::to_string(i));
    files.push_back({(folder / (std::to_string(i) + ".yaml")).string(), job});
  }
  app::writeAll(files);
  const app::Firms firms;
  for (auto _ : state) {
    base::Diagnostics messages;
    if (app::readJobs(folder.string(), app::Wanted::Dates, firms, messages).size() != jobs)
      state.SkipWithError("a job was refused");
  }
  fs::remove_all(folder);
}

BENCHMARK(readContent)->Unit(benchmark::kMillisecond);
BENCHMARK(computeJob)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(planDays, porch, "porch")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(planDays, landing, "landing")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(planDays, lakeside, largest)->Unit(benchmark::kMillisecond);
BENCHMARK(setPages)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(makeFiles, quote, {"quote"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(makeFiles, all, {})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(packAndFloor, porch, "porch")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(packAndFloor, landing, "landing")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(packAndFloor, lakeside, largest)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(readFolder, recorded, true)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(readFolder, planned, false)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

BENCHMARK_MAIN();
