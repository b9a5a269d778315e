#include "schedule/crew/search.h"

#include "model/wiping.h"
#include "schedule/crew/coat_days.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

constexpr int mostAnchors = 5;         // days of a first coat that are compared
constexpr int mostAnchorDays = 30;     // working days in which they are looked for
constexpr int longestLaying = 4 * 60;  // minutes of one unit
constexpr int mostTail = 60;           // minutes of the last tasks that follow the last coat on its day

void append(std::vector<Piece>& to, const std::vector<Piece>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

/// Boards that dry after a wash: when each unit's are dry.
struct Washed {
  std::vector<DayPlan> days;
  std::vector<LocalTime> ready;  // by unit
  std::vector<model::WashedBoards> boards;
};

class Rollout {
 public:
  Rollout(const Desk& desk, const Work& work, base::Date start)
      : desk_(desk),
        work_(work),
        start_(start),
        people_(desk.c.job.crew.people),
        hasTail_(!work.last.empty() && minutesOf(work.last) <= mostTail),
        coats_(desk, work, hasTail_ ? work.last : std::vector<Piece>{}) {
    for (const auto& unit : work.units) levels_ = std::max(levels_, unit.blocks.size());
  }

  /// With the units in so many stages, each sanded and coated before the next is. The calendars of the first
  /// stage's other days come after the best.
  std::vector<Priced> run(int stages, const CoatChoice& choice) {
    Washed washed = wash(start_);
    std::vector<Priced> all;
    Schedule schedule;
    schedule.bareSince.resize(work_.units.size());
    std::vector<Priced> next(1);
    next.front().schedule = schedule;
    const auto bounds = divide(stages);
    for (std::size_t s = 0; s + 1 < bounds.size(); ++s) {
      if (s > 0) next = {next.front()};
      next = stage(next.front().schedule, washed, bounds[s], bounds[s + 1], choice);
      if (next.empty()) return {};
    }
    if (stages > 1) next.resize(1);
    for (auto& one : next) {
      finish(one.schedule, washed);
      all.push_back(priced(std::move(one.schedule), work_, desk_));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Priced& a, const Priced& b) { return a.isBetterThan(b); });
    return all;
  }

  /// Whether all that is done after the last wash takes so long that boards may stand bare meanwhile.
  bool isLong() const {
    int all = 0;
    for (const auto& unit : work_.units) all += minutesOf(unit.blocks.back());
    return all > (coatWithinDays - 1) * desk_.calendar.capacity();
  }

 private:
  /// A unit's pieces of a level; the last level is that after all washing.
  const std::vector<Piece>* blockOf(std::size_t unit, std::size_t level) const {
    const auto& blocks = work_.units[unit].blocks;
    const std::size_t skipped = levels_ - blocks.size();
    return level < skipped ? nullptr : &blocks[level - skipped];
  }

  std::vector<Piece> piecesOf(std::size_t level, std::size_t from, std::size_t until) const {
    std::vector<Piece> pieces;
    if (level == 0 && from == 0) pieces = work_.first;
    for (std::size_t u = from; u < until; ++u) {
      if (const auto* block = blockOf(u, level)) append(pieces, *block);
    }
    return evened(level + 1 < levels_ ? byTask(std::move(pieces)) : std::move(pieces));
  }

  /// Everything that has to dry afterwards, from a day on.
  Washed wash(base::Date from) {
    Schedule schedule;
    Washed washed;
    LocalTime now{from, 0};
    washed.ready.assign(work_.units.size(), now);
    for (std::size_t level = 0; level + 1 < levels_; ++level) {
      const auto pieces = piecesOf(level, 0, work_.units.size());
      std::vector<LocalTime> ends;
      fill(schedule, pieces, now, desk_.calendar, people_, {}, &ends);
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (!pieces[i].deck || pieces[i].dryAfter.isZero()) continue;
        const LocalTime dry = desk_.open.dryAfter(*pieces[i].deck, ends[i], pieces[i].dryAfter);
        washed.boards.push_back({*pieces[i].deck, ends[i], dry});
        for (std::size_t u = 0; u < work_.units.size(); ++u) {
          const Unit& unit = work_.units[u];
          if (unit.deck == pieces[i].deck && (pieces[i].part == 0 || unit.part == pieces[i].part))
            washed.ready[u] = dry;
        }
      }
      for (const auto& ready : washed.ready) now = std::max(now, ready);
      if (!schedule.days.empty()) now = std::max(now, {schedule.days.back().date + days{1}, 0});
    }
    washed.days = std::move(schedule.days);
    return washed;
  }

  /// Where stages begin, and the end: about as much work in each.
  std::vector<std::size_t> divide(int stages) const {
    std::vector<int> minutes;
    for (const auto& unit : work_.units)
      minutes.push_back(minutesOf(unit.blocks.back()) + unit.layMinutes(people_));
    const int all = std::accumulate(minutes.begin(), minutes.end(), 0);
    std::vector<std::size_t> bounds{0};
    int done = 0;
    for (std::size_t u = 0; u < minutes.size(); ++u) {
      const int made = static_cast<int>(bounds.size());
      if (u > bounds.back() && made < stages && done * stages >= all * made) bounds.push_back(u);
      done += minutes[u];
    }
    bounds.push_back(minutes.size());
    return bounds;
  }

  /// Prepares and coats some units on the best of the coming days; the runners-up after it.
  std::vector<Priced> stage(const Schedule& before, const Washed& washed, std::size_t from, std::size_t until,
                            const CoatChoice& choice) {
    const auto pieces = piecesOf(levels_ - 1, from, until);
    LocalTime ready{start_, 0};
    for (std::size_t u = from; u < until; ++u) ready = std::max(ready, washed.ready[u]);
    if (from == 0 && !washed.days.empty())
      ready = std::max(ready, LocalTime{washed.days.back().date + days{1}, 0});
    if (!before.days.empty()) ready = std::max(ready, LocalTime{before.days.back().date + days{1}, 0});
    bool hasCoats = false;
    for (std::size_t u = from; u < until; ++u) hasCoats = hasCoats || !work_.units[u].coats.empty();
    std::vector<Priced> found;
    if (!hasCoats) {
      Schedule schedule = before;
      fill(schedule, pieces, ready, desk_.calendar, people_);
      found.push_back(priced(std::move(schedule), work_, desk_));
      return found;
    }
    base::Date anchor = desk_.calendar.workday(ready.day);
    int anchors = 0;
    for (int n = 0; n < mostAnchorDays && anchors < mostAnchors;
         ++n, anchor = desk_.calendar.workday(anchor + days{1})) {
      if (!isOpen(anchor, from, until, choice.heed)) continue;
      bool isAny = false;
      const auto isPlanned = [&](bool inMorning, int people) {
        Schedule schedule = before;
        if (!prepare(schedule, pieces, ready, anchor, inMorning, people)) return false;
        if (choice.heed != Heed::Clock && isRainedOn(schedule, before.days.size())) return false;
        note(schedule, pieces, from, until);
        if (!coats_.place(schedule, from, until, anchor, ready.day == anchor ? ready.minutes : 0, choice))
          return false;
        isAny = true;
        found.push_back(priced(std::move(schedule), work_, desk_));
        return true;
      };
      const int fewest = pieces.empty() ? people_ : std::min(people_, leastTogether);
      for (int people = people_; people >= fewest; --people) {
        if (!isPlanned(true, people)) break;
      }
      if (!pieces.empty()) isPlanned(false, people_);
      anchors += isAny;
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Priced& a, const Priced& b) { return a.isBetterThan(b); });
    return found;
  }

  bool isOpen(base::Date day, std::size_t from, std::size_t until, Heed heed) const {
    for (std::size_t u = from; u < until; ++u) {
      if (!work_.units[u].coats.empty() && !desk_.open.on(day, work_.units[u].deck, heed).empty())
        return true;
    }
    return false;
  }

  /// The work before the first coat, back to back before it: what does not fill a day is done in the morning
  /// of the coat's day, or on a day of its own. False where there is no time for it, or more than fewer than
  /// everyone do that morning.
  bool prepare(Schedule& schedule, const std::vector<Piece>& work, LocalTime ready, base::Date anchor,
               bool inMorning, int people) const {
    if (work.empty()) return true;
    const auto pieces = byFewer(work, people_, people);
    const auto& calendar = desk_.calendarOf(people);
    const int all = minutesOf(pieces), capacity = calendar.capacity();
    const int rest = all % capacity, whole = all / capacity;
    const bool asksForDay = rest > mostTighter || whole == 0;  // what fills no day
    const int n = whole + (asksForDay && !inMorning);
    Quotas quotas;
    // Two halves rather than a day and a stub.
    if (!inMorning && whole > 0 && asksForDay && rest < capacity / 2)
      quotas = {(capacity + rest) / 10 * 5, (capacity + rest + 9) / 10 * 5};
    constexpr int slips = 3;  // a piece under a quarter of an hour moves to the next day
    for (int slip = 0; slip < slips; ++slip) {
      LocalTime start{calendar.workdayBefore(anchor, n + slip), calendar.day().from};
      if (start < ready) {
        if (ready.day > anchor) return false;
        start = ready;
      }
      Schedule attempt;
      const LocalTime end = fill(attempt, pieces, start, calendar, people, quotas);
      if (people < people_ && (attempt.days.size() > 1 || end.day != anchor)) return false;
      if (end.day > anchor || (!inMorning && end.day == anchor)) {
        if (start == ready) return false;
        continue;
      }
      for (const auto& coat : schedule.coats) {
        if (coat.touchDry > start) return false;
      }
      schedule.days.insert(schedule.days.end(), std::make_move_iterator(attempt.days.begin()),
                           std::make_move_iterator(attempt.days.end()));
      return true;
    }
    return false;
  }

  /// Whether dry work of a day from this one on meets rain.
  bool isRainedOn(const Schedule& schedule, std::size_t from) const {
    for (std::size_t i = from; i < schedule.days.size(); ++i) {
      for (const auto& duty : schedule.days[i].duties) {
        const auto& shift = duty.shift;
        for (int at = shift.start.minutes; shift.deck && at < shift.end.minutes; at = (at / 60 + 1) * 60) {
          const auto* hour = desk_.open.hourAt({shift.start.day, at}, *shift.deck);
          if (hour && isShutBy(*hour, model::WeatherLimit::Rain)) return true;
        }
      }
    }
    return false;
  }

  /// Since when the boards of each unit stand bare.
  void note(Schedule& schedule, const std::vector<Piece>& pieces, std::size_t from, std::size_t until) const {
    for (const auto& day : schedule.days) {
      for (const auto& duty : day.duties) {
        const auto& shift = duty.shift;
        const bool isSanding = std::any_of(pieces.begin(), pieces.end(), [&](const Piece& p) {
          return p.isSanding && p.task == shift.task && p.deck == shift.deck && p.part == shift.part;
        });
        if (!isSanding) continue;
        for (std::size_t u = from; u < until; ++u) {
          if (work_.units[u].deck == shift.deck && work_.units[u].part == shift.part)
            schedule.bareSince[u] = std::max(schedule.bareSince[u], shift.end);
        }
      }
    }
  }

  /// What follows the coats, and the wash: at once, or where that would be over a week too soon as late as
  /// the boards still dry in time.
  void finish(Schedule& schedule, const Washed& earliest) {
    std::vector<Piece> after;
    for (const auto& unit : work_.units) append(after, unit.after);
    const bool isTail = after.empty() && hasTail_ && !schedule.coats.empty();
    if (!isTail) append(after, work_.last);
    if (isTail) {
      DayPlan& day = schedule.days.back();
      const int evening = desk_.calendarOf(day.people).evening();
      int now = day.home - evening;
      const auto all = everyone(day.people);
      for (const auto& piece : byFewer(work_.last, people_, day.people)) {
        day.duties.push_back(
            {model::Duty::What::Task,
             {piece.task, {}, 0, {day.date, now}, {day.date, now + piece.minutes}, day.people, all, 0},
             0});
        now += piece.minutes;
      }
      day.home = now + evening;
    } else if (!after.empty()) {
      LocalTime from = schedule.days.empty() ? LocalTime{start_, 0} : schedule.end();
      if (schedule.days.empty() && !earliest.days.empty())
        from = {earliest.days.back().date, earliest.days.back().home};
      for (const auto& coat : schedule.coats) from = std::max(from, coat.walk);
      if (!schedule.days.empty() || !earliest.days.empty()) from = {from.day + days{1}, 0};
      fill(schedule, after, from, desk_.calendar, people_);
    }
    Washed washed = earliest;
    constexpr days week{7};
    const bool isEarly = levels_ == 2 && !washed.days.empty() && !schedule.days.empty() &&
                         schedule.days.front().date - washed.days.back().date > week;
    if (isEarly) {
      const auto& first = schedule.days.front();
      const LocalTime begun{first.date, first.arrive + desk_.calendar.morning()};
      for (int n = static_cast<int>(washed.days.size());; ++n) {
        const base::Date from = desk_.calendar.workdayBefore(first.date, n);
        if (from <= washed.days.front().date) break;
        Washed other = wash(from);
        const bool isDry =
            std::all_of(other.ready.begin(), other.ready.end(), [&](auto t) { return t <= begun; });
        if (!isDry || other.days.back().date >= first.date) continue;
        washed = std::move(other);
        break;
      }
    }
    schedule.washed = washed.boards;
    schedule.days.insert(schedule.days.begin(), washed.days.begin(), washed.days.end());
    for (auto& day : schedule.days) {
      if (!day.strips.empty())
        closeDay(day, desk_.calendarOf(day.people), model::wipeOffMinutes(desk_.c.product->times));
    }
  }

  const Desk& desk_;
  const Work& work_;
  base::Date start_;
  int people_;
  bool hasTail_;
  CoatDays coats_;
  std::size_t levels_ = 1;
};

/// How many parts each deck is laid in: so many times as many as its size asks for, but none of under half an
/// hour.
std::vector<int> partsOf(const Desk& desk, const Work& whole, int times) {
  constexpr int least = 30;
  std::vector<int> parts(desk.c.job.areas.size(), 1);
  const Span hours = desk.open.bounds();
  const int longest = std::clamp((hours.until - hours.from) * 3 / 4, 30, longestLaying);
  for (const auto& unit : whole.units) {
    const int minutes = unit.layMinutes(desk.c.job.crew.people);
    const int asked = std::max(1, (minutes + longest - 1) / longest);
    parts[unit.deck] = std::max(asked, std::min(asked * times, minutes / least));
  }
  return parts;
}

}  // namespace

Found cheapest(const Desk& desk, const model::Content& content, const model::Estimate& e,
               const std::vector<std::optional<Row>>& rows, base::Date start) {
  const std::vector<int> whole(desk.c.job.areas.size(), 1);
  const Work undivided = workOf(desk.c, content, e, desk.graph, rows, whole);
  const bool maySameDay = desk.c.product->times.recoatMin <= base::Hours::whole(6);
  constexpr int mostStages = 4, mostParts = 8;
  for (const Heed heed : {Heed::All, Heed::Forecast, Heed::Clock}) {
    std::vector<int> parts;
    Found best;
    for (int times = 1; times <= mostParts; times *= 2) {
      auto more = partsOf(desk, undivided, times);
      if (more == parts) continue;
      parts = std::move(more);
      Found found{workOf(desk.c, content, e, desk.graph, rows, parts), {}};
      Rollout rollout(desk, found.work, start);
      for (int stages = 1; stages <= mostStages; ++stages) {
        const bool isWorthIt =
            stages == 1 || (rollout.isLong() && static_cast<std::size_t>(stages) <= found.work.units.size());
        if (!isWorthIt) break;
        for (const bool sameDay : {false, true}) {
          if (sameDay && !maySameDay) continue;
          auto all = rollout.run(stages, {heed, sameDay});
          found.best.insert(found.best.end(), std::make_move_iterator(all.begin()),
                            std::make_move_iterator(all.end()));
        }
      }
      if (found.best.empty()) continue;
      std::stable_sort(found.best.begin(), found.best.end(),
                       [](const Priced& a, const Priced& b) { return a.isBetterThan(b); });
      if (!best.best.empty() && !found.best.front().isBetterThan(best.best.front())) break;
      best = std::move(found);
      // Smaller parts may find room in hours that hold no whole deck, and for a rest between them.
      if (best.best.front().leftAlone == 0 && best.best.front().overworked == 0) return best;
    }
    if (!best.best.empty()) return best;
  }
  return {};
}

}  // namespace schedule
