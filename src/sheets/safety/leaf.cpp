#include "sheets/safety/leaf.h"

#include <algorithm>
#include <stdexcept>

namespace sheets {
namespace {

constexpr std::size_t mostKillers = 3, stepsInRow = 3;
constexpr int maims = 4;  // the severity from which a hazard is among those that kill or maim

bool isDone(const model::JobResult& x, const model::Task& task) {
  return std::any_of(x.resources.labour.begin(), x.resources.labour.end(),
                     [&](const auto& line) { return line.task == task.id; });
}

/// What the task asks for, and what the hazards at it do.
std::vector<std::string> wornAt(const model::Task& task, const std::vector<const model::Hazard*>& hazards) {
  auto worn = task.wears;
  for (const auto* hazard : hazards) {
    if (std::find(hazard->tasks.begin(), hazard->tasks.end(), task.id) != hazard->tasks.end())
      worn.insert(worn.end(), hazard->wears.begin(), hazard->wears.end());
  }
  std::sort(worn.begin(), worn.end());
  worn.erase(std::unique(worn.begin(), worn.end()), worn.end());
  return worn;
}

std::vector<LeafRow> rowsOf(const model::JobResult& x, const std::vector<const model::Hazard*>& hazards) {
  std::vector<LeafRow> rows;
  for (const auto& task : x.content.tasks) {
    if (!isDone(x, task) || task.wears.empty()) continue;
    const auto worn = wornAt(task, hazards);
    auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.wears == worn; });
    if (found == rows.end()) found = rows.insert(rows.end(), {{}, worn, {}, false});
    found->tasks.push_back(&task);
    found->isEveryDay = found->isEveryDay || task.measure == model::Measure::Day;
  }
  return rows;
}

/// The row of the first of its tasks that is done, else that of all days.
LeafRow* rowFor(const model::Hazard& hazard, std::vector<LeafRow>& rows) {
  for (const auto& id : hazard.tasks) {
    for (auto& row : rows) {
      if (std::any_of(row.tasks.begin(), row.tasks.end(), [&](const auto* task) { return task->id == id; }))
        return &row;
    }
  }
  const auto daily = std::find_if(rows.begin(), rows.end(), [](const auto& row) { return row.isEveryDay; });
  return daily == rows.end() ? nullptr : &*daily;
}

std::size_t stepsIn(const LeafRow& row, Room room) {
  const bool isDusty = std::find(row.wears.begin(), row.wears.end(), "mask") != row.wears.end();
  switch (room) {
    case Room::Full:
      return row.isEveryDay || (isDusty && row.tasks.size() > 1) ? 2 * stepsInRow : stepsInRow;
    case Room::Fewer:
      return row.isEveryDay ? 2 * stepsInRow : stepsInRow;
    case Room::Few:
    case Room::Fewest:
      return row.isEveryDay ? 2 * (stepsInRow - 1) : stepsInRow - 1;
    case Room::Least:
      return stepsInRow - 1;
  }
  throw std::logic_error("internal error: room that is not told apart");
}

void fillRow(LeafRow& row, const std::vector<const model::Hazard*>& hazards, std::size_t most) {
  for (std::size_t control = 0; row.steps.size() < most; ++control) {
    const std::size_t before = row.steps.size();
    for (const auto* hazard : hazards) {
      if (control < hazard->controls.size() && row.steps.size() < most)
        row.steps.push_back({hazard, control});
    }
    if (row.steps.size() == before) break;
  }
  std::stable_sort(row.steps.begin(), row.steps.end(), [](const LeafStep& a, const LeafStep& b) {
    return a.hazard->controls[a.control].level < b.hazard->controls[b.control].level;
  });
}

bool holds(const std::vector<const model::Hazard*>& hazards, const model::Hazard& one) {
  return std::find(hazards.begin(), hazards.end(), &one) != hazards.end();
}

}  // namespace

std::vector<const model::Hazard*> hazardsByHarm(const model::JobResult& x) {
  std::vector<const model::Hazard*> all;
  for (std::size_t i = 0; i < x.hazards.size(); ++i) {
    if (x.hazards[i].applies) all.push_back(&x.content.hazards[i]);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const auto* a, const auto* b) { return a->harmOrder() > b->harmOrder(); });
  return all;
}

Leaf leafOf(const model::JobResult& x, Room room) {
  const auto hazards = hazardsByHarm(x);
  Leaf leaf;
  leaf.rows = rowsOf(x, hazards);
  std::vector<std::vector<const model::Hazard*>> inRows(leaf.rows.size());
  for (const auto* hazard : hazards) {
    if (hazard->isPanel) {
      if (!leaf.rags) leaf.rags = hazard;
    } else if (!hazard->tasks.empty() && hazard->severity >= maims && leaf.killers.size() < mostKillers) {
      leaf.killers.push_back(hazard);
    } else if (LeafRow* row = hazard->tasks.empty() ? nullptr : rowFor(*hazard, leaf.rows)) {
      inRows[static_cast<std::size_t>(row - leaf.rows.data())].push_back(hazard);
    }
  }
  for (std::size_t i = 0; i < leaf.rows.size(); ++i)
    fillRow(leaf.rows[i], inRows[i], stepsIn(leaf.rows[i], room));
  return leaf;
}

const char* placeOnLeaf(const Leaf& leaf, const model::Hazard& hazard) {
  if (leaf.rags == &hazard) return "the panel";
  if (holds(leaf.killers, hazard)) return "the first three";
  for (const auto& row : leaf.rows) {
    if (std::any_of(row.steps.begin(), row.steps.end(),
                    [&](const auto& step) { return step.hazard == &hazard; }))
      return "the steps";
  }
  return hazard.tasks.empty() && !hazard.isPanel ? "the orders" : "the risk assessment only";
}

}  // namespace sheets
