// Person-hours for each task, and what the tasks use up.
#pragma once

#include "model/estimate.h"
#include "model/plan.h"

namespace estimate {

/// Lines in the tasks' order, then the decks', then passes or coats. Tasks that have nothing to do on a deck
/// make no line; day tasks make none while 'days' is 0. Every task that is counted by size has a rate.
/// Of the work before late coats there is only that of 'late'.
std::vector<model::LabourLine> labourOf(const model::JobInputs& c, const model::Content& content,
                                        const std::vector<model::Measures>& decks, int days,
                                        const std::vector<model::ExtraPass>& late = {});

/// The same for every coat that might come too late, and nothing else.
std::vector<model::LabourLine> lateCoatLabour(const model::JobInputs& c, const model::Content& content,
                                              const std::vector<model::Measures>& decks);

/// What the labour lines use up, in the order of first use.
std::vector<model::ConsumableLine> consumablesOf(const model::JobInputs& c, const model::Content& content,
                                                 const std::vector<model::LabourLine>& labour);

}  // namespace estimate
