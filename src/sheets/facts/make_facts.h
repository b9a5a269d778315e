// What a document may print, made into words: one set of facts for each kind of reader.
#pragma once

#include "model/document.h"
#include "model/job_result.h"
#include "sheets/facts/facts.h"

namespace sheets {

/// Everything that documents for each reader may print.
using FactsByReader = std::map<model::Reader, Facts>;
FactsByReader makeFacts(const model::JobResult& x);

/// The names that others may read and this reader may not.
Withheld withheldFrom(model::Reader reader, const FactsByReader& facts);

/// The pages that the days of the crew's facts are meant to fill: two for each day with a coat.
std::size_t pagesOfDays(const Facts& crew);

}  // namespace sheets
