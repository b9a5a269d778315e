// Where the crew leaves a deck that is wet behind it.
#pragma once

#include "model/job.h"
#include "model/placing.h"

namespace schedule {

/// The decks on their site; those without a place of their own apart from the rest.
std::vector<model::PlacedDeck> placedAsGiven(const std::vector<model::Deck>& decks);

/// Where the crew leaves one of the decks placed, from its own corner: the job's word; else the side of the
/// boards laid last that leads, where the job places both, to a deck coated next; else off the timber; else
/// to another deck. It leads over a deck of 'wet' only where there is no other way, and off an edge higher
/// than half a metre only before that. Of equals the longest, then the lowest on the plan, then the
/// rightmost; stairs by their foot first. 'wet' and 'next': decks coated before and after it on the same day.
/// Nothing for what has no place on a plan.
std::optional<model::Place> wayOut(const std::vector<model::Deck>& decks,
                                   const std::vector<model::PlacedDeck>& placed, std::size_t deck,
                                   const std::vector<std::size_t>& wet, const std::vector<std::size_t>& next);

/// Whether a deck has to be laid before another: [deck][other]. The way out that the job gives touches the
/// other; or, where the job gives none, nothing better is left than over the other or off a high edge once
/// the other is wet.
std::vector<std::vector<bool>> leadsOnto(const std::vector<model::Deck>& decks);

}  // namespace schedule
