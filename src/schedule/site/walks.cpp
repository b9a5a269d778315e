#include "schedule/site/walks.h"

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
      const bool isIt = strip.number == duty.strip && strip.wipe && strip.wipe->start == shift.start &&
                        strip.wipe->who == shift.who;
      if (!isIt) continue;
      switch (strip.wipe->from.on) {
        case model::Stand::On::Boards:
        case model::Stand::On::Strip:
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
    if (coat.deck != deck || coat.start >= at || coat.walk <= at) continue;
    const bool isNextToday = std::any_of(plan.coats.begin(), plan.coats.end(), [&](const auto& next) {
      return next.deck == deck && next.part == coat.part && next.coat > coat.coat &&
             next.start.day == at.day && next.start >= at;
    });
    if (coat.recoatFrom > at || !isNextToday) return true;
  }
  return false;
}

namespace {

/// One person's walks of all days.
class Walker {
 public:
  Walker(std::size_t person, const model::Plan& plan, const AccessGraph& graph, std::vector<Walk>& walks)
      : person_(person), plan_(plan), graph_(graph), walks_(walks) {}

  void follow(const std::vector<const model::Duty*>& duties) {
    for (std::size_t i = 0; i < duties.size(); ++i) {
      const auto& shift = duties[i]->shift;
      const bool isLastOfDay = i + 1 == duties.size() || duties[i + 1]->shift.start.day != shift.start.day;
      if (const auto next = placeOf(*duties[i], plan_, graph_)) {
        go(shift.start, *next);
        if (isLastOfDay) go(shift.end, {});
        continue;
      }
      // Whoever waits stays where the next piece of work is, if they are there already.
      std::optional<Where> then;
      for (std::size_t k = i + 1; k < duties.size() && !then && duties[k]->shift.start.day == shift.start.day;
           ++k)
        then = placeOf(*duties[k], plan_, graph_);
      if (!then || *then != now_ || !hasDryBoards(now_, shift.end)) leave(shift.start, shift.end);
    }
  }

 private:
  bool isOpen(LocalTime at, Where to) const {
    return graph_.path(now_, to, [&](std::size_t deck) { return isShut(plan_, deck, at); }).has_value();
  }

  /// Whether boards of a deck may be stepped on, at least those which its coat has not reached.
  bool hasDryBoards(Where deck, LocalTime at) const {
    if (!deck || !isShut(plan_, *deck, at)) return true;
    const double pitch = graph_.areas()[*deck].pitch;
    double across = 0;
    for (const auto& edge : plan_.edges) {
      for (const auto& s : edge.strips) {
        if (edge.deck == *deck && s.lay.start.day == at.day && s.lay.end > at)
          across += pitch > 0 && s.boards > 0 ? s.boards * pitch : footing;
      }
    }
    return across >= footing;
  }

  /// The deck that leads out and that somebody lays just then.
  Where wayAlongWithLayers(LocalTime at) const {
    const auto& areas = graph_.areas();
    for (const auto& way : areas[*now_].ways) {
      if (way.to && areas[*way.to].depth < areas[*now_].depth && hasDryBoards(way.to, at)) return way.to;
    }
    return {};
  }

  /// To the ground, or with those who lay until that is open.
  void leave(LocalTime at, LocalTime until) {
    for (std::size_t steps = 0; steps < plan_.coats.size() && now_ && !isOpen(at, {}); ++steps) {
      if (const Where next = wayAlongWithLayers(at)) {
        go(at, next);
        continue;
      }
      const auto here = std::find_if(plan_.coats.begin(), plan_.coats.end(), [&](const auto& c) {
        return c.deck == *now_ && c.start <= at && at < c.end;
      });
      if (here == plan_.coats.end() || here->end >= until) return;
      at = here->end;
    }
    go(at, {});
  }

  void go(LocalTime at, Where to) {
    if (to == now_) return;
    auto over = graph_.path(now_, to, [&](std::size_t deck) { return isShut(plan_, deck, at); });
    if (!over) over = graph_.path(now_, to, [](std::size_t) { return false; });
    Walk walk{person_, at, now_, to, {}};
    for (const auto& crossed : over.value_or(std::vector<Where>{})) {
      if (crossed) {
        walk.over.push_back(*crossed);
        continue;
      }
      walk.to = {};
      walks_.push_back(walk);
      walk = {person_, at, {}, to, {}};
    }
    walks_.push_back(walk);
    now_ = to;
  }

  std::size_t person_;
  const model::Plan& plan_;
  const AccessGraph& graph_;
  std::vector<Walk>& walks_;
  Where now_;
};

}  // namespace

std::vector<Walk> walksOf(const model::Plan& plan, const AccessGraph& graph) {
  std::vector<Walk> walks;
  std::vector<std::vector<const model::Duty*>> people;
  for (const auto& duty : plan.duties) {
    for (const auto person : duty.shift.who) {
      if (people.size() <= person) people.resize(person + 1);
      people[person].push_back(&duty);
    }
  }
  for (std::size_t person = 0; person < people.size(); ++person)
    Walker(person, plan, graph, walks).follow(people[person]);
  std::stable_sort(walks.begin(), walks.end(),
                   [](const Walk& a, const Walk& b) { return a.start < b.start; });
  return walks;
}

}  // namespace schedule
