// Random jobs for the plan's properties, and what a reader of a plan would make of it by himself.
#pragma once

#include "schedule/plan.h"

#include "random_cases.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <map>
#include <sstream>

namespace plan_cases {

using namespace model;
using base::Hours;
using base::LocalTime;

inline int within(int from, int to) { return *rc::gen::inRange(from, to + 1); }
inline bool flip() { return within(0, 1) == 1; }
template <class T>
T anyOf(std::initializer_list<T> values) {
  return *rc::gen::elementOf(std::vector<T>(values));
}
/// Of three minutes each: exact in millionths of an hour.
inline Hours threes(int from, int to) { return {within(from, to) * std::int64_t{50'000}}; }

struct Scene {
  Content content;
  Product product;
  Region region;
  JobInputs c;
  Estimate e;
  bool isCoated = false;
};

inline void addTasks(Content& content) {
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
  task("fix", Measure::Fixings);
  task("sand", Measure::Surface).isPerPass = true;
  task("sand-between", Measure::Surface).isForLateCoat = true;
  task("blow", Measure::Surface).isPerCoat = true;
  task("cut-in", Measure::CutIn).isPerCoat = true;
  task("coat", Measure::Wetted).isPerCoat = true;
  task("wipe", Measure::Wetted).isPerCoat = true;
  content.tasks.back().isWiping = true;
  task("rags", Measure::Job);
  task("pack-down", Measure::Day).hoursEach = threes(0, 20);
  const bool isDusty = flip();
  for (auto& t : content.tasks)
    t.soilsWetCoats =
        isDusty && (t.id == "wash" || t.id == "sand" || t.id == "sand-between" || t.id == "blow");
}

/// Data sheets differ widely: from two thin coats in one day to two days between them.
inline ProductTimes anyTimes() {
  ProductTimes t;
  t.recoatMin =
      anyOf({Hours::whole(1), Hours::whole(4), Hours::whole(12), Hours::whole(48), threes(1, 1000)});
  t.touchDry = {t.recoatMin.millionths / 2};
  const auto later = [](Hours from) { return from + anyOf({Hours{}, threes(0, 100), threes(0, 1500)}); };
  t.recoatIdealFrom = later(t.recoatMin);
  t.recoatIdealTo = later(t.recoatIdealFrom);
  t.recoatMax = later(t.recoatIdealTo);
  t.walk = threes(1, 1000);
  t.furniture = t.walk + threes(0, 2000);
  t.rugs = t.furniture + Hours::whole(within(0, 500));
  t.firstWash = t.rugs + Hours::whole(within(0, 500));
  t.maintenanceMonths = within(1, 36);
  t.wipeOff = anyOf({Hours{}, Hours::whole(1), threes(1, 60)});
  return t;
}

/// Working days that leave at least an hour before one o'clock and as much after nine.
inline void fillCrew(Crew& crew, base::Date start) {
  crew.people = within(1, 5);
  crew.startMinutes = 5 * within(6 * 12, 9 * 12);
  crew.endMinutes = 5 * within(16 * 12, 22 * 12);
  crew.breakMinutes = 5 * within(0, 12);
  for (auto& works : crew.works) works = within(0, 3) > 0;
  crew.works[within(0, 6)] = true;
  for (int n = within(0, 6); n > 0; --n) crew.off.push_back(start + std::chrono::days{within(0, 25)});
}

inline void addLabour(Scene& s, int decks) {
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
    if (task.isForLateCoat) continue;
    if (task.measure == Measure::Job) add(task.id, {}, 0, threes(0, 20));
    for (int d = 0; d < decks && task.measure != Measure::Job; ++d) {
      const auto deck = static_cast<std::size_t>(d);
      if (task.isPerCoat) {
        for (int n = 1; n <= coats[deck]; ++n)
          if (!task.isWiping || !s.product.times.wipeOff.isZero())
            add(task.id, deck, n,
                threes(task.id == "coat" ? 1 : 0, task.id == "blow" || task.isWiping ? 10 : largest));
      } else if (flip()) {
        add(task.id, deck, task.isPerPass ? 60 : 0, threes(0, largest));
      }
    }
  }
}

/// Sanding before any coat that comes too late, on about half of the jobs.
inline void addLateCoats(Scene& s) {
  if (!s.isCoated || flip()) return;
  for (const auto& coat : s.e.labour) {
    if (coat.task != "coat" || coat.pass == 1) continue;
    LabourLine line;
    line.task = "sand-between";
    line.deck = coat.deck;
    line.pass = coat.pass;
    line.hours = threes(1, 40);
    s.e.lateCoats.push_back(line);
  }
}

inline void fill(Scene& s) {
  addTasks(s.content);
  s.product.times = anyTimes();
  s.product.openTime = anyOf({threes(3, 10), Hours::whole(1)});
  s.c.product = &s.product;
  s.content.timbers[""] = {};
  s.c.job.work = {Work::Wash, Work::Sand, Work::Oil};
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
  addLateCoats(s);
}

inline Plan planOf(const Scene& s) {
  base::Diagnostics messages;
  auto plan = schedule::makePlan(s.c, s.content, s.e, messages);
  std::string all;
  for (const auto& m : messages.all()) all += base::format(m);
  RC_ASSERT(all == "");
  return plan;
}

/// Clock minutes of the whole crew, rounded up to five.
inline int minutesOf(Hours hours, int people) {
  const std::int64_t personMinutes = hours.millionths * 60 / 1'000'000;
  return static_cast<int>((personMinutes + people * 5 - 1) / (people * 5) * 5);
}

inline bool isCoat(const Shift& shift) {
  return shift.task == "blow" || shift.task == "cut-in" || shift.task == "coat" || shift.task == "wipe";
}
inline bool isWet(const Shift& shift) { return shift.task == "cut-in" || shift.task == "coat"; }

/// The sanding before a coat that comes too late counts as one of its tasks here.
inline bool isForCoat(const Shift& shift) { return isCoat(shift) || shift.task == "sand-between"; }

/// All shifts of each deck's coats, in order.
inline std::map<std::pair<std::size_t, int>, std::vector<Shift>> coatsOf(const Plan& plan) {
  std::map<std::pair<std::size_t, int>, std::vector<Shift>> coats;
  for (const auto& shift : plan.shifts) {
    if (isCoat(shift)) coats[{shift.deck.value(), shift.pass}].push_back(shift);
  }
  return coats;
}

}  // namespace plan_cases
