// The kinds of content files, each read by one function.
#pragma once

#include "input/cursor.h"
#include "model/content.h"

namespace input {

/// What one person does in an hour, in the task's measure.
base::Count taskRate(const Field& f, model::Measure measure);

model::Region readRegion(Record& r);
model::Product readProduct(Record& r, const std::map<std::string, model::Region>& regions);
std::map<std::string, model::Timber> readTimbers(Record& r);
std::map<std::string, model::Consumable> readConsumables(Record& r,
                                                         const std::map<std::string, model::Region>& regions);
std::vector<model::Task> readTasks(Record& r, const std::map<std::string, model::Consumable>& consumables);
std::vector<model::Tool> readTools(Record& r, const std::vector<model::Task>& tasks);

}  // namespace input
