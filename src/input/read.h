// YAML files become checked values. Every mistake of a file is reported with its place, all in one run, in
// the order of its lines. Lists count from 1 in paths: 'areas[1]' is the first.
#pragma once

#include "base/diagnostic.h"
#include "base/language.h"
#include "model/job.h"

#include <optional>
#include <string>
#include <vector>

namespace input {

/// Reads products, timbers, tasks, consumables, tools and regions below a content folder.
model::Content readContent(const std::string& folder, base::Diagnostics& messages);

/// Reads a file of content/languages. 'english' is what it is compared with, both ways, and 'content' what it
/// translates; both are left out for English itself.
base::Language readLanguage(const std::string& file, const std::string& id, const base::Language* english,
                            const model::Content& content, base::Diagnostics& messages);

/// Reads a job. 'file' is for messages and for the brand's path, which is relative to it. The result is
/// complete only when no error was added; of a forecast it has the file's name alone.
model::Job readJob(const std::string& text, const std::string& file, const model::Content& content,
                   base::Diagnostics& messages);

/// The job's 'ref:'; empty when the job is too broken to tell.
std::string refOf(const std::string& text, const std::string& file);

/// The job's 'brand:' path, resolved against the job's folder; empty when the job is too broken to tell.
std::string brandFile(const std::string& text, const std::string& file);

/// The firm's rates for the job's region; nothing (and an error at the job's 'brand:') when it has none.
std::optional<model::Rates> ratesFor(const std::string& text, const std::string& file, const model::Job& job,
                                     const model::Brand& brand, base::Diagnostics& messages);

/// A state of the boards as the files write it.
std::string nameOf(model::State state);

/// Spreading rates that 'planksheaf rates' has written.
std::vector<model::LearnedRate> readLearnedRates(const std::string& file, const model::Content& content,
                                                 base::Diagnostics& messages);

model::Brand readBrand(const std::string& file, const model::Content& content, base::Diagnostics& messages);

/// Reads a theme; font files are looked for beside the theme, then in the system's font folders. The theme it
/// extends lies beside it or in one of 'folders'.
model::Theme readTheme(const std::string& file, base::Diagnostics& messages,
                       const std::vector<std::string>& folders = {});

/// Puts the brand's colours in place of the theme's; an error where text in them could not be read on the
/// tint.
void applyBrand(model::Theme& theme, const model::Brand& brand, const std::string& brandFile,
                base::Diagnostics& messages);

/// Whole file as bytes; nothing when it cannot be read, is no regular file or is larger than 64 MiB.
std::optional<std::string> readFile(const std::string& file);

/// Why readFile gave nothing: 'it is a folder'.
std::string whyUnreadable(const std::string& file);

}  // namespace input
