// Places the coats: batches of decks that one day's coating hours hold, each coat inside the product's
// window.
#pragma once

#include "model/plan.h"
#include "plan/calendar.h"

namespace plan {

/// One task of one coat on one deck.
struct CoatTask {
  std::string task;
  int minutes = 0;
  bool isWet = false;  // lays product: the coat starts with the first of these and ends with the last
};

/// All coats of one deck; coats[n] is coat n + 1.
struct DeckCoats {
  std::size_t deck = 0;
  std::vector<std::vector<CoatTask>> coats;
};

/// Adds shifts, coat events and misses to the plan. 'ready' is the moment all decks can take their first
/// coat.
void placeCoats(model::Plan& plan, const std::vector<DeckCoats>& decks, const model::Case& c,
                const Calendar& calendar, Span coating, base::LocalTime ready);

}  // namespace plan
