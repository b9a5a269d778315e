// Shapes of decks and of what is cut out of them.
#pragma once

#include "input/cursor.h"
#include "model/job.h"

namespace input {

/// The one shape among the record's keys; nothing (and an error) when it is missing or impossible.
std::optional<model::Shape> readShape(Record& r);
/// '[6 m, 3 m]': to the right and down.
std::optional<model::Place> readPlace(const Field& f);

/// Every cut-out lies on the deck and no two of them share area. 'fields' are the cut-outs' places in the
/// file.
void checkCutOuts(const model::Shape& deck, const std::vector<model::CutOut>& cutOuts,
                  const std::vector<Field>& fields);

}  // namespace input
