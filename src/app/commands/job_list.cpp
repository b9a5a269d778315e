#include "app/commands/job_list.h"

#include "app/after/job_folder.h"
#include "input/read.h"

#include <glob.h>
#include <algorithm>
#include <filesystem>
#include <set>

namespace app {
namespace fs = std::filesystem;
namespace {

std::vector<std::string> jobsBelow(const std::string& folder) {
  auto files = jobFiles(folder);
  std::erase_if(files, [](const std::string& file) {
    const auto text = input::readFile(file);
    return text && !looksLikeJob(*text);
  });
  return files;
}

std::vector<std::string> filesThatFit(const std::string& pattern) {
  std::vector<std::string> files;
  glob_t found{};
  if (::glob(pattern.c_str(), 0, nullptr, &found) == 0)
    files.assign(found.gl_pathv, found.gl_pathv + found.gl_pathc);
  ::globfree(&found);
  std::sort(files.begin(), files.end());  // not by the letters of the place
  return files;
}

std::vector<std::string> jobsOf(const std::string& word, base::Diagnostics& messages) {
  std::error_code failed;  // of a name that is too long: told when it is read
  if (fs::is_directory(word, failed)) {
    auto files = jobsBelow(word);
    if (files.empty())
      messages.error({word}, "", "there is no job below it", "a job has 'customer:' and 'areas:' at its top");
    return files;
  }
  if (fs::exists(word, failed) || word.find_first_of("*?[") == std::string::npos) return {word};
  std::vector<std::string> files;
  for (const auto& found : filesThatFit(word)) {
    const auto below = fs::is_directory(found) ? jobsBelow(found) : std::vector{found};
    files.insert(files.end(), below.begin(), below.end());
  }
  if (files.empty())
    messages.error({word}, "", "no file fits this pattern",
                   "'planksheaf pack FOLDER' takes every job below a folder");
  return files;
}

}  // namespace

std::vector<std::string> jobsNamed(const std::vector<std::string>& words, base::Diagnostics& messages) {
  std::vector<std::string> jobs;
  std::set<std::string> known;
  for (const auto& word : words) {
    for (const auto& job : jobsOf(word, messages)) {
      if (known.insert(job).second) jobs.push_back(job);
    }
  }
  return jobs;
}

}  // namespace app
