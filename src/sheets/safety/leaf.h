// What of a job's hazards stands where on the crew's safety leaf; all of them stand in the risk assessment.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/room.h"

namespace sheets {

/// A control of a hazard, as a step in the row of a task.
struct LeafStep {
  const model::Hazard* hazard = nullptr;
  std::size_t control = 0;
};

/// Tasks for which the same is worn share a row, in their order of work.
struct LeafRow {
  std::vector<const model::Task*> tasks;
  std::vector<std::string> wears;  // ids of equipment, sorted
  std::vector<LeafStep> steps;     // the safest first
  bool isEveryDay = false;
};

struct Leaf {
  const model::Hazard* rags = nullptr;        // the panel
  std::vector<const model::Hazard*> killers;  // at most three
  std::vector<LeafRow> rows;
};

/// The hazards that apply, by severity times exposure, the content's order among equals.
std::vector<const model::Hazard*> hazardsByHarm(const model::JobResult& x);

/// Six steps in the row of all days and, where there is room, in that of the dusty tasks, three in the others;
/// four and two where there is little. Of each hazard its best step first, then the second ones.
Leaf leafOf(const model::JobResult& x, Room room = Room::Full);

/// Where it is told: 'the panel', 'the first three', 'the steps', 'the orders', 'the risk assessment only'.
const char* placeOnLeaf(const Leaf& leaf, const model::Hazard& hazard);

}  // namespace sheets
