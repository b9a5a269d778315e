// Whether a pack is what it would be if it were made again.
#pragma once

#include "app/pack/pack.h"

namespace app {

/// What packs are made from, as a fingerprint: the program, content and templates, the choices of the command
/// line, the firm's folder, the job, and the files it names. Fonts of the system and its time zones are not
/// among them.
class PackInputs {
 public:
  explicit PackInputs(const PackOrder& order);

  /// Of one job; the same for the same inputs.
  std::string digestOf(const JobText& job, const Shipped& shipped) const;

 private:
  std::string shared_;
  mutable base::Cache<std::string, std::string> firms_;  // by their folders
};

/// A file of a pack that tells what it was made from.
OutputFile stampOf(const Pack& pack, const std::string& digest);

/// The files of the pack in a folder where its stamp tells this digest and all of them are there; else none.
std::vector<std::string> filesIfUnchanged(const std::string& folder, const std::string& digest);

}  // namespace app
