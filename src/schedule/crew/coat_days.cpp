#include "schedule/crew/coat_days.h"

#include "model/crew_time.h"
#include "model/wiping.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <tuple>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

constexpr int mostWorkdays = 40;            // from the first coat of a stage to its last
constexpr int longestSameDayWait = 6 * 60;  // minutes between two coats of a day

bool hasRested(const DayPlan& day) {
  return std::any_of(day.duties.begin(), day.duties.end(),
                     [](const auto& duty) { return duty.what == model::Duty::What::Rest; });
}

bool holds(const std::vector<std::size_t>& list, std::size_t one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

}  // namespace

CoatDays::CoatDays(const Desk& desk, const Work& work, const std::vector<Piece>& last)
    : desk_(desk), work_(work), earlier_(work.units.size()) {
  const int crew = desk.c.job.crew.people;
  for (int people = 1; people <= crew; ++people)
    lastMinutes_.push_back(minutesOf(byFewer(last, crew, people)));
  const auto& areas = desk.graph.areas();
  const auto& units = work.units;
  // Whether the only way from a unit leads over another, or over a later part of its own deck.
  const auto isBehind = [&](std::size_t behind, std::size_t unit) {
    const std::size_t over = units[unit].deck, from = units[behind].deck;
    if (over == from) return behind < unit;
    return !desk.graph.path(from, {}, [&](std::size_t deck) { return deck == over; });
  };
  for (std::size_t unit = 0; unit < units.size(); ++unit) {
    for (std::size_t other = 0; other < units.size(); ++other) {
      if (other == unit) continue;
      const bool isAbove =
          other < unit && !areas[units[other].deck].isStoodOn && areas[units[unit].deck].isStoodOn;
      if (isAbove) earlier_[unit].above.push_back(other);
      if (isBehind(other, unit)) earlier_[unit].behind.push_back(other);
    }
  }
}

const LaidCoat* CoatDays::lastCoat(const Schedule& schedule, std::size_t unit) const {
  for (auto coat = schedule.coats.rbegin(); coat != schedule.coats.rend(); ++coat) {
    if (coat->unit == unit) return &*coat;
  }
  return nullptr;
}

bool CoatDays::isReached(const Schedule& schedule, std::size_t unit, LocalTime at,
                         const std::vector<std::size_t>& later) const {
  const std::size_t own = work_.units[unit].deck;
  const auto isShut = [&](std::size_t deck) {
    for (const auto& coat : schedule.coats) {
      if (work_.units[coat.unit].deck != deck || coat.walk <= at) continue;
      // What is coated once more later that day bears a step as soon as that coat may follow.
      if (coat.recoat <= at && holds(later, coat.unit) && lastCoat(schedule, coat.unit) == &coat) continue;
      return true;
    }
    return false;
  };
  // Later parts of its own deck are its way out.
  for (const auto& coat : schedule.coats) {
    if (coat.unit <= unit || work_.units[coat.unit].deck != own || coat.walk <= at) continue;
    if (coat.recoat > at || !holds(later, coat.unit)) return false;
  }
  return desk_.graph.path(own, {}, isShut).has_value();
}

bool CoatDays::mayBeCoated(const Schedule& schedule, std::size_t unit, base::Date day,
                           const std::vector<std::size_t>& today) const {
  if (coatsLeft(unit) == 0 || desk_.open.on(day, work_.units[unit].deck, choice_.heed).empty()) return false;
  const auto* last = lastCoat(schedule, unit);
  if (last && last->recoat.day > day) return false;
  const auto isOfStage = [&](std::size_t u) { return from_ <= u && u < until_; };
  const auto leftThen = [&](std::size_t u) { return coatsLeft(u) - (holds(today, u) ? 1 : 0); };
  const auto dripsOnIt = [&](std::size_t above) {
    const int left = leftThen(above);
    return isOfStage(above) && left > 0 &&
           static_cast<int>(work_.units[above].coats.size()) - left <= done_[unit];
  };
  const auto isShutIn = [&](std::size_t behind) {
    const int left = leftThen(behind);
    return isOfStage(behind) && left > 0 && left > coatsLeft(unit) - 1;
  };
  const auto& earlier = earlier_[unit];
  return std::none_of(earlier.above.begin(), earlier.above.end(), dripsOnIt) &&
         std::none_of(earlier.behind.begin(), earlier.behind.end(), isShutIn);
}

/// Whether the fit hours would hold the laying alone, by all of them at once.
bool CoatDays::couldFit(const std::vector<std::size_t>& units, base::Date day, int from, int people) const {
  for (const auto u : units) {
    const Unit& unit = work_.units[u];
    from += fives(unit.coats[static_cast<std::size_t>(done_[u])].lay, people);
    if (from > desk_.open.on(day, unit.deck, choice_.heed).back().until) return false;
  }
  return true;
}

/// What is done before a coat on a unit, and when it may be laid.
void CoatDays::addItem(Round& round, const Schedule& schedule, std::size_t u, LocalTime from,
                       bool isTakenForLate) const {
  const Unit& unit = work_.units[u];
  const auto coat = static_cast<std::size_t>(done_[u]);
  const auto* last = lastCoat(schedule, u);
  const bool isLate = isTakenForLate || isPastLongestWait(schedule, u, from);
  const bool isBare = !last && schedule.bareSince[u] != LocalTime{} &&
                      from.day - schedule.bareSince[u].day > days{coatWithinDays};
  const auto& extra = unit.coats[coat].extra;
  round.isLate.push_back(isLate);
  round.isExtra.push_back((isLate || isBare) && extra.has_value());
  if (round.isExtra.back()) round.before.push_back(*extra);
  if (coat == 0) round.before.insert(round.before.end(), unit.taping.begin(), unit.taping.end());
  FlowItem item{u,
                &unit,
                static_cast<int>(coat) + 1,
                desk_.open.on(from.day, unit.deck, choice_.heed),
                0,
                desk_.open.surfaces(from.day, unit.deck)};
  if (last && last->recoat.day == from.day) item.notBefore = model::upToStep(last->recoat.minutes);
  round.items.push_back(std::move(item));
}

/// From when on dust may fly: not on a coat that is not touch dry. A deck's own coat below has dried for
/// longer.
std::optional<int> CoatDays::dustFrom(const Round& round, const Schedule& schedule, base::Date day,
                                      int from) const {
  const bool soils =
      std::any_of(round.before.begin(), round.before.end(), [](const Piece& p) { return p.soilsWetCoats; });
  for (const auto& coat : schedule.coats) {
    if (!soils || coat.touchDry <= LocalTime{day, from}) continue;
    if (coat.touchDry.day > day) return {};
    from = std::max(from, model::upToStep(coat.touchDry.minutes));
  }
  return from;
}

FlowRules CoatDays::rulesFor(const Schedule& schedule, const std::vector<std::size_t>& units, base::Date day,
                             bool isBegun, int people) const {
  FlowRules rules;
  const Calendar& calendar = desk_.calendarOf(people);
  if (choice_.heed != Heed::All) rules.leastOpen = 0;
  rules.people = people;
  rules.openAt20 = static_cast<double>(desk_.c.product->openTime.millionths) * 60 / 1e6;
  rules.wipeWait = model::wipeOffMinutes(desk_.c.product->times);
  rules.rest = isBegun && hasRested(schedule.days.back()) ? 0 : calendar.rest();
  rules.until = calendar.day().until - lastMinutes(people);
  rules.graph = &desk_.graph;
  rules.isWet = [this, &schedule, day](std::size_t deck, int minute) {
    return std::any_of(schedule.coats.begin(), schedule.coats.end(), [&](const LaidCoat& coat) {
      return work_.units[coat.unit].deck == deck && coat.walk > LocalTime{day, minute};
    });
  };
  rules.dryBoardsBeside = [this, &schedule, &units, day](std::size_t unit, int minute) {
    return dryBoardsBeside(schedule, unit, units, {day, minute});
  };
  return rules;
}

/// The boards of later parts of a deck that are not coated in this round: dry all together, or no way out.
std::optional<BoardSpan> CoatDays::dryBoardsBeside(const Schedule& schedule, std::size_t unit,
                                                   const std::vector<std::size_t>& today,
                                                   LocalTime at) const {
  std::optional<BoardSpan> all;
  for (std::size_t u = unit + 1; u < work_.units.size() && work_.units[u].deck == work_.units[unit].deck;
       ++u) {
    if (holds(today, u)) continue;
    const auto* laid = lastCoat(schedule, u);
    const auto boards = work_.units[u].boards();
    if (!boards || (laid && laid->walk > at)) return {};
    if (!all) all = boards;
    all = BoardSpan{std::min(all->low, boards->low), std::max(all->high, boards->high)};
  }
  return all;
}

bool CoatDays::isPastLongestWait(const Schedule& schedule, std::size_t unit, LocalTime at) const {
  const auto* last = lastCoat(schedule, unit);
  return last && between(desk_.c.job.site.timezone, last->end, at) > desk_.c.product->times.recoatMax;
}

/// Of each coat of a round, whether it begins past the longest wait after the one below.
std::vector<bool> CoatDays::lateOnes(const Round& round, const Schedule& schedule, base::Date day) const {
  std::vector<bool> late;
  for (const auto& item : round.items) {
    int stroke = 24 * 60 - 1;
    for (const auto& strip : round.flow.strips) {
      if (strip.unit == item.index) stroke = std::min(stroke, strip.firstStroke());
    }
    late.push_back(isPastLongestWait(schedule, item.index, {day, stroke}));
  }
  return late;
}

std::optional<Round> CoatDays::attempt(const Schedule& schedule, base::Date day, int from,
                                       const std::vector<std::size_t>& units, bool isBegun, int people) {
  // Where nobody finds a time to rest in what follows, they rest before it, if no wipe is late for that.
  std::optional<int> late;
  for (const int spell : {longestSpell, longestSpell * 3 / 4, longestSpell / 2}) {
    auto round = roundOf(schedule, day, from, units, isBegun, people, spell);
    if (!round || choice_.heed == Heed::Clock) return round;
    if (minutesThere(schedule, *round, isBegun) <= longestSpell) return round;
    DayPlan told = dayWith(schedule, day, *round, isBegun);
    closeDay(told, desk_.calendarOf(people), model::wipeOffMinutes(desk_.c.product->times));
    if (!late) late = round->flow.late;
    if (told.overworked == 0 && round->flow.late <= *late) return round;
  }
  return {};
}

/// From arrival to home.
int CoatDays::minutesThere(const Schedule& schedule, const Round& round, bool isBegun) const {
  const Calendar& calendar = desk_.calendarOf(round.people);
  const int arrive = isBegun ? schedule.days.back().arrive : round.begun() - calendar.morning();
  return round.end() + lastMinutes(round.people) + calendar.evening() - arrive;
}

std::optional<Round> CoatDays::roundOf(const Schedule& schedule, base::Date day, int from,
                                       const std::vector<std::size_t>& units, bool isBegun, int people,
                                       int spell, const std::vector<bool>& late) {
  const Calendar& calendar = desk_.calendarOf(people);
  if (!isBegun) from = std::max(from, calendar.day().from);
  if (!couldFit(units, day, from, people)) return {};
  Round round;
  round.people = people;
  const LocalTime now{day, from};
  for (const auto u : units) {
    addItem(round, schedule, u, now, !late.empty() && late[round.items.size()]);
    from = std::max(from, round.items.back().notBefore);
  }
  for (const auto& item : round.items)
    round.before.insert(round.before.end(), item.work().before.begin(), item.work().before.end());
  const auto dusty = dustFrom(round, schedule, day, from);
  if (!dusty) return {};
  round.shared = sharedOut(evened(byFewer(std::move(round.before), desk_.c.job.crew.people, people)), people);
  const int before = round.shared.empty() ? 0 : round.shared.back().until;
  // Taped, sanded and blown clean just before the first stroke: nobody waits on site for the dew to go.
  int earliest = 24 * 60;
  for (const auto& item : round.items) {
    for (const auto& span : item.open) earliest = std::min(earliest, std::max(span.from, item.notBefore));
  }
  const int start = std::max(*dusty + before, model::upToStep(earliest));
  FlowRules rules = rulesFor(schedule, units, day, isBegun, people);
  rules.spell = spell;
  rules.arrive = isBegun ? schedule.days.back().arrive : start - before - calendar.morning();
  auto flow = flowOf(round.items, start, rules);
  if (!flow) return {};
  round.flow = std::move(*flow);
  round.start = round.flow.firstStroke - before;
  // A rest before the first stroke comes before the taping too.
  for (auto& [begun, done] : round.flow.rests) {
    if (begun >= round.flow.firstStroke) continue;
    done = round.start;
    begun = round.start - rules.rest;
  }
  // What is sanded for as late has to be late, with the sanding before it too.
  const auto isLate = lateOnes(round, schedule, day);
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (round.isLate[i] && !isLate[i]) return {};
  }
  if (isLate != round.isLate) return roundOf(schedule, day, from, units, isBegun, people, spell, isLate);
  // Everyone finds a way in, and out again.
  for (std::size_t i = 0; i < units.size(); ++i) {
    const std::vector<std::size_t> later(units.begin() + static_cast<std::ptrdiff_t>(i) + 1, units.end());
    if (!isReached(schedule, units[i], {day, round.start}, later)) return {};
  }
  return round;
}

DayPlan CoatDays::dayWith(const Schedule& schedule, base::Date day, const Round& round, bool isBegun) const {
  return withRound(isBegun ? &schedule.days.back() : nullptr, day, round, work_,
                   desk_.calendarOf(round.people), lastMinutes(round.people));
}

std::optional<Round> CoatDays::round(const Schedule& schedule, base::Date day, int from, bool isBegun) {
  const int people = isBegun ? schedule.days.back().people : desk_.c.job.crew.people;
  std::optional<Round> best;
  std::vector<std::size_t> today;
  // Mostly the day holds all of them.
  for (std::size_t u = from_; u < until_; ++u) {
    if (mayBeCoated(schedule, u, day, today)) today.push_back(u);
  }
  if (today.empty()) return {};
  if (today.size() > 1) best = attempt(schedule, day, from, today, isBegun, people);
  if (!best) {
    today.clear();
    for (std::size_t u = from_; u < until_; ++u) {
      if (!mayBeCoated(schedule, u, day, today)) continue;
      auto with = today;
      with.push_back(u);
      if (auto round = attempt(schedule, day, from, with, isBegun, people)) {
        best = std::move(round);
        today = std::move(with);
      }
    }
  }
  if (best && !isBegun) best = byAsFew(std::move(*best), schedule, day, from);
  return best;
}

/// As many come as cost least: whoever would mostly look on is not paid for it.
Round CoatDays::byAsFew(Round round, const Schedule& schedule, base::Date day, int from) {
  std::vector<std::size_t> units;
  for (const auto& item : round.items) units.push_back(item.index);
  const auto paid = [&](const Round& r) {
    const int there = minutesThere(schedule, r, false);
    const bool lacksRest = there > longestSpell && r.flow.rests.empty();
    return (there + (lacksRest ? desk_.calendar.rest() : 0)) * r.people;
  };
  const auto faultsOf = [](const Round& r) {
    return std::tuple(r.flow.unreached, r.flow.late, r.flow.joints);
  };
  for (int people = round.people - 1; people >= leastTogether; --people) {
    auto fewer = attempt(schedule, day, from, units, false, people);
    if (fewer && paid(*fewer) < paid(round) && faultsOf(*fewer) <= faultsOf(round)) round = std::move(*fewer);
  }
  return round;
}

void CoatDays::add(Schedule& schedule, base::Date day, Round round, bool isNewDay) {
  if (isNewDay) schedule.days.push_back({});
  schedule.days.back() = dayWith(schedule, day, round, !isNewDay);
  const auto& times = desk_.c.product->times;
  for (std::size_t i = 0; i < round.items.size(); ++i) {
    const auto& item = round.items[i];
    LaidCoat coat;
    coat.unit = item.index;
    coat.coat = item.coat;
    coat.start = {day, 24 * 60};
    for (const auto& strip : round.flow.strips) {
      if (strip.unit != item.index) continue;
      coat.start.minutes = std::min(coat.start.minutes, strip.firstStroke());
      coat.end = std::max(coat.end, {day, strip.lay.end});
    }
    coat.touchDry = desk_.drying.dryAt(coat.end, times.touchDry);
    coat.recoat = desk_.drying.dryAt(coat.end, times.recoatMin);
    coat.walk = desk_.drying.dryAt(coat.end, times.walk);
    coat.heed = choice_.heed;
    coat.isLate = round.isLate[i];
    coat.isExtra = round.isExtra[i];
    schedule.coats.push_back(coat);
    ++done_[item.index];
  }
  schedule.unreached += round.flow.unreached;
  schedule.late += round.flow.late;
}

bool CoatDays::place(Schedule& schedule, std::size_t from, std::size_t until, base::Date anchor,
                     int notBefore, const CoatChoice& choice) {
  choice_ = choice;
  from_ = from;
  until_ = until;
  done_.assign(work_.units.size(), 0);
  for (const auto& coat : schedule.coats) done_[coat.unit] = std::max(done_[coat.unit], coat.coat);
  const auto isDone = [&] {
    for (std::size_t u = from; u < until; ++u) {
      if (coatsLeft(u) > 0) return false;
    }
    return true;
  };
  // By the clock alone no day is waited for, however many the coats take.
  int most = mostWorkdays;
  for (std::size_t u = from; u < until && choice.heed == Heed::Clock; ++u) most += coatsLeft(u);
  base::Date day = anchor;
  for (int n = 0; n < most && !isDone(); ++n, day = desk_.calendar.workday(day + days{1})) {
    bool isBegun = !schedule.days.empty() && schedule.days.back().date == day;
    int now = std::max(desk_.calendar.day().from, day == anchor ? model::upToStep(notBefore) : 0);
    const auto done = [&] {
      const auto& last = schedule.days.back();
      return last.home - desk_.calendarOf(last.people).evening();
    };
    if (isBegun) now = std::max(now, done());
    bool isAny = false;
    while (true) {
      auto next = round(schedule, day, now, isBegun);
      if (!next) break;
      if (isAny && next->flow.firstStroke - now > longestSameDayWait) break;
      add(schedule, day, std::move(*next), !isBegun);
      isBegun = isAny = true;
      now = done();
      if (!choice.sameDay) break;
    }
    if (day == anchor && !isAny) return false;
  }
  return isDone();
}

}  // namespace schedule
