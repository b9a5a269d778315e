// What must hold for the plan of any job, tried on a thousand random ones. The seed is fixed: a failure comes
// again.
#include "plan/plan.h"

#include "plan/zone.h"
#include "random_cases.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>
#include <sstream>

using namespace model;
using base::Hours;
using base::LocalTime;

namespace {

int within(int from, int to) { return *rc::gen::inRange(from, to + 1); }
bool flip() { return within(0, 1) == 1; }
template <class T>
T anyOf(std::initializer_list<T> values) {
  return *rc::gen::elementOf(std::vector<T>(values));
}
/// Of three minutes each: exact in millionths of an hour.
Hours threes(int from, int to) { return {within(from, to) * std::int64_t{50'000}}; }

struct Scene {
  Content content;
  Product product;
  Region region;
  Case c;
  Estimate e;
  bool isCoated = false;
};

void addTasks(Content& content) {
  const auto task = [&](const char* id, Measure m) -> Task& {
    Task t;
    t.id = t.name = id;
    t.measure = m;
    content.tasks.push_back(t);
    return content.tasks.back();
  };
  task("set-up", Measure::Day).hoursEach = threes(0, 20);
  task("cover", Measure::Job);
  task("wash", Measure::Surface).dryAfter = Hours::whole(within(0, 48));
  task("sand", Measure::Surface).isPerPass = true;
  task("blow", Measure::Surface).isPerCoat = true;
  task("cut-in", Measure::CutIn).isPerCoat = true;
  task("coat", Measure::Wetted).isPerCoat = true;
  task("rags", Measure::Job);
  task("pack-down", Measure::Day).hoursEach = threes(0, 20);
}

/// Data sheets differ widely: from two thin coats in one day to two days between them.
ProductTimes anyTimes() {
  ProductTimes t;
  t.recoatMin =
      anyOf({Hours::whole(1), Hours::whole(4), Hours::whole(12), Hours::whole(48), threes(1, 1000)});
  const auto later = [](Hours from) { return from + anyOf({Hours{}, threes(0, 100), threes(0, 1500)}); };
  t.recoatIdealFrom = later(t.recoatMin);
  t.recoatIdealTo = later(t.recoatIdealFrom);
  t.recoatMax = later(t.recoatIdealTo);
  t.walk = threes(1, 1000);
  t.furniture = t.walk + threes(0, 2000);
  t.rugs = t.furniture + Hours::whole(within(0, 500));
  t.firstWash = t.rugs + Hours::whole(within(0, 500));
  t.maintenanceMonths = within(1, 36);
  return t;
}

/// Working days that leave at least an hour before one o'clock and as much after nine.
void fillCrew(Crew& crew, base::Date start) {
  crew.people = within(1, 5);
  crew.startMinutes = 5 * within(6 * 12, 9 * 12);
  crew.endMinutes = 5 * within(16 * 12, 22 * 12);
  crew.breakMinutes = 5 * within(0, 12);
  for (auto& works : crew.works) works = within(0, 3) > 0;
  crew.works[within(0, 6)] = true;
  for (int n = within(0, 6); n > 0; --n) crew.off.push_back(start + std::chrono::days{within(0, 25)});
}

void addLabour(Scene& s, int decks) {
  const auto add = [&](const std::string& task, std::optional<std::size_t> deck, int pass, Hours hours) {
    LabourLine line;
    line.task = task;
    line.deck = deck;
    line.pass = pass;
    line.hours = hours;
    if (!hours.isZero()) s.e.labour.push_back(line);
  };
  const int largest = anyOf({20, 100, 300});  // three minutes each: an hour, five hours, fifteen hours
  std::vector<int> coats;
  for (int d = 0; d < decks; ++d) coats.push_back(within(1, 3));
  for (const auto& task : s.content.tasks) {
    if (task.measure == Measure::Day || (task.isPerCoat && !s.isCoated)) continue;
    if (task.measure == Measure::Job) add(task.id, {}, 0, threes(0, 20));
    for (int d = 0; d < decks && task.measure != Measure::Job; ++d) {
      const auto deck = static_cast<std::size_t>(d);
      if (task.isPerCoat) {
        for (int n = 1; n <= coats[deck]; ++n)
          add(task.id, deck, n, threes(task.id == "coat" ? 1 : 0, task.id == "blow" ? 10 : largest));
      } else if (flip()) {
        add(task.id, deck, task.isPerPass ? 60 : 0, threes(0, largest));
      }
    }
  }
}

void fill(Scene& s) {
  addTasks(s.content);
  s.product.times = anyTimes();
  s.c.product = &s.product;
  s.c.region = &s.region;
  auto& job = s.c.job;
  // Places that change their clocks by an hour, by half an hour, at midnight, and never.
  job.site.timezone =
      anyOf<std::string>({"Pacific/Auckland", "Europe/London", "America/New_York", "America/St_Johns",
                          "Australia/Lord_Howe", "America/Santiago", "Asia/Beirut", "Asia/Kathmandu"});
  job.site.exposure = anyOf({Exposure::Sheltered, Exposure::Open, Exposure::Coastal});
  job.start = *base::parseDate("2026-01-01") + std::chrono::days{within(0, 1200)};
  fillCrew(job.crew, job.start);
  s.isCoated = within(0, 4) > 0;
  if (flip()) {
    // A job without oil does not mind hours for coating that lie in the night.
    job.coatingFrom = s.isCoated ? 5 * within(9 * 12, 10 * 12) : 60;
    job.coatingUntil = job.coatingFrom + (s.isCoated ? 5 * within(30, 100) : 5);
  }
  const int decks = within(1, 8);
  job.areas.resize(static_cast<std::size_t>(decks));
  addLabour(s, decks);
}

Plan planOf(const Scene& s) {
  base::Diagnostics messages;
  auto plan = plan::makePlan(s.c, s.content, s.e, messages);
  std::string all;
  for (const auto& m : messages.all()) all += base::format(m);
  RC_ASSERT(all == "");
  return plan;
}

template <class Property>
void holdsForAnyPlan(Property property) {
  holdsAlways(1000, [&] {
    Scene s;
    fill(s);
    property(s, planOf(s));
  });
}

/// Clock minutes of the whole crew, rounded up to five.
int minutesOf(Hours hours, int people) {
  const std::int64_t personMinutes = hours.millionths * 60 / 1'000'000;
  return static_cast<int>((personMinutes + people * 5 - 1) / (people * 5) * 5);
}

/// The hours of a day by the crew's own words.
struct Day {
  int from, until, breakFrom, breakUntil;

  explicit Day(const Scene& s) {
    const Crew& crew = s.c.job.crew;
    from = crew.startMinutes + minutesOf(s.content.tasks.front().hoursEach, crew.people);
    until = crew.endMinutes - minutesOf(s.content.tasks.back().hoursEach, crew.people);
    // The break lies half way through the working time, on a quarter of an hour.
    breakFrom = crew.startMinutes + (crew.endMinutes - crew.startMinutes - crew.breakMinutes) / 2;
    breakFrom -= breakFrom % 15;
    breakUntil = breakFrom + crew.breakMinutes;
  }
  int worked(int start, int end) const {
    return end - start - std::max(0, std::min(end, breakUntil) - std::max(start, breakFrom));
  }
  int worked(const Shift& shift) const { return worked(shift.start.minutes, shift.end.minutes); }
};

bool isCoat(const Shift& shift) {
  return shift.task == "blow" || shift.task == "cut-in" || shift.task == "coat";
}
bool isWet(const Shift& shift) { return shift.task == "cut-in" || shift.task == "coat"; }

/// All shifts of each deck's coats, in order.
std::map<std::pair<std::size_t, int>, std::vector<Shift>> coatsOf(const Plan& plan) {
  std::map<std::pair<std::size_t, int>, std::vector<Shift>> coats;
  for (const auto& shift : plan.shifts) {
    if (isCoat(shift)) coats[{shift.deck.value(), shift.pass}].push_back(shift);
  }
  return coats;
}

LocalTime firstStroke(const std::vector<Shift>& coat) {
  return std::find_if(coat.begin(), coat.end(), isWet)->start;
}

/// The end of the work on the boards that were done on the coat's first day.
LocalTime firstDaysEnd(const std::vector<Shift>& coat) {
  LocalTime end;
  for (const auto& shift : coat) {
    if (isWet(shift) && (end == LocalTime{} || shift.end.day == end.day)) end = shift.end;
  }
  return end;
}

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
    const Day day(s);
    for (const auto& shift : plan.shifts) placed[{shift.task, shift.deck, shift.pass}] += day.worked(shift);
    RC_ASSERT(placed == wanted);
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
        RC_ASSERT(plan::between(zone, washed[*shift.deck], shift.start) >= s.content.tasks[2].dryAfter);
    }
    const auto coats = coatsOf(plan);
    for (const auto& [key, coat] : coats) {
      if (key.second == 1) continue;
      const auto& before = coats.at({key.first, key.second - 1});
      for (const auto& shift : coat)
        RC_ASSERT(plan::between(zone, before.back().end, shift.start) >= s.product.times.recoatMin);
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

TEST_CASE("for any plan a wait outside the ideal window is told, and no other", "[plan]") {
  holdsForAnyPlan([](const Scene& s, const Plan& plan) {
    const auto& zone = s.c.job.site.timezone;
    const auto& t = s.product.times;
    std::map<std::pair<std::size_t, int>, Miss> misses;
    for (const auto& miss : plan.misses)
      RC_ASSERT(misses.emplace(std::pair{miss.deck, miss.coat}, miss).second);
    const auto coats = coatsOf(plan);
    for (const auto& [key, coat] : coats) {
      if (key.second == 1) continue;
      const auto& before = coats.at({key.first, key.second - 1});
      // On a deck of several days the boards of the first have waited longest and those of the last least.
      const Hours least = plan::between(zone, before.back().end, firstStroke(coat));
      const Hours most = plan::between(zone, firstDaysEnd(before), firstStroke(coat));
      const auto found = misses.find(key);
      if (least < t.recoatIdealFrom || most > t.recoatIdealTo) RC_ASSERT(found != misses.end());
      if (found == misses.end()) continue;
      const Miss& miss = found->second;
      const Hours longest = plan::between(zone, firstStroke(before), firstStroke(coat));
      RC_ASSERT((miss.isLate ? miss.gap > t.recoatIdealTo : miss.gap < t.recoatIdealFrom));
      RC_ASSERT(miss.gap >= least && miss.gap <= longest);
      RC_ASSERT(miss.isPastMax || most <= t.recoatMax);
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
          std::chrono::duration_cast<std::chrono::minutes>(moment - plan::localToUtc(zone, last));
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
