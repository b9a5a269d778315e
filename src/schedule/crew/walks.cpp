#include "schedule/crew/walks.h"

#include <algorithm>

namespace schedule {
namespace {

using base::LocalTime;
using What = model::Duty::What;

/// Where one stands for a duty; nothing = it does not say.
std::optional<Where> placeOf(const model::Duty& duty, const model::Plan& plan, const AccessGraph& graph) {
  const auto& shift = duty.shift;
  if (duty.what == What::Wait) return {};
  if (duty.what == What::Rest || !shift.deck || !graph.areas()[*shift.deck].isStoodOn) return Where{};
  for (const auto& edge : plan.edges) {
    if (edge.deck != shift.deck || edge.coat != shift.pass || duty.strip == 0) continue;
    for (const auto& strip : edge.strips) {
      const bool isIt = strip.number == duty.strip && strip.wipe && strip.wipe->start == shift.start && strip.wipe->who == shift.who;
      if (!isIt) continue;
      switch (strip.wipe->from.on) {
        case model::Stand::On::Boards:
          return shift.deck;
        case model::Stand::On::Ground:
          return Where{};
        case model::Stand::On::Deck:
          return strip.wipe->from.deck;
      }
    }
  }
  return shift.deck;
}

}  // namespace

bool isShut(const model::Plan& plan, std::size_t deck, LocalTime at) {
  for (const auto& coat : plan.coats) {
    if (coat.deck != deck || coat.start > at || coat.walk <= at) continue;
    const bool isNextToday = std::any_of(plan.coats.begin(), plan.coats.end(), [&](const auto& next) {
      return next.deck == deck && next.part == coat.part && next.coat > coat.coat && next.start.day == at.day && next.start >= at;
    });
    if (coat.recoatFrom > at || !isNextToday) return true;
  }
  return false;
}

std::vector<Walk> walksOf(const model::Plan& plan, const AccessGraph& graph) {
  std::vector<Walk> walks;
  std::vector<std::vector<const model::Duty*>> people;
  for (const auto& duty : plan.duties) {
    for (const auto person : duty.shift.who) {
      if (people.size() <= person) people.resize(person + 1);
      people[person].push_back(&duty);
    }
  }
  for (std::size_t person = 0; person < people.size(); ++person) {
    const auto& duties = people[person];
    Where now;
    for (std::size_t i = 0; i < duties.size(); ++i) {
      const LocalTime at = duties[i]->shift.start;
      auto next = placeOf(*duties[i], plan, graph);
      if (!next) {
        // Whoever waits stays where the next piece of work is, if they are there already.
        std::optional<Where> then;
        for (std::size_t k = i + 1; k < duties.size() && !then && duties[k]->shift.start.day == at.day; ++k) then = placeOf(*duties[k], plan, graph);
        next = then && *then == now ? now : Where{};
      }
      if (*next == now) continue;
      auto over = graph.path(now, *next, [&](std::size_t deck) { return isShut(plan, deck, at); });
      if (!over) over = graph.path(now, *next, [](std::size_t) { return false; });
      walks.push_back({person, at, now, *next, over.value_or(std::vector<std::size_t>{})});
      now = *next;
    }
  }
  std::stable_sort(walks.begin(), walks.end(), [](const Walk& a, const Walk& b) { return a.start < b.start; });
  return walks;
}

}  // namespace schedule
