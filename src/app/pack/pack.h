// One job's pack: made in memory, then written.
#pragma once

#include "app/pack/compute.h"
#include "app/system/files.h"

#include <optional>

namespace app {

struct PackOrder {
  std::vector<std::string> jobs;
  std::string folder;             // empty = beside each job
  std::vector<std::string> only;  // empty = the documents of a pack, and the calendar
  Choices choices;
  unsigned threads = 0;     // 0 = as many as the machine has
  std::string report = {};  // file for what became of each job; empty = none
  bool isJson = false;      // prints that
  bool onlyIfChanged = false;
};

/// Of a file in a pack's folder that tells what the pack was made from; goes when it is written without one.
inline constexpr auto stampName = ".inputs";

struct Pack {
  std::string folder;
  std::vector<OutputFile> files;  // by their names in it
  std::string weather;            // what was understood of the job's weather file; empty = it names none
};

/// Where a job's pack lies: below 'folder', or beside the job where that is empty.
std::string packFolder(const std::string& job, const std::string& ref, const std::string& folder);

/// The documents of a job, and its calendar where all were asked for; nothing, and messages, for one with
/// mistakes.
std::optional<Pack> makePack(const JobText& job, const Shipped& shipped, const PackOrder& order,
                             base::Diagnostics& messages);

/// Puts a pack in the place of the old one, in one step (folder_exchange.h); no document that the job no
/// longer has stays behind with old dates. Where only some were asked for the others stay as they are. Throws
/// std::runtime_error, and the old pack stays, when it cannot be written.
void writePack(const Pack& pack, const PackOrder& order, const Shipped& shipped);

}  // namespace app
