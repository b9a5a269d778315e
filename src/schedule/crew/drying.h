// When a deck can be worked on again after it has been made wet.
#pragma once

#include "schedule/crew/open_hours.h"
#include "schedule/crew/work.h"

namespace schedule {

/// The moment the next piece of work on the deck may begin: after the hours of the piece that ended at 'end'
/// and, on a deck that is coated, when the air has dried the wood to the product's limit, from rain that has
/// fallen since as well. Where it never does within two weeks, the hours for coating say so.
base::LocalTime dryAfter(const Piece& piece, base::LocalTime end, const model::JobInputs& c, OpenHours& open);

}  // namespace schedule
