// The kinds of content files, each read by one function.
#pragma once

#include "input/yaml/cursor.h"
#include "model/content.h"

namespace input {

/// What one person does in an hour, in the task's measure.
base::Count taskRate(const Field& f, model::Measure measure);

/// Grits from coarse to fine, at most eight.
std::vector<int> readGrits(const Field& f);

/// The path a value names, from the folder of the file it stands in; empty when it is not given.
std::string pathBeside(const Field& f, const std::string& file);

/// The keys 'normals' and 'source' of a 'weather:'.
model::Normals readNormals(Record& r);
model::Region readRegion(Record& r);
/// The 'holidays:' of a region with these states.
std::vector<base::HolidayRule> readHolidays(const Field& f, const std::map<std::string, std::string>& states);
/// Codes of labels that have no text in 'labels' are errors.
model::Product readProduct(Record& r, const std::map<std::string, model::Region>& regions,
                           const model::LabelTexts& labels);
std::map<std::string, model::Timber> readTimbers(Record& r);
/// What a safety data sheet says, for oils, stains and cleaners alike.
model::SafetyData readSafetyData(const Field& f, const model::LabelTexts& labels);
std::map<std::string, model::Consumable> readConsumables(Record& r,
                                                         const std::map<std::string, model::Region>& regions,
                                                         const model::LabelTexts& labels);
std::vector<model::Task> readTasks(Record& r, const std::map<std::string, model::Consumable>& consumables);
std::vector<model::Tool> readTools(Record& r, const std::vector<model::Task>& tasks);
std::vector<model::Hazard> readHazards(Record& r, const std::vector<model::Task>& tasks,
                                       const std::vector<model::Tool>& tools);
std::map<model::Condition, model::ConditionWords> readConditionWords(Record& r);
model::LabelTexts readLabels(Record& r);

}  // namespace input
