// What must hold for the plan of any job, tried on some hundreds of random ones. The seed is fixed: a failure
// comes again.
#include "model/lookup.h"
#include "model/names.h"
#include "plan_cases.h"

#include <catch2/catch.hpp>
#include <set>

using namespace plan_cases;

namespace {

std::string dump(const Plan& plan) {
  std::ostringstream out;
  for (const auto& d : plan.days) out << base::isoDate(d.date) << '\n';
  for (const auto& s : plan.shifts) {
    out << s.task << ' ' << (s.deck ? static_cast<int>(*s.deck) : -1) << ' ' << s.pass << ' '
        << base::isoTime(s.start) << ' ' << base::isoTime(s.end) << '\n';
  }
  for (const auto& e : plan.events) {
    out << model::nameOf(e) << ' ' << base::isoTime(e.at) << ' ' << e.utcOffsetMinutes;
    for (const auto d : e.decks) out << ' ' << d;
    out << '\n';
  }
  for (const auto& m : plan.misses)
    out << m.deck << ' ' << m.coat << ' ' << m.gap.millionths << m.isLate << m.isPastMax
        << static_cast<int>(m.why) << '\n';
  out << base::isoTime(plan.finished) << ' ' << plan.coatingFrom << ' ' << plan.coatingUntil;
  return out.str();
}

/// Of everyone from arrival to home, and none twice.
void everyMinuteIsTold(const Scene& s, const Plan& plan) {
  const Crew& crew = s.c.job.crew;
  for (const auto& day : plan.days) {
    RC_ASSERT(day.date >= s.c.job.start);
    RC_ASSERT(crew.works[std::chrono::weekday{day.date}.iso_encoding() - 1]);
    RC_ASSERT(std::count(crew.off.begin(), crew.off.end(), day.date) == 0);
    RC_ASSERT(day.arrive.minutes >= crew.startMinutes && day.home.minutes <= crew.endMinutes);
    RC_ASSERT(day.people >= std::min(crew.people, 2) && day.people <= crew.people);
    for (int person = 0; person < crew.people; ++person) {
      LocalTime now = person < day.people ? day.arrive : day.home;  // who does not come has no duty
      for (const auto& duty : plan.duties) {
        const auto& who = duty.shift.who;
        if (duty.shift.start.day != day.date ||
            std::find(who.begin(), who.end(), static_cast<std::size_t>(person)) == who.end())
          continue;
        RC_ASSERT(duty.shift.start == now);
        RC_ASSERT(duty.shift.end > now && duty.shift.end.minutes % 5 == 0);
        now = duty.shift.end;
      }
      RC_ASSERT(now == day.home);
    }
  }
}

/// As long as its hours ask for.
void everyTaskIsDone(const Scene& s, const Plan& plan) {
  using Key = std::tuple<std::string, std::optional<std::size_t>, int>;
  std::map<Key, std::int64_t> wanted, placed;  // person-minutes
  std::map<Key, std::int64_t> pieces;
  const auto want = [&](const LabourLine& line, base::Share part) {
    constexpr base::Wide whole = base::Wide{1'000'000} * base::Share::whole(100).millionths;
    wanted[{line.task, line.deck, line.pass}] +=
        base::divide(base::Wide{line.hours.millionths} * 60 * part.millionths, whole, base::Round::Down);
  };
  for (const auto& line : s.e.labour) want(line, base::Share::whole(100));
  for (const auto& line : s.e.lateCoats) {
    for (const auto& pass : plan.extraPasses) {
      if (pass.deck == line.deck && pass.coat == line.pass) want(line, pass.part);
    }
  }
  for (const auto& duty : plan.duties) {
    const auto& shift = duty.shift;
    const bool isDaily = shift.task == "set-up" || shift.task == "pack-down";
    if (duty.what != Duty::What::Task || isDaily) continue;
    placed[{shift.task, shift.deck, shift.pass}] +=
        std::int64_t{shift.end.minutes - shift.start.minutes} * shift.people;
    ++pieces[{shift.task, shift.deck, shift.pass}];
  }
  for (const auto& [key, minutes] : placed)
    RC_ASSERT(wanted.contains(key) || std::get<0>(key) == "sand-between");
  // A piece may be rounded down by a step of the clock where those before it were rounded up by as much.
  constexpr int step = 5;
  std::int64_t all = 0, asked = 0;
  for (const auto& [key, minutes] : wanted) {
    RC_ASSERT(placed[key] + step * s.c.job.crew.people * pieces[key] >= minutes);
    all += placed[key];
    asked += minutes;
  }
  RC_ASSERT(all + step * s.c.job.crew.people >= asked);
}

void nothingIsDoneOnWetDecks(const Scene& s, const Plan& plan) {
  const auto& zone = s.c.job.site.timezone;
  std::map<std::pair<std::size_t, int>, LocalTime> washed;
  for (const auto& shift : plan.shifts) {
    if (!shift.deck) continue;
    const std::pair key{*shift.deck, shift.part};
    if (shift.task == "wash") washed[key] = shift.end;
    else if (washed.contains(key))
      RC_ASSERT(schedule::between(zone, washed[key], shift.start) >= s.content.tasks[2].dryAfter);
  }
  for (const auto& coat : plan.coats) {
    for (const auto& next : plan.coats) {
      if (next.deck != coat.deck || next.part != coat.part || next.coat != coat.coat + 1) continue;
      RC_ASSERT(schedule::between(zone, coat.end, next.start) >= s.product.times.recoatMin);
    }
  }
}

void noDustMeetsAWetCoat(const Scene& s, const Plan& plan) {
  for (const auto& shift : plan.shifts) {
    if (!model::taskOf(s.content, shift.task).soilsWetCoats) continue;
    for (const auto& coat : plan.coats) RC_ASSERT(shift.end <= coat.start || shift.start >= coat.touchDry);
  }
}

/// Each laid on one day.
void coatsKeepToTheirHours(const Scene& s, const Plan& plan) {
  const auto& job = s.c.job;
  for (const auto& coat : plan.coats) {
    RC_ASSERT(coat.start.day == coat.end.day);
    RC_ASSERT(coat.start.minutes >= plan.coatingFrom && coat.end.minutes <= plan.coatingUntil);
    if (job.coatingUntil > 0)
      RC_ASSERT(coat.start.minutes >= job.coatingFrom && coat.end.minutes <= job.coatingUntil);
    // Common practice: not in the sun of the afternoon, and by the sea not in the dew of the morning.
    else if (job.site.exposure != Exposure::Sheltered) RC_ASSERT(coat.end.minutes <= 13 * 60);
    if (job.coatingUntil == 0 && job.site.exposure == Exposure::Coastal)
      RC_ASSERT(coat.start.minutes >= 9 * 60);
  }
}

/// Or they are sanded once more.
void boardsStandBareForThreeDays(const Scene& s, const Plan& plan) {
  for (const auto& coat : plan.coats) {
    if (coat.coat != 1) continue;
    base::Date bare{};
    for (const auto& shift : plan.shifts) {
      if (shift.deck == coat.deck && shift.part == coat.part && shift.task == "sand")
        bare = std::max(bare, shift.end.day);
    }
    if (bare == base::Date{} || coat.start.day - bare <= std::chrono::days{3}) continue;
    const bool canBe = std::any_of(s.e.lateCoats.begin(), s.e.lateCoats.end(), [&](const auto& line) {
      return line.deck == coat.deck && line.pass == 1;
    });
    const bool isExtra = std::any_of(plan.extraPasses.begin(), plan.extraPasses.end(),
                                     [&](const auto& p) { return p.deck == coat.deck && p.coat == 1; });
    RC_ASSERT(isExtra == canBe);
  }
}

/// And no other.
void waitsOutsideTheWindowAreTold(const Scene& s, const Plan& plan) {
  const auto& t = s.product.times;
  std::set<std::pair<std::size_t, int>> wanted, told;
  for (const auto& coat : plan.coats) {
    for (const auto& next : plan.coats) {
      if (next.deck != coat.deck || next.part != coat.part || next.coat != coat.coat + 1) continue;
      const Hours wait = schedule::between(s.c.job.site.timezone, coat.end, next.start);
      if (wait < t.recoatIdealFrom || wait > t.recoatIdealTo) wanted.insert({next.deck, next.coat});
    }
  }
  for (const auto& miss : plan.misses) RC_ASSERT(told.insert({miss.deck, miss.coat}).second);
  RC_ASSERT(told == wanted);
}

void datesFollowTheLastCoat(const Scene& s, const Plan& plan) {
  for (std::size_t i = 1; i < plan.events.size(); ++i) RC_ASSERT(plan.events[i - 1].at <= plan.events[i].at);
  const auto& zone = s.c.job.site.timezone;
  std::map<std::string, Event> dates;
  for (const auto& event : plan.events) {
    if (event.decks.empty()) RC_ASSERT(dates.emplace(model::nameOf(event), event).second);
  }
  std::set<std::pair<std::size_t, int>> coats;
  LocalTime last;
  for (const auto& coat : plan.coats) {
    coats.insert({coat.deck, coat.coat});
    last = std::max(last, coat.end);
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
}

void sameJobGivesTheSamePlan(const Scene& s, const Plan& plan) { RC_ASSERT(dump(plan) == dump(planOf(s))); }

}  // namespace

TEST_CASE("for any plan the crew's days, the coats and the dates are as they should be", "[plan]") {
  holdsAlways(300,
              [] {
                Scene s;
                fill(s);
                const Plan plan = planOf(s);
                RC_CLASSIFY(s.c.job.areas.size() > 1, "several decks");
                RC_CLASSIFY(plan.days.size() > 1, "several days");
                RC_CLASSIFY(!s.isCoated, "no coats");
                RC_CLASSIFY(!plan.misses.empty(), "waits beside the window");
                everyMinuteIsTold(s, plan);
                everyTaskIsDone(s, plan);
                nothingIsDoneOnWetDecks(s, plan);
                noDustMeetsAWetCoat(s, plan);
                coatsKeepToTheirHours(s, plan);
                boardsStandBareForThreeDays(s, plan);
                waitsOutsideTheWindowAreTold(s, plan);
                datesFollowTheLastCoat(s, plan);
                sameJobGivesTheSamePlan(s, plan);
              },
              {"several decks", "several days", "no coats", "waits beside the window"});
}
