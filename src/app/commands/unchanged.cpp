#include "app/commands/unchanged.h"

#include "app/pack/weather_file.h"
#include "base/joined.h"
#include "input/read.h"
#include "pdf/objects/digest.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <sstream>

namespace app {
namespace fs = std::filesystem;
namespace {

class Fingerprint {
 public:
  void add(const std::string& words) { digest_.add(words); }

  /// Its name and its bytes, or that it cannot be read.
  void addFile(const std::string& file) {
    add(file);
    add(input::readFile(file).value_or("-"));
  }

  void addFolder(const std::string& folder) {
    std::vector<std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
      if (entry.is_regular_file()) files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    for (const auto& file : files) addFile(file);
  }

  std::string hex() const {
    char words[33];
    const auto sums = digest_.value();
    std::snprintf(words, sizeof words, "%016llx%016llx", static_cast<unsigned long long>(sums[0]),
                  static_cast<unsigned long long>(sums[1]));
    return words;
  }

 private:
  pdf::Digest digest_;
};

/// What is used of a firm's folder, and what its files name. Of the customers only a job's own counts.
std::string digestOfFirm(const Shipped& shipped) {
  Fingerprint all;
  for (const auto& file : shipped.firmFiles) {
    if (!file.starts_with("customers.")) all.addFile((fs::path(shipped.firmFolder) / file).string());
  }
  if (!shipped.firm.logoFile.empty()) all.addFile(shipped.firm.logoFile);
  for (const auto& [face, font] : shipped.firm.fonts) all.addFile(font.file);
  return all.hex();
}

}  // namespace

PackInputs::PackInputs(const PackOrder& order) {
  Fingerprint all;
  all.addFile("/proc/self/exe");
  for (const auto* folder : {"content", "templates"}) all.addFolder(shippedFolder(folder));
  const Choices& choices = order.choices;
  all.add(base::joined(order.only));
  all.add(choices.theme);
  all.add(base::joined(choices.languages));
  all.add(!choices.paper ? "" : *choices.paper == model::Paper::A4 ? "a4" : "letter");
  shared_ = all.hex();
}

std::string PackInputs::digestOf(const JobText& job, const Shipped& shipped) const {
  Fingerprint all;
  all.add(shared_);
  all.add(*firms_.getOrMake(shipped.firmFolder, [&] { return digestOfFirm(shipped); }));
  all.add(job.text);
  base::Diagnostics ignored;  // told when the job is made
  const auto read = input::readJob(job.text, job.name, shipped.content, ignored);
  for (const auto& words : {read.customer.name, read.customer.phone, read.customer.email})
    all.add(words + "\n");
  for (const auto& line : read.customer.address) all.add(line + "\n");
  if (!read.forecast.file.empty()) all.addFile(weatherPath(read, job.name));
  if (!read.ratesFile.empty()) all.addFile(read.ratesFile);
  for (const auto& photo : read.photos) all.addFile(photo.file);
  return all.hex();
}

OutputFile stampOf(const Pack& pack, const std::string& digest) {
  std::string text = digest + "\n";
  for (const auto& file : pack.files) text += file.path + "\n";
  return {stampName, text};
}

std::vector<std::string> filesIfUnchanged(const std::string& folder, const std::string& digest) {
  std::istringstream lines(input::readFile((fs::path(folder) / stampName).string()).value_or(""));
  std::string line;
  if (!std::getline(lines, line) || line != digest) return {};
  std::vector<std::string> files;
  while (std::getline(lines, line)) {
    if (!fs::is_regular_file(fs::path(folder) / line)) return {};
    files.push_back(line);
  }
  return files;
}

}  // namespace app
