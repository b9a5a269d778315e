// The work of one day in words, a line for each piece.
#pragma once

#include "sheets/day_parts.h"

namespace sheets {

/// 'A Landing', not broken after the letter.
std::string deckName(const Computed& x, std::size_t deck);
/// '08:30–10:15', '8:30–10:15 am'
std::string span(int from, int until, const Words& w);
/// Of whole steps of Words::volumeStep().
std::string litresText(std::int64_t steps, const Words& w);

/// Time, what, where; of a coat also its strips, area, spreading rate and litres. Setting up and packing down
/// are told on days without a coat only: the page of a coat has no room for what is done every day.
FactList workFacts(const Day& day, const Computed& x, const Words& w);

/// Millimetres of height that the page of a day with coats leaves to the drawing of its strips, beside its
/// tables; nothing where that is too little: then drawing and log stand on a second page.
std::optional<int> roomForStrips(const Day& day, const Computed& x);

}  // namespace sheets
