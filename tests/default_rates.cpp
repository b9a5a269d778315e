// The rates of work that come with the program: common practice, without a published source.
#include "estimate/estimate.h"
#include "model/lookup.h"
#include "safety_jobs.h"

#include <fstream>
#include <regex>

using namespace safety_jobs;

TEST_CASE("every rate of work that comes with the program lies in the range beside it") {
  std::ifstream file(SOURCE_DIR "/content/tasks.yaml");
  const std::regex ranged(R"( +(?:rate|check): (\d+) (?:m2|m|pieces)/h +# (\d+) to (\d+).*)"),
      rate(R"( +(?:rate|check): .*)");
  int ranges = 0, rates = 0;
  for (std::string line; std::getline(file, line);) {
    std::smatch found;
    rates += std::regex_match(line, rate) ? 1 : 0;
    if (!std::regex_match(line, found, ranged)) continue;
    INFO(line);
    ++ranges;
    CHECK(std::stoi(found[2]) <= std::stoi(found[1]));
    CHECK(std::stoi(found[1]) <= std::stoi(found[3]));
  }
  CHECK(rates == 12);
  CHECK(ranges == rates - 1);  // all but that of sanding, which has one for each grit
}

TEST_CASE("a plain weathered deck of 40 m2 keeps two people busy for two days") {
  // Common practice, without a source: washing, fixing, three passes of sanding and two coats take 0.5 to 0.8
  // person-hours a square metre, without setting up and packing down on each day.
  auto job = replaced(plainJob, "[6 m, 4 m]", "[8 m, 5 m]");
  job =
      replaced(job, "    timber: larch", "    joists: 450 mm\n    fixings: {kind: nails}\n    timber: larch");
  job = replaced(job, "[wash, oil]", "[wash, fix, sand, oil]\nsanding: [40, 60, 80]");
  const auto x = computed(job);
  base::Hours hours;
  for (const auto& line : x.estimate.labour) hours += line.hours;
  CHECK(hours >= base::Hours::whole(20));
  CHECK(hours <= base::Hours::whole(32));
}
