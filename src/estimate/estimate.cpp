#include "estimate/estimate.h"

namespace estimate {

model::Estimate makeEstimate(const model::JobInputs& c, const model::Content& content, int days,
                             const std::vector<LateCoat>& late) {
  model::Estimate e;
  for (const auto& deck : c.job.areas) e.decks.push_back(measureDeck(deck));
  e.all = sumOf(e.decks);

  for (std::size_t deck = 0; deck < e.decks.size(); ++deck) {
    for (auto& coat : coatsOf(c, content, deck, e.decks[deck])) e.coats.push_back(std::move(coat));
  }
  e.product = productNeed(c, e.coats);

  e.labour = labourOf(c, content, e.decks, days, late);
  e.lateCoats = lateCoatLabour(c, content, e.decks);
  for (const auto& line : e.labour) e.labourHours += line.hours;
  e.consumables = consumablesOf(c, content, e.labour);
  e.crewDays = days;
  return e;
}

}  // namespace estimate
