// What comes with the program, and what jobs share.
#pragma once

#include "app/pack/looks.h"
#include "base/cache.h"
#include "base/language.h"
#include "model/job.h"
#include "pdf/write.h"
#include "schedule/plan.h"
#include "typeset/fonts.h"

#include <memory>
#include <optional>

namespace app {

/// A thing read from files and what there was to say about them.
template <class Thing>
struct WithMessages {
  Thing thing;
  base::Diagnostics messages;
};

/// A language, and the content in it.
struct Translation {
  base::Language language;
  model::Content content;
};

/// What jobs have in common beside the content, read when the first of them needs it; by file, fonts by
/// theme.
struct Caches {
  base::Cache<std::string, WithMessages<model::Theme>> themes;
  base::Cache<std::string, WithMessages<std::vector<model::LearnedRate>>> learnedRates;
  base::Cache<std::string, WithMessages<std::shared_ptr<const typeset::Image>>> logos;
  base::Cache<std::string, typeset::Fonts> fonts;
  base::Cache<std::string, sheets::CompiledTemplate> sheets;
  base::Cache<std::string, WithMessages<std::shared_ptr<const Translation>>> translations;  // by language
};

/// What 'read' makes of a file, read once; its messages are told to every job.
template <class Thing, class Read>
Thing readOnce(base::Cache<std::string, WithMessages<Thing>>& cache, const std::string& file,
               base::Diagnostics& messages, Read read) {
  const auto found = cache.getOrMake(file, [&] {
    WithMessages<Thing> fresh;
    fresh.thing = read(fresh.messages);
    return fresh;
  });
  messages.add(found->messages);
  return found->thing;
}

/// What comes with the program, with a firm's folder laid over it. Files are read once in its life: who waits
/// for changes makes a new one.
struct Shipped {
  std::string contentFolder;
  std::string firmFolder;              // empty = none
  std::vector<std::string> firmFiles;  // what is used of it, by name
  base::Diagnostics firmMistakes;      // of what is in it
  model::Firm firm;
  Looks looks;
  model::Content content;
  std::map<std::string, Templates> templates;  // by language
  std::vector<std::string> packed;             // the documents of a pack, in their order
  std::shared_ptr<Caches> caches = std::make_shared<Caches>();
  base::Language english;
};

/// Choices of the command line that change a job.
struct Choices {
  std::optional<model::Paper> paper;
  std::string firm;  // its folder; replaces the job's
  pdf::Variant variant = pdf::Variant::A2b;
  std::string theme;                   // name of a theme; replaces the firm's
  std::vector<std::string> languages;  // of all documents, the main one first; empty = the job's
  schedule::Bounds bounds;             // of the days to plan
};

/// Reads the shipped content and a firm's folder, unless that is empty. Mistakes of the firm are kept, not
/// thrown. Throws std::runtime_error with all messages when the shipped content has mistakes.
Shipped readShipped(const std::string& firm = {});

/// A language of content/languages and the content in it; null (and messages) when its file has mistakes.
std::shared_ptr<const Translation> translationInto(const std::string& language, const Shipped& shipped,
                                                   base::Diagnostics& messages);

/// English as the region says it, 'en-NZ'; null where it has no file of its own.
std::shared_ptr<const Translation> regionalEnglish(const model::Region& region, const Shipped& shipped,
                                                   base::Diagnostics& messages);

}  // namespace app
