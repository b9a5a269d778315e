// Facts about the decks: sizes, surfaces and litres in words.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

const model::Timber& timberOf(const model::JobResult& x, const model::Deck& deck);
/// Size of a deck in a line or two: '12.40 x 6.20 m', 'less the tree, 1.20 m across'.
std::string sizeWords(const model::Deck& deck, const Formatter& w);
/// How many coats the decks take that are coated at all.
struct CoatCounts {
  int fewest = 0, most = 0;
};
CoatCounts coatCounts(const model::JobResult& x);

/// Litres of each deck's coats with loss, in whole steps that add up over the job: [deck][coat - 1].
std::vector<std::vector<std::int64_t>> printedLitres(const model::JobResult& x, const Formatter& w);

/// 'decks', each with what it is and what it takes.
FactList deckFacts(const model::JobResult& x, const Formatter& w);
/// 'deck_litres', 'coat_heads' and 'coat_totals': a table whose printed figures add up.
void addLitreTable(Facts& facts, const model::JobResult& x, const Formatter& w);

}  // namespace sheets
