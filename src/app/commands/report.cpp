#include "app/commands/report.h"

#include "app/system/files.h"
#include "app/system/process.h"
#include "base/hidden.h"

#include <unistd.h>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace app {
namespace {

constexpr int refused = 1, broken = 2;

const char* nameOf(JobStatus status) {
  switch (status) {
    case JobStatus::Written:
      return "written";
    case JobStatus::Unchanged:
      return "unchanged";
    case JobStatus::InOrder:
      return "in order";
    case JobStatus::Refused:
      return "refused";
    case JobStatus::Failed:
      return "failed";
  }
  return "";
}

nlohmann::ordered_json jsonOf(const base::Diagnostic& d) {
  nlohmann::ordered_json message{{"severity", d.severity == base::Severity::Error ? "error" : "warning"}};
  if (!d.pos.file.empty()) message["file"] = d.pos.file;
  if (d.pos.line > 0) message["line"] = d.pos.line;
  if (d.pos.column > 0) message["column"] = d.pos.column;
  if (!d.path.empty()) message["field"] = d.path;
  message["message"] = d.message;
  if (!d.hint.empty()) message["hint"] = d.hint;
  return message;
}

std::string jsonLine(const std::string& job, const JobOutcome& out) {
  nlohmann::ordered_json line{{"job", job},
                              {"status", nameOf(out.status)},
                              {"seconds", std::round(out.seconds * 1000) / 1000},
                              {"folder", out.folder},
                              {"files", out.files},
                              {"messages", nlohmann::ordered_json::array()}};
  for (const auto& message : out.messages.all()) line["messages"].push_back(jsonOf(message));
  if (!out.firm.empty()) line["firm"] = out.firm;
  if (!out.failure.empty()) line["messages"].push_back({{"severity", "error"}, {"message", out.failure}});
  return line.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

std::string lineOf(const std::string& job, const JobOutcome& out) {
  if (out.status == JobStatus::InOrder)
    return job + ": in order" + (out.weather.empty() ? "" : "; weather: " + out.weather);
  const auto n = out.files.size();
  return out.folder + ": " +
         (out.status == JobStatus::Unchanged ? "unchanged"
                                             : std::to_string(n) + (n == 1 ? " file" : " files"));
}

double secondsNow() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

}  // namespace

BatchReport::BatchReport(const std::vector<std::string>& jobs, const std::string& file, bool isJson)
    : jobs_(jobs),
      name_(file),
      isJson_(isJson),
      isShown_(jobs.size() > 1 && ::isatty(STDERR_FILENO) == 1),
      began_(secondsNow()),
      outcomes_(jobs.size()) {
  if (file.empty()) return;
  file_.open(file, std::ios::binary);
  if (!file_) failOn(file, "cannot be written");
}

void BatchReport::add(std::size_t job, JobOutcome outcome) {
  const std::lock_guard lock(guard_);
  outcomes_[job] = std::move(outcome);
  ++known_;
  clearProgress();
  for (; told_ < jobs_.size() && outcomes_[told_]; ++told_) {
    tell(jobs_[told_], *outcomes_[told_]);
    outcomes_[told_].reset();
  }
  if (known_ < jobs_.size()) showProgress();
}

void BatchReport::tell(const std::string& job, const JobOutcome& out) {
  std::cerr << base::format(out.messages);
  if (out.status == JobStatus::Failed)
    std::cerr << base::printable(job) << ": error: " << base::printable(out.failure, base::Lines::Keep)
              << "\n";
  if (!isJson_ && !out.firm.empty() && toldFirms_.insert(out.firm).second)
    std::cout << "firm: " << base::printable(out.firm) << "\n";
  const bool isRefused = out.status == JobStatus::Refused;
  status_ = std::max(status_, out.status == JobStatus::Failed ? broken : isRefused ? refused : 0);
  if (!isJson_ && out.status != JobStatus::Failed && !isRefused)
    std::cout << base::printable(lineOf(job, out)) << "\n" << std::flush;
  if (isJson_) std::cout << jsonLine(job, out) << std::flush;
  if (!file_.is_open()) return;
  const auto whole = unbroken();  // no line is torn by a signal
  if (!(file_ << jsonLine(job, out) << std::flush)) {
    std::cerr << base::printable(name_) << ": error: cannot be written\n";
    status_ = broken;
    file_.close();
  }
}

void BatchReport::showProgress() const {
  if (!isShown_) return;
  const double rate = static_cast<double>(known_) / std::max(secondsNow() - began_, 0.001);
  const double left = static_cast<double>(jobs_.size() - known_) / rate;
  std::cerr << known_ << " of " << jobs_.size() << " jobs, " << std::lround(rate) << " a second, "
            << std::lround(std::ceil(left)) << " s left" << std::flush;
}

void BatchReport::clearProgress() const {
  if (isShown_) std::cerr << "\r" << std::string(60, ' ') << "\r";
}

}  // namespace app
