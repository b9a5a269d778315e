// What a document may print, made into words: one set of facts for each kind of reader.
#pragma once

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

/// For quote and aftercare sheet. Holds no cost, margin, office note or path.
Facts customerFacts(const Computed& x);
/// For the crew: no money at all.
Facts crewFacts(const Computed& x);
/// For the crew day by day: no money either.
Facts dayFacts(const Computed& x);
/// The pages a day plan of these facts is meant to fill: two for each day with a coat.
std::size_t pagesOfDays(const Facts& days);
/// For the order list and the office sheet: everything.
Facts officeFacts(const Computed& x);

/// The title of a document: 'Landing, Steps and Terrace, washed, sanded and oiled twice'.
std::string titleOf(const Computed& x);

}  // namespace sheets
