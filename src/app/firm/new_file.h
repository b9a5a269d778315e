// Samples that come with the program, as files of the user's own.
#pragma once

#include "model/content.h"

#include <filesystem>
#include <map>
#include <set>
#include <string>

namespace app {

/// What a sample is filled in with, beside the words of its region.
struct SampleWords {
  std::map<std::string, std::string> words;  // '{{customer}}'
  std::set<std::string> kinds;               // of lines: those that begin 'known|' are left out without it
};

/// A sample with the words of one region. A line that begins with 'metric|' or 'us|' is for regions of those
/// units. '{{start+2}}' is a day counted from the region's start, '{{phone}}' another word of its 'new_job:'.
/// A line with '{{state}}' is for regions that have states.
std::string sampleFor(const model::Region& region, const std::string& sample, SampleWords own = {});

/// The text of a shipped file as it is to stand in another folder: its editor's line names the schema from
/// there.
std::string movedText(const std::filesystem::path& file, const std::filesystem::path& folder);

/// The region of 'planksheaf new' and 'firm'; null, and said on standard error, for one that is not known.
const model::Region* newRegion(const std::string& id, const model::Content& content);

}  // namespace app
