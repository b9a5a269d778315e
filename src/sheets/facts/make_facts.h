// What a document may print, made into words: one set of facts for each kind of reader.
#pragma once

#include "model/document.h"
#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/facts/room.h"

namespace sheets {

/// Everything that documents for each reader may print.
using FactsByReader = std::map<model::Reader, Facts>;
FactsByReader makeFacts(const model::JobResult& x);

/// The crew's facts, those of the safety leaf with as much as there is room for.
Facts withRoom(Facts crew, const model::JobResult& x, LeafRoom room);

/// Whose documents may print a name: 'the crew and the office'; empty = nobody's.
std::string readersOf(const std::string& name, const FactsByReader& facts);

}  // namespace sheets
