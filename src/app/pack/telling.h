// In which languages a job's documents are told.
#pragma once

#include "app/pack/compute.h"
#include "sheets/facts/make_facts.h"

#include <memory>

namespace app {

/// A job told in one language: the content translated, and the case pointing into it. What was computed, and
/// what the job's author typed, is the same in all of them. Must not outlive the computation and what is
/// shipped.
struct Telling {
  const Computation& x;
  const model::Language* language;
  const model::Content* content;
  const Templates* templates;
  model::JobInputs c;
  std::shared_ptr<const Translation> translation = {};  // holds the two; nothing for English

  std::vector<model::HazardChoice> hazards = {};  // their reasons in the language; none = as computed

  sheets::Computed computed() const {
    return {c,       *content,  x.estimate, x.plan,
            x.price, *language, x.exposure, hazards.empty() ? x.hazards : hazards};
  }
};

/// The language of the job's region, whose sheets rule over translations: 'en' of 'en-NZ'.
std::string rulingLanguage(const Computation& x);

/// The languages a document is asked for in, the main one first: by the command line, else by the job, else
/// its region's.
std::vector<std::string> languagesOf(const std::string& document, const Computation& x,
                                     const Choices& choices);

/// Tells a job in a language; nothing (and messages) when there is no such language or its file has mistakes.
std::optional<Telling> tell(const Computation& x, const Shipped& shipped, const std::string& language,
                            base::Diagnostics& messages);

}  // namespace app
