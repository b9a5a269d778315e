// A job file becomes everything that is computed from it.
#pragma once

#include "app/pack/looks.h"
#include "base/cache.h"
#include "base/diagnostic.h"
#include "model/exposure.h"
#include "model/language.h"
#include "model/plan.h"
#include "pdf/write.h"
#include "schedule/plan.h"
#include "typeset/fonts.h"

#include <optional>
#include <string>

namespace app {

/// A thing read from files and what there was to say about them.
template <class Thing>
struct Told {
  Thing thing;
  base::Diagnostics messages;
};

/// A language, and the content and templates in it.
struct Translation {
  model::Language language;
  model::Content content;
  std::map<std::string, sheets::Template> templates;
};

/// What jobs have in common beside the content, read when the first of them needs it; by file, fonts by
/// theme.
struct Caches {
  base::Cache<std::string, Told<model::Brand>> brands;
  base::Cache<std::string, Told<model::Theme>> themes;
  base::Cache<std::string, Told<std::vector<model::LearnedRate>>> learnedRates;
  base::Cache<std::string, Told<std::shared_ptr<const typeset::Image>>> logos;
  base::Cache<std::string, typeset::Fonts> fonts;
  base::Cache<std::string, sheets::CompiledTemplate> sheets;
  base::Cache<std::string, Told<std::shared_ptr<const Translation>>> translations;  // by language
};

/// What 'read' makes of a file, read once; its messages are told to every job.
template <class Thing, class Read>
Thing readOnce(base::Cache<std::string, Told<Thing>>& shelf, const std::string& file,
               base::Diagnostics& messages, Read read) {
  const auto told = shelf.getOrMake(file, [&] {
    Told<Thing> fresh;
    fresh.thing = read(fresh.messages);
    return fresh;
  });
  messages.add(told->messages);
  return told->thing;
}

/// What comes with the program, and the firm's own looks. Files are read once in its life: who waits for
/// changes makes a new one.
struct Shipped {
  std::string contentFolder;
  Looks looks;
  model::Content content;
  std::map<std::string, sheets::Template> templates;  // in English, as the content is
  std::shared_ptr<Caches> shelves = std::make_shared<Caches>();
  model::Language english;
};

/// Choices of the command line that change a job.
struct Choices {
  std::optional<model::Paper> paper;
  std::string brandFile;  // replaces the job's
  pdf::Variant variant = pdf::Variant::A2b;
  std::string theme;                   // name of a theme; replaces the brand's
  std::vector<std::string> languages;  // of all documents, the main one first; empty = the job's
  std::string looks;                   // the firm's own templates and themes, before the shipped ones
  schedule::Bounds bounds;             // of the days to plan
};

struct Computation {
  model::JobInputs c;
  model::Estimate estimate;
  model::Plan plan;
  model::Price price;
  model::CrewExposure exposure;
  std::vector<model::HazardChoice> hazards;  // every one of the content, in its order
};

/// Reads the shipped content. Throws std::runtime_error with all messages when it has mistakes.
Shipped readShipped(const Choices& choices);

struct JobText {
  std::string name;  // its file, for messages and for what it names beside itself
  std::string text;
};

/// Reads a job's file ('-' is standard input); nothing, and an error, when it cannot be read.
std::optional<JobText> readJobText(const std::string& file, base::Diagnostics& messages);

/// Reads a job ('-' is standard input) and computes it; nothing when there were errors.
std::optional<Computation> compute(const std::string& file, const Shipped& shipped, const Choices& choices,
                                   base::Diagnostics& messages);
/// The same for the text of a job; 'name' is its file, for messages and for what it names beside itself.
std::optional<Computation> computeText(const std::string& text, const std::string& name,
                                       const Shipped& shipped, const Choices& choices,
                                       base::Diagnostics& messages);

}  // namespace app
