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

/// Reads products, timbers, tasks, consumables, tools and regions below a content folder, with what a firm's
/// folder holds of them laid over it: products by file, all else key by key.
model::Content readContent(const std::string& folder, base::Diagnostics& messages,
                           const std::string& firm = {});

/// Reads a file of content/languages. 'english' is what it is compared with, both ways, and 'content' what it
/// translates; both are left out for English itself. The firm's words in the file 'own' (which need not be
/// there) are laid over it: with them English, too, is compared.
base::Language readLanguage(const std::string& file, const std::string& id, const base::Language* english,
                            const model::Content& content, base::Diagnostics& messages,
                            const std::string& own = {});

/// A job and what is wrong with it. It is complete only when there are no errors; of a forecast it has the
/// file's name alone.
struct ReadJob {
  model::Job job;
  base::Diagnostics messages;
};
/// Reads a job, once with each of its choices; never nothing. 'file' is for messages and for the paths in it,
/// which are relative to it.
std::vector<ReadJob> readJobs(const std::string& text, const std::string& file,
                              const model::Content& content);
/// Of them, the one that is done: the chosen one, else the first.
std::size_t driving(const std::vector<ReadJob>& jobs);
/// What is said of every choice is said once; the rest names its choice, unless the path does.
void addOfChoices(const std::vector<base::Diagnostics>& told, base::Diagnostics& messages);
/// The job that is done, alone.
model::Job readJob(const std::string& text, const std::string& file, const model::Content& content,
                   base::Diagnostics& messages);

/// What stands at the top of a job; what it does not say, or is too broken to tell, is empty.
struct JobHead {
  std::string ref, after, quoted, firm;  // the last from where the job's path starts
};
JobHead headOf(const std::string& text, const std::string& file);

/// The folder under the job's 'firm:', from the job's own; empty where it names none or is too broken to
/// tell.
std::string firmFolder(const std::string& text, const std::string& file);

/// A state of the boards as the files write it.
std::string nameOf(model::State state);

/// Spreading rates that 'planksheaf rates' has written.
std::vector<model::LearnedRate> readLearnedRates(const std::string& file, const model::Content& content,
                                                 base::Diagnostics& messages);

/// Reads the 'firm.yaml' of a firm's folder.
model::Firm readFirm(const std::string& folder, const model::Content& content, base::Diagnostics& messages);

/// Reads a theme; font files are looked for beside the theme, then in the system's font folders. The theme it
/// extends lies beside it or in one of 'folders'.
model::Theme readTheme(const std::string& file, base::Diagnostics& messages,
                       const std::vector<std::string>& folders = {});

/// Puts the firm's colours in place of the theme's; an error where text in them could not be read on the
/// tint.
void applyFirm(model::Theme& theme, const model::Firm& firm, const std::string& firmFile,
               base::Diagnostics& messages);

/// Whole file as bytes; nothing when it cannot be read, is no regular file or is larger than 64 MiB.
std::optional<std::string> readFile(const std::string& file);

/// Why readFile gave nothing: 'it is a folder'.
std::string whyUnreadable(const std::string& file);

}  // namespace input
