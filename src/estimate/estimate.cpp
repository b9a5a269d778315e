#include "estimate/estimate.h"

namespace estimate {

model::Estimate makeEstimate(const model::JobInputs& c, const model::Content& content) {
  model::Estimate e;
  for (const auto& deck : c.job.areas) e.decks.push_back(measureDeck(deck));
  e.all = sumOf(e.decks);
  for (std::size_t deck = 0; deck < e.decks.size(); ++deck) {
    for (auto& coat : coatsOf(c, content, deck, e.decks[deck])) e.coats.push_back(std::move(coat));
  }
  e.labour = labourOf(c, content, e.decks, 0);
  e.lateCoats = lateCoatLabour(c, content, e.decks);
  return e;
}

model::Resources makeResources(const model::JobInputs& c, const model::Content& content,
                               const model::Estimate& e, int days,
                               const std::vector<model::ExtraPass>& late) {
  model::Resources r;
  r.crewDays = days;
  r.labour = labourOf(c, content, e.decks, days, late);
  for (const auto& line : r.labour) r.labourHours += line.hours;
  r.consumables = consumablesOf(c, content, r.labour);
  r.product = productNeed(c, e.coats);
  return r;
}

}  // namespace estimate
