// 'planksheaf new': content/new_job.yaml with the words of one region.
//
// A line that begins with 'metric|' or 'us|' is for regions of those units. '{{start+2}}' is a day counted
// from the region's start, '{{phone}}' another word of its 'new_job:'. A line with '{{state}}' is for regions
// that have states.
#include "app/commands/commands.h"
#include "app/pack/compute.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "input/read.h"

#include <filesystem>
#include <iostream>
#include <sstream>

namespace app {
namespace fs = std::filesystem;
namespace {

std::string wordFor(const std::string& name, const model::Region& region) {
  if (name == "region") return region.id;
  const auto sign = name.find_first_of("+-");
  if (sign == std::string::npos) return region.newJob.at(name);
  const auto start = base::parseDate(region.newJob.at(name.substr(0, sign)));
  return base::isoDate(start.value() + std::chrono::days{std::stoi(name.substr(sign))});
}

std::string filled(std::string line, const model::Region& region) {
  for (std::size_t open; (open = line.find("{{")) != std::string::npos;) {
    const auto close = line.find("}}", open);
    line.replace(open, close + 2 - open, wordFor(line.substr(open + 2, close - open - 2), region));
  }
  return line;
}

std::string jobOf(const model::Region& region, const std::string& sample) {
  const std::string ours = region.units == model::UnitSystem::Metric ? "metric|" : "us|",
                    theirs = region.units == model::UnitSystem::Metric ? "us|" : "metric|";
  std::string text;
  std::istringstream lines(sample);
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with(theirs)) continue;
    if (line.find("{{state}}") != std::string::npos && region.states.empty()) continue;
    text += filled(line.starts_with(ours) ? line.substr(ours.size()) : line, region) + "\n";
  }
  return text;
}

}  // namespace

int newJob(const std::string& file, const std::string& region) {
  if (fs::exists(file)) {
    std::cerr << base::printable(file)
              << ": error: is there already\n  hint: choose another name; nothing is written over\n";
    return 1;
  }
  const fs::path content = shippedFolder("content");
  const auto& regions = readShipped({}).content.regions;
  const auto chosen = regions.find(region);
  if (chosen == regions.end() || chosen->second.newJob.empty()) {
    std::string known;
    for (const auto& [id, r] : regions) known += (known.empty() ? "" : ", ") + id;
    std::cerr << "--region: error: '" << base::printable(region)
              << "' is not a known region\n  hint: there are: " << known << '\n';
    return 2;
  }
  auto text = jobOf(chosen->second, input::readFile((content / "new_job.yaml").string()).value());
  // Paths in the shipped job are relative to the content folder; the new file may lie anywhere.
  const auto folder = fs::absolute(fs::path(file)).parent_path();
  for (const std::string shipped : {"schemas/job.schema.json", "brands/demo.yaml"}) {
    if (const auto at = text.find(shipped); at != std::string::npos)
      text.replace(at, shipped.size(), fs::proximate(content / shipped, folder).string());
  }
  writeAll({{file, text}});
  const std::string name = base::printable(file);
  std::cout << name << ": a job to fill in; then run 'planksheaf pack " << name << "'\n";
  return 0;
}

}  // namespace app
