// What the crew's sheet says of dangers: limits and this job's days against them, the hazards that apply, the
// label of the product, and what is worn.
#pragma once

#include "sheets/make_facts.h"
#include "sheets/words.h"

namespace sheets {

/// 'noise', 'vibration', 'heat', 'vapour', 'dust', 'lifting' and 'exposure_days'.
void addExposure(Facts& f, const Computed& x, const Words& w);
/// 'panels' and 'hazards', both in the content's order; 'rags', which has a panel of its own.
void addHazards(Facts& f, const Computed& x, const Words& w);
/// 'sds', with the standard texts of the label.
void addLabel(Facts& f, const Computed& x, const Words& w);
/// 'wear_groups', by task, and 'grades', what each piece has to be.
void addWear(Facts& f, const Computed& x, const Words& w);

}  // namespace sheets
