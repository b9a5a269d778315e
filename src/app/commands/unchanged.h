// Whether a pack is what it would be if it were made again.
#pragma once

#include "app/pack/pack.h"

namespace app {

/// What packs are made from, as a fingerprint: the program, content and looks, the choices of the command
/// line, the job, and the files it names. Fonts of the system and its time zones are not among them.
class PackInputs {
 public:
  PackInputs(const PackOrder& order, const Shipped& shipped);

  /// Of one job; the same for the same inputs.
  std::string digestOf(const JobText& job) const;

 private:
  const PackOrder& order_;
  const Shipped& shipped_;
  std::string shared_;
};

/// A file of a pack that tells what it was made from.
OutputFile stampOf(const Pack& pack, const std::string& digest);

/// The files of the pack in a folder where its stamp tells this digest and all of them are there; else none.
std::vector<std::string> filesIfUnchanged(const std::string& folder, const std::string& digest);

}  // namespace app
