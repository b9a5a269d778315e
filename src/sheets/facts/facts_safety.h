// What the crew's sheet says of dangers: limits and this job's days against them, the hazards that apply, the
// label of the product, and what is worn.
#pragma once

#include "sheets/facts/make_facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// The rows of limits that hazards without a panel belong to: they are told there, beside their figures.
enum class LimitRow { Noise, Vibration, Heat, Dust };
std::optional<LimitRow> rowOf(const model::Hazard& hazard);
/// The first hazard of a row that applies to the job; nothing where none does.
const model::Hazard* hazardOfRow(const Computed& x, LimitRow row);
/// The words of one hazard: 'title', 'signal', 'who', 'harm', 'controls', 'together' and 'left'.
Facts hazardFacts(const Computed& x, const model::Hazard& hazard, const Formatter& w);

/// 'noise', 'vibration', 'heat', 'vapour', 'dust' and the weight of a tin.
void addExposure(Facts& f, const Computed& x, const Formatter& w);
/// 'panels' and 'hazards', both in the content's order, less those of the limits; 'rags', with a panel of its
/// own.
void addHazards(Facts& f, const Computed& x, const Formatter& w);
/// 'sds', with the standard texts of the label.
void addLabel(Facts& f, const Computed& x, const Formatter& w);
/// 'wear_groups', by task, and 'grades', what each piece has to be.
void addWear(Facts& f, const Computed& x, const Formatter& w);

/// The vacuum that the dust of this job asks for: for fine dust, or HEPA for treated boards and in the US.
std::string vacuum(const Computed& x, const Formatter& w);
/// What the heaviest full tin of the job weighs, rounded up: '19 kg'.
std::string tinMass(const Computed& x, const Formatter& w);

}  // namespace sheets
