// What must hold for the plan of any job, tried on some hundreds of random ones. The seed is fixed: a failure
// comes again.
#include "plan_cases.h"

#include <catch2/catch.hpp>
#include <set>

using namespace plan_cases;

namespace {

std::string dump(const Plan& plan) {
  std::ostringstream out;
  for (const auto d : plan.days) out << base::isoDate(d) << '\n';
  for (const auto& s : plan.shifts) {
    out << s.task << ' ' << (s.deck ? static_cast<int>(*s.deck) : -1) << ' ' << s.pass << ' '
        << base::isoTime(s.start) << ' ' << base::isoTime(s.end) << '\n';
  }
  for (const auto& e : plan.events) {
    out << e.name << ' ' << base::isoTime(e.at) << ' ' << e.utcOffsetMinutes;
    for (const auto d : e.decks) out << ' ' << d;
    out << '\n';
  }
  for (const auto& m : plan.misses)
    out << m.deck << ' ' << m.coat << ' ' << m.gap.millionths << m.isLate << m.isPastMax
        << static_cast<int>(m.why) << '\n';
  out << base::isoTime(plan.finished) << ' ' << plan.coatingFrom << ' ' << plan.coatingUntil;
  return out.str();
}

}  // namespace

TEST_CASE("for any plan nobody works on a day off, outside the hours, in the break or in two places",
          "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const Crew& crew = s.c.job.crew;
    const Day day(s);
    std::set<base::Date> days;
    for (std::size_t i = 0; i < plan.shifts.size(); ++i) {
      const auto& shift = plan.shifts[i];
      const auto [from, until] = std::pair{shift.start.minutes, shift.end.minutes};
      RC_ASSERT(shift.start.day >= s.c.job.start);
      RC_ASSERT(shift.start.day == shift.end.day && from < until);
      RC_ASSERT(crew.works[std::chrono::weekday{shift.start.day}.iso_encoding() - 1]);
      RC_ASSERT(std::count(crew.off.begin(), crew.off.end(), shift.start.day) == 0);
      RC_ASSERT(from >= day.from && until <= day.until);
      RC_ASSERT(from < day.breakFrom || from >= day.breakUntil);
      RC_ASSERT(until <= day.breakFrom || until > day.breakUntil);
      if (i > 0) RC_ASSERT(plan.shifts[i - 1].end <= shift.start);
      days.insert(shift.start.day);
    }
    RC_ASSERT(plan.days == std::vector<base::Date>(days.begin(), days.end()));
  });
}

TEST_CASE("for any plan every hour of labour is placed once", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    using Key = std::tuple<std::string, std::optional<std::size_t>, int>;
    std::map<Key, int> wanted, placed;
    for (const auto& line : s.e.labour)
      wanted[{line.task, line.deck, line.pass}] += minutesOf(line.hours, s.c.job.crew.people);
    for (const auto& line : s.e.lateCoats) {
      const bool isLate = std::any_of(plan.misses.begin(), plan.misses.end(), [&](const WindowViolation& m) {
        return m.isPastMax && m.deck == line.deck && m.coat == line.pass;
      });
      if (isLate) wanted[{line.task, line.deck, line.pass}] += minutesOf(line.hours, s.c.job.crew.people);
    }
    const Day day(s);
    for (const auto& shift : plan.shifts) placed[{shift.task, shift.deck, shift.pass}] += day.worked(shift);
    RC_ASSERT(placed == wanted);
  });
}

TEST_CASE(
    "for any plan the last strip is wiped off in the crew's day, and the rags are cleared away after it",
    "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const Day day(s);
    const auto wiping = static_cast<int>(s.product.times.wipeOff.millionths * 60 / 1'000'000);
    // But where that would take more than half of the hours for coating.
    const bool isShort = 2 * day.worked(plan.coatingFrom, day.until - wiping) <
                         day.worked(plan.coatingFrom, plan.coatingUntil);
    LocalTime wiped;
    for (const auto& [key, coat] : coatsOf(plan)) {
      const LocalTime end = coat.back().end;
      wiped = std::max(wiped, schedule::after(s.c.job.site.timezone, end, s.product.times.wipeOff));
      RC_ASSERT(isShort || end.minutes + wiping <= day.until);
    }
    for (const auto& shift : plan.shifts)
      if (shift.task == "rags" && s.isCoated) RC_ASSERT(shift.start >= wiped);
  });
}

TEST_CASE("for any plan a deck takes nothing more until it is dry", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const auto& zone = s.c.job.site.timezone;
    std::map<std::size_t, LocalTime> washed;
    for (const auto& shift : plan.shifts) {
      if (!shift.deck) continue;
      if (shift.task == "wash") washed[*shift.deck] = shift.end;
      else if (washed.contains(*shift.deck))
        RC_ASSERT(schedule::between(zone, washed[*shift.deck], shift.start) >= s.content.tasks[2].dryAfter);
    }
    const auto coats = coatsOf(plan);
    for (const auto& [key, coat] : coats) {
      if (key.second == 1) continue;
      const auto& before = coats.at({key.first, key.second - 1});
      const auto& times = s.product.times;
      for (const auto& shift : coat)
        RC_ASSERT(schedule::between(zone, before.back().end, shift.start) >=
                  (isWet(shift) ? times.recoatMin : times.touchDry));
    }
  });
}

TEST_CASE("for any plan coats keep to their hours and no deck is left half done that fits into a day",
          "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const Day day(s);
    const auto& job = s.c.job;
    const int hours = day.worked(plan.coatingFrom, plan.coatingUntil);
    for (const auto& [key, coat] : coatsOf(plan)) {
      int minutes = 0;
      for (const auto& shift : coat) {
        const auto [from, until] = std::pair{shift.start.minutes, shift.end.minutes};
        RC_ASSERT(from >= plan.coatingFrom && until <= plan.coatingUntil);
        if (job.coatingUntil > 0) RC_ASSERT(from >= job.coatingFrom && until <= job.coatingUntil);
        // Common practice: not in the sun of the afternoon, and by the sea not in the dew of the morning.
        else if (job.site.exposure != Exposure::Sheltered) RC_ASSERT(until <= 13 * 60);
        if (job.coatingUntil == 0 && job.site.exposure == Exposure::Coastal) RC_ASSERT(from >= 9 * 60);
        minutes += day.worked(shift);
      }
      RC_ASSERT(minutes > hours || coat.front().start.day == coat.back().end.day);
    }
  });
}

namespace {

/// The shortest and longest wait of the boards of a deck.
struct Waits {
  Hours least = Hours::whole(1'000'000), most;
  void add(Hours wait) {
    least = std::min(least, wait);
    most = std::max(most, wait);
  }
};

struct WaitsOfDeck {
  Waits all;
  Waits sure;  // without parts of the deck that may be less than a minute's work
};

/// Minute by minute of the work: boards that are laid in one go in both coats wait from the end of the one to
/// the start of the other.
WaitsOfDeck waitsOf(const Scene& s, const std::vector<Shift>& before, const std::vector<Shift>& after) {
  const Day day(s);
  // The start of each minute of work.
  const auto minutes = [&](const std::vector<Shift>& coat) {
    std::vector<LocalTime> all;
    for (const auto& shift : coat) {
      for (int clock = shift.start.minutes; isWet(shift) && clock < shift.end.minutes; ++clock) {
        if (clock < day.breakFrom || clock >= day.breakUntil) all.push_back({shift.start.day, clock});
      }
    }
    return all;
  };
  const auto first = minutes(before), second = minutes(after);
  const std::size_t step = std::min(first.size(), second.size());
  struct Part {
    LocalTime done, begins;
    std::size_t seen = 0;
  };
  std::map<std::pair<base::Date, base::Date>, Part> parts;
  for (std::size_t board = 0; board < first.size() * second.size(); board += step) {
    const LocalTime done = base::plusMinutes(first[board / second.size()], 1);
    const LocalTime begins = second[board / first.size()];
    Part& part = parts.try_emplace({done.day, begins.day}, Part{done, begins}).first->second;
    part.done = std::max(part.done, done);
    part.begins = std::min(part.begins, begins);
    ++part.seen;
  }
  WaitsOfDeck waits;
  for (const auto& [days, part] : parts) {
    const Hours wait = schedule::between(s.c.job.site.timezone, part.done, part.begins);
    waits.all.add(wait);
    if ((part.seen - 1) * step >= std::max(first.size(), second.size())) waits.sure.add(wait);
  }
  return waits;
}

}  // namespace

TEST_CASE("for any plan a wait outside the ideal window is told, and no other", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const auto& t = s.product.times;
    std::map<std::pair<std::size_t, int>, WindowViolation> misses;
    for (const auto& miss : plan.misses)
      RC_ASSERT(misses.emplace(std::pair{miss.deck, miss.coat}, miss).second);
    const auto coats = coatsOf(plan);
    for (const auto& [key, coat] : coats) {
      if (key.second == 1) continue;
      const auto& before = coats.at({key.first, key.second - 1});
      const bool tookDays =
          before.front().start.day != before.back().end.day || coat.front().start.day != coat.back().end.day;
      // Where days share a deck the part of each is known to the minute only.
      const Hours slack = tookDays ? Hours{50'000} : Hours{};
      const auto [all, sure] = waitsOf(s, before, coat);
      const auto found = misses.find(key);
      if (sure.least + slack < t.recoatIdealFrom || sure.most > t.recoatIdealTo + slack)
        RC_ASSERT(found != misses.end());
      if (found == misses.end()) continue;
      const WindowViolation& miss = found->second;
      RC_ASSERT((miss.isLate ? miss.gap > t.recoatIdealTo : miss.gap < t.recoatIdealFrom));
      RC_ASSERT(miss.gap + slack >= all.least && miss.gap <= all.most + slack);
      RC_ASSERT(miss.isPastMax || sure.most <= t.recoatMax + slack);
      RC_ASSERT(!miss.isPastMax || miss.gap > t.recoatMax);
      misses.erase(found);
    }
    RC_ASSERT(misses.empty());
  });
}

TEST_CASE("for any plan each coat begins and ends once for each deck, and the dates follow the last",
          "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const auto& zone = s.c.job.site.timezone;
    std::map<std::pair<std::string, std::size_t>, LocalTime> told;
    std::map<std::string, Event> dates;
    for (const auto& event : plan.events) {
      for (const auto d : event.decks) RC_ASSERT(told.emplace(std::pair{event.name, d}, event.at).second);
      if (event.decks.empty()) RC_ASSERT(dates.emplace(event.name, event).second);
    }
    const auto coats = coatsOf(plan);
    RC_ASSERT(told.size() == 2 * coats.size());
    LocalTime last;
    for (const auto& [key, coat] : coats) {
      const std::string name = "coat_" + std::to_string(key.second);
      RC_ASSERT(told.at({name + "_start", key.first}) <= firstStroke(coat));
      RC_ASSERT(told.at({name + "_end", key.first}) >= coat.back().end);
      last = std::max(last, coat.back().end);
    }
    RC_ASSERT(dates.size() == (coats.empty() ? 0u : 5u));
    if (coats.empty()) return;
    RC_ASSERT(plan.finished == last);
    const auto waited = [&](const char* name) {
      const Event& e = dates.at(name);
      const auto moment =
          std::chrono::sys_seconds{e.at.day} + std::chrono::minutes{e.at.minutes - e.utcOffsetMinutes};
      const auto wait =
          std::chrono::duration_cast<std::chrono::minutes>(moment - schedule::localToUtc(zone, last));
      return Hours{base::mulDiv(wait.count(), 1'000'000, 60, base::Round::HalfUp)};
    };
    const auto& t = s.product.times;
    RC_ASSERT(waited("walk") >= t.walk);
    RC_ASSERT(waited("furniture") >= t.furniture);
    RC_ASSERT(waited("rugs") >= t.rugs);
    RC_ASSERT(waited("first_wash") >= t.firstWash);
    const LocalTime walk = dates.at("walk").at, visit = dates.at("maintenance").at;
    RC_ASSERT(walk.minutes >= 7 * 60 && walk.minutes < 20 * 60);  // by daylight
    RC_ASSERT(visit.day >= base::plusMonths(last.day, t.maintenanceMonths));
    RC_ASSERT(s.c.job.crew.works[std::chrono::weekday{visit.day}.iso_encoding() - 1]);
  });
}

TEST_CASE("for any plan events never go backwards and the same job gives the same plan", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    for (std::size_t i = 1; i < plan.events.size(); ++i)
      RC_ASSERT(plan.events[i - 1].at <= plan.events[i].at);
    RC_ASSERT(dump(plan) == dump(planOf(s)));
  });
}
