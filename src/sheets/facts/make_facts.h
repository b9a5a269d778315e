// What a document may print, made into words: one set of facts for each kind of reader.
#pragma once

#include "model/document.h"
#include "model/exposure.h"
#include "model/language.h"
#include "model/plan.h"
#include "sheets/facts/facts.h"

namespace sheets {

/// Everything computed about one job, and the language it is told in. The case points into this content,
/// whose texts are in that language.
struct Computed {
  const model::JobInputs& c;
  const model::Content& content;
  const model::Estimate& estimate;
  const model::Plan& plan;
  const model::Price& price;
  const model::Language& language;
  const model::CrewExposure& exposure;
  const std::vector<model::HazardChoice>& hazards;  // one for each of the content, in its order
};

/// Everything that documents for each reader may print.
using FactsByReader = std::map<model::Reader, Facts>;
FactsByReader makeFacts(const Computed& x);

/// Whose documents may print a name: 'the crew and the office'; empty = nobody's.
std::string readersOf(const std::string& name, const FactsByReader& facts);

/// 'Landing, Steps and Terrace'; of many areas their number only.
std::string namesOfDecks(const Computed& x);

/// The title of a document: 'Landing, Steps and Terrace, washed, sanded and oiled twice'.
std::string titleOf(const Computed& x);

}  // namespace sheets
