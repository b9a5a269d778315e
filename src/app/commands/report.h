// What became of the jobs of a batch: for people, and as lines of JSON.
#pragma once

#include "base/diagnostic.h"

#include <fstream>
#include <mutex>
#include <optional>
#include <set>

namespace app {

enum class JobStatus { Written, Unchanged, InOrder, Refused, Failed };

struct JobOutcome {
  JobStatus status = JobStatus::Refused;
  base::Diagnostics messages;
  std::string failure;             // of the world: a font that is gone, a disk that is full
  std::string folder;              // of the pack that is written or unchanged
  std::vector<std::string> files;  // in it, by their names
  std::string weather;             // what was understood of the weather file
  std::string firm;                // its folder and what is used of it, where that is told
  double seconds = 0;              // on the clock
};

/// Tells the outcomes in the order of the jobs, each as soon as those before it are known, and on a terminal
/// how many there are yet to come and how long they will take. For one thread after the other.
class BatchReport {
 public:
  /// 'file' gets the lines of JSON as well; empty = none. With isJson they are printed in place of words.
  /// Throws std::runtime_error when the file cannot be written.
  BatchReport(const std::vector<std::string>& jobs, const std::string& file, bool isJson);

  void add(std::size_t job, JobOutcome outcome);
  /// The exit status of the program.
  int status() const { return status_; }

 private:
  void tell(const std::string& job, const JobOutcome& out);
  void showProgress() const;
  void clearProgress() const;

  const std::vector<std::string>& jobs_;
  const std::string name_;
  const bool isJson_, isShown_;
  const double began_;  // seconds of a clock that only goes forward
  std::ofstream file_;
  std::mutex guard_;
  std::vector<std::optional<JobOutcome>> outcomes_;
  std::size_t told_ = 0, known_ = 0;
  std::set<std::string> toldFirms_;
  int status_ = 0;
};

}  // namespace app
