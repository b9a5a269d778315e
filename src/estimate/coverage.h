// Litres for each coat, and what has to be bought for them.
#pragma once

#include "model/estimate.h"

namespace estimate {

/// Spreading rate of each coat of a deck: the job's own rates; or a test patch for the first and, in the
/// table's proportion, for the later ones; or what finished jobs taught; or the product's table for the
/// uptake of timber and state. Nothing when the job asks for no oil. The range of a coat is the product's;
/// half as far apart where a test patch has told about the deck; by the spread between the firm's own jobs
/// where they taught its rate.
std::vector<model::CoatNeed> coatsOf(const model::JobInputs& c, const model::Content& content,
                                     std::size_t deck, const model::Measures& measures);

/// Need with loss, range, stock and tins.
model::ProductNeed productNeed(const model::JobInputs& c, const std::vector<model::CoatNeed>& coats);

/// Sanded before the coat though the state does not tell: new and weathered boards, which then take another
/// rate.
bool isSandedFirst(const model::Job& job, const model::Deck& deck);

/// What the boards are when they are coated: sanding takes off old oil or film.
model::State stateWhenCoated(const model::Job& job, const model::Deck& deck);

/// How thirsty a deck is when it is coated: by its timber and the state it is coated in.
model::Uptake uptakeOf(const model::Job& job, const model::Deck& deck, const model::Timber& timber);

}  // namespace estimate
