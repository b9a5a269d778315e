// Shapes of decks and of what is cut out of them.
#pragma once

#include "input/yaml/cursor.h"
#include "model/job.h"

namespace input {

/// The one shape among the record's keys, its flat sides within the limits; nothing (and an error) when it is
/// missing or impossible.
std::optional<model::Shape> readShape(Record& r, const Limits<base::Length>& sides);
/// '[6 m, 3 m]': to the right and down.
std::optional<model::Place> readPlace(const Field& f);

/// Every cut-out lies on the deck and no two of them share area. 'fields' are the cut-outs' places in the
/// file.
void checkCutOuts(const model::Shape& deck, const std::vector<model::CutOut>& cutOuts,
                  const std::vector<Field>& fields);

/// A way out that does not lie on its deck or at an edge of it; 'way' is its place in the file.
void checkWayOut(const model::Deck& deck, const Field& way);

/// Warns of areas that lie over one another on the plan, and of flat ones of unusual size.
void checkPlan(const std::vector<model::Deck>& decks, const std::vector<Field>& fields);

}  // namespace input
