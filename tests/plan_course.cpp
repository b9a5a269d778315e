// In which order any crew works: nobody waits where something could be done, dust keeps away from wet coats,
// and the order in which the job lists its decks does not matter.
#include "plan_cases.h"

#include <catch2/catch.hpp>
#include <set>

using namespace plan_cases;

namespace {

std::size_t rankOf(const Scene& s, const std::string& task) {
  for (std::size_t i = 0; i < s.content.tasks.size(); ++i) {
    if (s.content.tasks[i].id == task) return i;
  }
  throw std::logic_error("no task " + task);
}

const Task& taskOf(const Scene& s, const Shift& shift) { return s.content.tasks[rankOf(s, shift.task)]; }

struct Wet {
  std::size_t deck;
  LocalTime from, until;
};

std::vector<Wet> wetTimes(const Scene& s, const Plan& plan) {
  std::vector<Wet> all;
  for (const auto& shift : plan.shifts) {
    if (isWet(shift))
      all.push_back({*shift.deck, shift.start,
                     schedule::after(s.c.job.site.timezone, shift.end, s.product.times.touchDry)});
  }
  return all;
}

/// Work that is not part of a coat, with the moment it could have gone on: after what comes before it on its
/// deck is done and dry, and after each step of the whole job that is listed before it.
struct Open {
  const Shift* next;  // its next shift
  LocalTime from;
};

/// What was open while nobody worked from 'idle' on.
std::vector<Open> openAt(const Scene& s, const Plan& plan, LocalTime idle) {
  std::vector<Open> all;
  std::set<std::tuple<std::string, std::optional<std::size_t>, int>> seen;
  for (const auto& shift : plan.shifts) {
    if (shift.start < idle || isForCoat(shift)) continue;
    if (!seen.insert({shift.task, shift.deck, shift.pass}).second) continue;
    const std::size_t rank = rankOf(s, shift.task);
    Open open{&shift, idle};
    bool isOpen = true;
    for (const auto& other : plan.shifts) {
      const std::size_t otherRank = rankOf(s, other.task);
      const bool isSamePiece =
          other.task == shift.task && other.deck == shift.deck && other.pass == shift.pass;
      const bool isBefore = otherRank < rank || (otherRank == rank && other.pass < shift.pass);
      const bool isTied = other.deck == shift.deck || !other.deck || !shift.deck;
      if (isSamePiece || !isBefore || !isTied) continue;
      if (other.end > idle) isOpen = false;
      LocalTime ready = other.end;
      if (shift.deck && other.deck == shift.deck) {
        ready = schedule::after(s.c.job.site.timezone, other.end, taskOf(s, other).dryAfter);
        if (isWet(other)) ready = schedule::after(s.c.job.site.timezone, other.end, s.product.times.touchDry);
      } else if (isWet(other)) {  // the last strip is wiped off before its rags are cleared away
        ready = schedule::after(s.c.job.site.timezone, other.end, s.product.times.wipeOff);
      }
      open.from = std::max(open.from, ready);
    }
    if (isOpen) all.push_back(open);
  }
  return all;
}

/// The times within working hours, from the first shift to the last, at which nobody works.
std::vector<std::pair<LocalTime, LocalTime>> idleTimes(const Scene& s, const Plan& plan) {
  const Day day(s);
  const Crew& crew = s.c.job.crew;
  std::vector<std::pair<LocalTime, LocalTime>> all;
  if (plan.shifts.empty()) return all;
  std::size_t next = 0;
  for (base::Date date = plan.shifts.front().start.day; date <= plan.shifts.back().end.day;
       date += std::chrono::days{1}) {
    const bool isOff = !crew.works[std::chrono::weekday{date}.iso_encoding() - 1] ||
                       std::count(crew.off.begin(), crew.off.end(), date) > 0;
    if (isOff) continue;
    const auto add = [&](int from, int until) {
      if (from >= day.breakFrom) from = std::max(from, day.breakUntil);
      if (until > from && day.worked(from, until) > 0) all.push_back({{date, from}, {date, until}});
    };
    int at = day.from;
    for (; next < plan.shifts.size() && plan.shifts[next].start.day == date; ++next) {
      add(at, plan.shifts[next].start.minutes);
      at = plan.shifts[next].end.minutes;
    }
    add(at, day.until);
  }
  return all;
}

/// Steps of the whole job have no name here; decks are told by the name they had before they were mixed.
std::string byName(const Scene& s, const Plan& plan) {
  std::ostringstream out;
  for (const auto& shift : plan.shifts) {
    out << shift.task << ' ' << (shift.deck ? s.c.job.areas[*shift.deck].name : "") << ' ' << shift.pass
        << ' ' << base::isoTime(shift.start) << ' ' << base::isoTime(shift.end) << '\n';
  }
  for (const auto& event : plan.events) {
    std::set<std::string> names;
    for (const auto d : event.decks) names.insert(s.c.job.areas[d].name);
    out << event.name << ' ' << base::isoTime(event.at);
    for (const auto& name : names) out << ' ' << name;
    out << '\n';
  }
  return out.str();
}

}  // namespace

TEST_CASE("for any plan nobody waits while a piece of work could be done", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const auto wet = wetTimes(s, plan);
    for (const auto& [from, until] : idleTimes(s, plan)) {
      for (const auto& open : openAt(s, plan, from)) {
        LocalTime could = open.from;
        for (bool isMoved = taskOf(s, *open.next).soilsWetCoats; isMoved;) {
          isMoved = false;
          for (const auto& w : wet) {
            if (w.deck != open.next->deck && w.from <= could && could < w.until)
              could = w.until, isMoved = true;
          }
        }
        RC_ASSERT(could >= until || Day(s).worked(could.minutes, until.minutes) == 0);
      }
    }
  });
}

TEST_CASE("for any plan nothing raises dust while a coat on another deck is wet", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    for (const auto& wet : wetTimes(s, plan)) {
      for (const auto& shift : plan.shifts) {
        if (!taskOf(s, shift).soilsWetCoats || shift.deck == wet.deck) continue;
        RC_ASSERT(shift.end <= wet.from || shift.start >= wet.until);
      }
    }
  });
}

TEST_CASE("for any plan the work on a deck keeps its order, and so do the steps of the whole job", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const std::size_t firstOfCoats = rankOf(s, "sand-between");
    const auto order = [&](const Shift& shift) {
      return isForCoat(shift) ? std::tuple{firstOfCoats, shift.pass, rankOf(s, shift.task)}
                              : std::tuple{rankOf(s, shift.task), 0, std::size_t{0}};
    };
    for (std::size_t i = 0; i < plan.shifts.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        const auto &before = plan.shifts[k], &after = plan.shifts[i];
        if (before.deck && after.deck && before.deck != after.deck) continue;
        // A coat over days does all of its tasks on each of them.
        const bool isNextPart = isCoat(before) && isCoat(after) && before.pass == after.pass &&
                                before.start.day != after.start.day;
        if (isNextPart) continue;
        if (before.deck && after.deck) RC_ASSERT(order(before) <= order(after));
        else RC_ASSERT(std::get<0>(order(before)) <= std::get<0>(order(after)));
      }
    }
  });
}

TEST_CASE("for any plan the order in which the job lists its decks does not matter", "[plan]") {
  holdsAlways(300, [] {
    Scene s;
    fill(s);
    auto& areas = s.c.job.areas;
    for (std::size_t i = 0; i < areas.size(); ++i) areas[i].name = std::string(1, static_cast<char>('a' + i));
    const std::string plan = byName(s, planOf(s));
    Scene other = s;
    other.c.product = &other.product;
    other.c.region = &other.region;
    const int turn = within(1, 7);
    const auto size = areas.size();
    const auto moved = [&](std::size_t deck) {
      return (deck * (size % 3 == 0 ? 5 : 3) + static_cast<std::size_t>(turn)) % size;
    };
    std::set<std::size_t> all;
    for (std::size_t i = 0; i < size; ++i) all.insert(moved(i));
    if (all.size() != size) return;  // not every step mixes every number of decks
    for (std::size_t i = 0; i < size; ++i) other.c.job.areas[moved(i)] = areas[i];
    for (auto& line : other.e.labour) {
      if (line.deck) line.deck = moved(*line.deck);
    }
    for (auto& line : other.e.lateCoats) line.deck = moved(*line.deck);
    // As an estimate would list it: by task, then by deck in the job's order.
    std::stable_sort(other.e.labour.begin(), other.e.labour.end(), [&](const auto& a, const auto& b) {
      return std::pair{rankOf(s, a.task), a.deck} < std::pair{rankOf(s, b.task), b.deck};
    });
    RC_ASSERT(byName(other, planOf(other)) == plan);
  });
}
