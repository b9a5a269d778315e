// What the crew's sheet says of dangers: limits and this job's days against them, the hazards that apply, the
// label of the product, and what is worn.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/facts/room.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// The rows of limits that hazards without a panel belong to: they are told there, beside their figures.
enum class LimitRow { Noise, Vibration, Heat, Dust };
std::optional<LimitRow> rowOf(const model::Hazard& hazard);
/// The first hazard of a row that applies to the job; nothing where none does.
const model::Hazard* hazardOfRow(const model::JobResult& x, LimitRow row);
/// How a hazard calls the decks that it is about: 'B Terrace', or 'B' where there is little room.
enum class Decks { ByName, ByLetter };
/// The words of one hazard: 'title', 'who', 'harm', 'sign', 'controls', 'together' and 'left'.
Facts hazardFacts(const model::JobResult& x, const model::Hazard& hazard, const Formatter& w,
                  Decks decks = Decks::ByName);

/// The best controls in a hazard's words, one after another.
std::string firstControls(const Facts& hazard, std::size_t most);

/// 'noise', 'vibration', 'heat', 'vapour', 'dust' and the weight of a tin.
void addExposure(Facts& f, const model::JobResult& x, const Formatter& w);
/// 'rags', 'killers', 'rows' with what is worn and the steps, 'chemicals', 'orders' and 'address'.
void addLeaf(Facts& f, const model::JobResult& x, const Formatter& w, LeafRoom room);
/// A safety data sheet with the standard texts of the label.
Facts labelFacts(const model::JobResult& x, const model::SafetyData& sds, const Formatter& w);
/// 'sds', of the product.
void addLabel(Facts& f, const model::JobResult& x, const Formatter& w);
/// 'grades', what each piece of equipment has to be.
void addGrades(Facts& f, const model::JobResult& x, const Formatter& w);
/// 'orders' to the crew, each with its number.
void addOrders(Facts& f, const model::JobResult& x, const Formatter& w, Room room);
/// 'risks', every hazard with all that is known of it, and 'exposure_days'.
void addRisks(Facts& f, const model::JobResult& x, const Formatter& w);

/// What a piece of protective equipment has to be in a place, 'half mask A2P2'; empty where nothing is known.
std::string gradeOf(const model::Region& region, const std::string& equipment);

/// 'eliminate' to 'protect'.
const char* nameOf(model::ControlLevel level);

/// The vacuum that the dust of this job asks for: for fine dust, or HEPA for treated boards and in the US.
std::string vacuum(const model::JobResult& x, const Formatter& w);
/// What the heaviest full tin of the job weighs, rounded up: '19 kg'.
std::string tinMass(const model::JobResult& x, const Formatter& w);
/// What the heaviest tool weighs: '62 kg'; empty where none is known.
std::string toolMass(const model::JobResult& x, const Formatter& w);

}  // namespace sheets
