// All coats of a deck as one train: each inside hours fit for it, the next inside the product's window after
// the one before. Several decks share a day's session where it holds them.
#pragma once

#include "schedule/crew/waits.h"

namespace schedule {

/// A deck's coats placed, with all sessions as they stand then.
struct Train {
  Sessions sessions;
  Window worst = Window::Ideal;
  Heed heed = Heed::All;
  base::LocalTime start, end, dry;  // first and last stroke; touch dry after it
};

/// The best train for a deck whose boards are ready at 'ready': the earliest on which every coat falls into
/// the ideal window; else, of the coming days, the first of those that miss it least. Where the weather
/// leaves no place within thirty working days, the usual weather counts no more, then none. 'now': sessions
/// that start sooner stay as they are.
Train findTrain(const SessionMaker& maker, const DeckCoats& deck, const Sessions& sessions,
                base::LocalTime ready, base::LocalTime now);

/// The lays of a deck in order of its coats.
std::vector<const Lay*> laysOf(const Sessions& sessions, std::size_t deck);

}  // namespace schedule
