#include "app/firm/new_file.h"

#include "base/date.h"
#include "base/hidden.h"
#include "base/joined.h"
#include "base/letters.h"
#include "input/read.h"

#include <algorithm>
#include <iostream>
#include <sstream>

namespace app {
namespace fs = std::filesystem;
namespace {

std::string wordFor(const std::string& name, const model::Region& region, const SampleWords& own) {
  if (name == "region") return region.id;
  if (const auto found = own.words.find(name); found != own.words.end()) return found->second;
  const auto sign = name.find_first_of("+-");
  if (sign == std::string::npos) return region.newJob.at(name);
  const auto start = base::parseDate(region.newJob.at(name.substr(0, sign)));
  return base::isoDate(start.value() + std::chrono::days{std::stoi(name.substr(sign))});
}

std::string filled(std::string line, const model::Region& region, const SampleWords& own) {
  for (std::size_t open = 0; (open = line.find("{{", open)) != std::string::npos;) {
    const auto close = line.find("}}", open);
    const auto word = wordFor(line.substr(open + 2, close - open - 2), region, own);
    line.replace(open, close + 2 - open, word);
    open += word.size();  // what the user has typed is not filled in
  }
  return line;
}

/// 'metric' of 'metric|    joists: 450 mm'; empty for a line of every job.
std::string kindOf(const std::string& line) {
  const auto bar = line.find('|');
  const auto kind = line.substr(0, bar);
  const bool isKind = bar != std::string::npos && std::all_of(kind.begin(), kind.end(), base::isLetter);
  return isKind ? kind : "";
}

}  // namespace

std::string sampleFor(const model::Region& region, const std::string& sample, SampleWords own) {
  own.kinds.insert(region.units == model::UnitSystem::Metric ? "metric" : "us");
  std::string text;
  std::istringstream lines(sample);
  for (std::string line; std::getline(lines, line);) {
    const auto kind = kindOf(line);
    if (!kind.empty() && !own.kinds.contains(kind)) continue;
    if (line.find("{{state}}") != std::string::npos && region.states.empty()) continue;
    text += filled(kind.empty() ? line : line.substr(kind.size() + 1), region, own) + "\n";
  }
  return text;
}

std::string movedText(const fs::path& file, const fs::path& folder) {
  auto text = input::readFile(file.string()).value();
  const std::string key = "$schema=";
  const auto at = text.find(key);
  if (at == std::string::npos || at > text.find('\n')) return text;
  const auto from = at + key.size(), size = text.find_first_of(" \r\n", from) - from;
  const auto schema = file.parent_path() / text.substr(from, size);
  return text.replace(from, size, fs::proximate(schema, fs::absolute(folder)).string());
}

const model::Region* newRegion(const std::string& id, const model::Content& content) {
  const auto chosen = content.regions.find(id);
  if (chosen != content.regions.end() && !chosen->second.newJob.empty()) return &chosen->second;
  std::vector<std::string> known;
  for (const auto& [name, region] : content.regions) {
    if (!region.newJob.empty()) known.push_back(name);
  }
  std::cerr << "--region: error: '" << base::printable(id)
            << "' is not a known region\n  hint: there are: " << base::joined(known) << '\n';
  return nullptr;
}

}  // namespace app
