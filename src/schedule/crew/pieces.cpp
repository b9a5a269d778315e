#include "schedule/crew/pieces.h"

#include "model/crew_time.h"
#include "model/lookup.h"

#include <algorithm>

namespace schedule {
namespace {

Chain& chainOf(std::vector<Chain>& chains, std::size_t deck) {
  auto chain = std::find_if(chains.begin(), chains.end(), [&](const auto& c) { return c.deck == deck; });
  if (chain == chains.end()) {
    chain = chains.insert(chains.end(), Chain{});
    chain->deck = chain->coats.deck = deck;
  }
  return *chain;
}

void addCoatTask(DeckCoats& deck, int pass, const CoatTask& task) {
  const auto coat = static_cast<std::size_t>(pass);
  if (deck.coats.size() < coat) deck.coats.resize(coat);
  deck.coats[coat - 1].push_back(task);
}

std::size_t rankOf(const model::Task& task, const model::Content& content) {
  return static_cast<std::size_t>(&task - content.tasks.data());
}

}  // namespace

int DeckCoats::minutes(std::size_t coat) const {
  int sum = 0;
  for (const auto& task : coats.at(coat)) sum += task.minutes;
  return sum;
}

Work workOf(const model::Estimate& e, const model::Content& content, const model::Crew& crew) {
  Work work;
  for (const auto& task : content.tasks) {
    if (task.isPerCoat && !work.firstCoatRank) work.firstCoatRank = rankOf(task, content);
  }
  for (const auto& line : e.labour) {
    const auto& task = taskOf(content, line.task);
    const auto minutes = static_cast<int>(crewMinutes(line.hours, crew));
    if (task.measure == model::Measure::Day || task.isForLateCoat || minutes == 0) continue;
    const Piece piece{task.id, rankOf(task, content), line.deck,         line.pass,
                      minutes, task.dryAfter,         task.soilsWetCoats};
    if (!line.deck) {
      work.whole.push_back(piece);
      continue;
    }
    Chain& chain = chainOf(work.chains, *line.deck);
    if (task.isPerCoat)
      addCoatTask(chain.coats, line.pass, {task.id, minutes, model::laysProduct(task), task.soilsWetCoats});
    else
      (piece.rank < work.firstCoatRank.value_or(content.tasks.size()) ? chain.before : chain.after)
          .push_back(piece);
  }
  for (const auto& line : e.lateCoats) {
    auto& sanding = chainOf(work.chains, line.deck.value()).coats.sanding;
    const auto coat = static_cast<std::size_t>(line.pass);
    if (sanding.size() < coat) sanding.resize(coat);
    const auto minutes = static_cast<int>(crewMinutes(line.hours, crew));
    sanding[coat - 1] = {line.task, minutes, false, taskOf(content, line.task).soilsWetCoats};
  }
  const auto byRank = [](const Piece& a, const Piece& b) { return a.rank < b.rank; };
  std::stable_sort(work.whole.begin(), work.whole.end(), byRank);
  for (auto& chain : work.chains) {
    std::stable_sort(chain.before.begin(), chain.before.end(), byRank);
    std::stable_sort(chain.after.begin(), chain.after.end(), byRank);
  }
  return work;
}

}  // namespace schedule
