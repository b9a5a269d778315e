#include "app/pack/firms.h"

#include "app/firm/firm_folder.h"
#include "input/read.h"

#include <filesystem>

namespace app {

std::shared_ptr<const Shipped> Firms::of(const JobText& job) const {
  auto folder = chosen_.empty() ? input::firmFolder(job.text, job.name) : chosen_;
  if (folder.empty()) {
    const auto here = std::filesystem::path(job.name).parent_path().string();
    folder = *nearest_.getOrMake(here, [&] { return nearestFirm(job.name); });
  } else if (!isFirm(folder)) {
    folder.clear();  // told where it is named, when the job is made
  }
  return read_.getOrMake(folder, [&] { return readShipped(folder); });
}

}  // namespace app
