#include "schedule/plan.h"
#include "model/names.h"

#include "schedule/crew/schedule.h"
#include "schedule/weather/zone.h"

#include <catch2/catch.hpp>

using namespace model;
using base::Hours;
using base::isoTime;
using base::LocalTime;

namespace {

base::Date day(const char* iso) { return *base::parseDate(iso); }
LocalTime at(const char* iso, const char* clock) { return {day(iso), *base::parseClock(clock)}; }
Hours h(std::int64_t n) { return Hours::whole(n); }

/// A job of some decks whose labour is given in person-hours; two people, 07:30 to 16:00 with 45 minutes off,
/// and half an hour of setting up and of packing down each day: 08:00 to 15:30 less the break, 6 h 45.
struct Scene {
  Content content;
  Product product;
  Region region;
  JobInputs c;
  Estimate e;

  explicit Scene(std::size_t decks = 1) {
    const auto task = [&](const char* id, Measure m, bool isPerCoat, std::int64_t dry, std::int64_t eachDay) {
      Task t;
      t.id = t.name = id;
      t.measure = m;
      t.isPerCoat = isPerCoat;
      t.dryAfter = h(dry);
      t.hoursEach = h(eachDay);
      content.tasks.push_back(t);
    };
    content.timbers[""] = {};
    task("set-up", Measure::Day, false, 0, 1);
    task("wash", Measure::Surface, false, 36, 0);
    task("sand", Measure::Surface, false, 0, 0);
    task("blow", Measure::Surface, true, 0, 0);
    task("coat", Measure::Wetted, true, 0, 0);
    task("rags", Measure::Job, false, 0, 0);
    task("pack-down", Measure::Day, false, 0, 1);
    product.openTime = h(1);
    auto& t = product.times;
    t.recoatMin = t.recoatIdealFrom = h(12);
    t.recoatIdealTo = h(24);
    t.recoatMax = h(72);
    t.walk = h(24);
    t.furniture = h(72);
    t.rugs = h(14 * 24);
    t.firstWash = h(28 * 24);
    c.product = &product;
    c.region = &region;
    c.job.crew.people = 2;
    c.job.crew.breakMinutes = 45;
    c.job.start = day("2027-03-16");  // a Tuesday
    c.job.site.timezone = "Pacific/Auckland";
    c.job.areas.resize(decks);
    c.job.work = {Work::Wash, Work::Sand, Work::Oil};
  }

  void labour(const char* task, std::size_t deck, std::int64_t personHours, int pass = 0) {
    LabourLine line;
    line.task = task;
    line.deck = deck;
    line.hours = h(personHours);
    line.pass = pass;
    e.labour.push_back(line);
  }

  void onTuesdays() {
    c.job.work = {Work::Oil};
    for (bool& works : c.job.crew.works) works = false;
    c.job.crew.works[1] = true;
  }

  /// For an hour and a half, where its second coat comes too late.
  void sandedIfLate(std::size_t deck) {
    if (e.lateCoats.empty()) {
      Task sanding;
      sanding.id = sanding.name = "sand-between";
      sanding.measure = Measure::Surface;
      sanding.isForLateCoat = true;
      content.tasks.insert(content.tasks.begin() + 3, sanding);
    }
    LabourLine late;
    late.task = "sand-between";
    late.deck = deck;
    late.pass = 2;
    late.hours = h(3);
    e.lateCoats.push_back(late);
  }

  Plan plan() {
    base::Diagnostics messages;
    auto p = schedule::makePlan(c, content, e, messages);
    for (const auto& m : messages.all()) FAIL(base::format(m));
    return p;
  }
};

using Lines = std::vector<std::string>;

Lines shiftsOf(const Plan& plan) {
  Lines all;
  for (const auto& shift : plan.shifts)
    all.push_back(shift.task + " " + isoTime(shift.start) + " " + base::isoClock(shift.end.minutes));
  return all;
}

const Event& eventOf(const Plan& plan, const std::string& name) {
  for (const auto& e : plan.events) {
    if (model::nameOf(e) == name) return e;
  }
  throw std::logic_error("no event " + name);
}

}  // namespace

TEST_CASE("a wait counts true hours over the night the clocks change") {
  // New Zealand put its clocks back on 2027-04-04 at 03:00 and forward on 2027-09-26 at 02:00 (tz database).
  CHECK(isoTime(schedule::after("Pacific/Auckland", at("2027-04-03", "20:00"), h(12))) == "2027-04-04T07:00");
  CHECK(isoTime(schedule::after("Pacific/Auckland", at("2027-09-25", "20:00"), h(12))) == "2027-09-26T09:00");
  CHECK(schedule::between("Pacific/Auckland", at("2027-09-25", "20:00"), at("2027-09-26", "08:00")) == h(11));
  CHECK(schedule::utcOffset("Pacific/Auckland", at("2027-03-16", "08:00")) == 13 * 60);
}

TEST_CASE("an unknown time zone is told apart from a known one") {
  CHECK(schedule::isZone("Europe/London"));
  CHECK_FALSE(schedule::isZone("Europe/Nowhere"));
}

TEST_CASE("work fills days around the break and days off") {
  Job job;  // 07:30 to 16:00; Monday to Friday
  job.crew.breakMinutes = 45;
  job.crew.off = {day("2027-03-17")};
  const schedule::Calendar calendar(job, nullptr, 30, 30);
  // 08:00 to 15:30 is 7 h 30; the break from 11:15 to 12:00 leaves 6 h 45 = 405 minutes
  CHECK(calendar.capacity() == 405);
  schedule::Piece piece;
  piece.task = "sand";
  piece.minutes = 500;
  schedule::Schedule made;
  const auto end = schedule::fill(made, {piece}, at("2027-03-16", "00:00"), calendar, 2);
  CHECK(isoTime(end) == "2027-03-18T09:35");  // the 17th is off; 500 - 405 = 95 minutes
  REQUIRE(made.days.size() == 2);
  const auto& first = made.days[0].duties;
  REQUIRE(first.size() == 3);
  CHECK(isoTime(first[0].shift.end) == "2027-03-16T11:15");
  CHECK(first[1].what == Duty::What::Rest);
  CHECK(isoTime(first[2].shift.start) == "2027-03-16T12:00");
  CHECK(made.days[1].duties.size() == 1);  // nobody rests who goes home after two and a half hours
}

TEST_CASE("no piece of work is under a quarter of an hour unless it finishes its task") {
  Job job;
  job.crew.breakMinutes = 45;
  const schedule::Calendar calendar(job, nullptr, 30, 30);
  schedule::Piece fix, sand;
  fix.task = "fix";
  fix.minutes = 395;
  sand.task = "sand";
  sand.minutes = 60;
  schedule::Schedule made;
  schedule::fill(made, {fix, sand}, at("2027-03-16", "00:00"), calendar, 2);
  REQUIRE(made.days.size() == 2);
  CHECK(made.days[0].duties.back().shift.task == "fix");  // ten minutes of sanding would be left
  CHECK(isoTime(made.days[1].duties.front().shift.start) == "2027-03-17T08:00");
}

TEST_CASE("a washed deck dries before the next task on it") {
  Scene s;
  s.labour("wash", 0, 4);  // two people: 08:00 to 10:00
  s.labour("sand", 0, 4);
  const auto plan = s.plan();
  CHECK(isoTime(plan.shifts[0].end) == "2027-03-16T10:00");
  CHECK(isoTime(plan.shifts[1].start) == "2027-03-18T08:00");  // 36 h later is 22:00 on the 17th
}

TEST_CASE("the second coat starts after the least wait from the end of the first, inside the ideal window") {
  Scene s;
  s.labour("coat", 0, 6, 1);  // 08:00 to 11:00
  s.labour("coat", 0, 4, 2);
  const auto plan = s.plan();
  CHECK(isoTime(eventOf(plan, "coat_1_start").at) == "2027-03-16T08:00");
  CHECK(isoTime(eventOf(plan, "coat_1_end").at) == "2027-03-16T11:00");
  CHECK(isoTime(eventOf(plan, "coat_2_start").at) == "2027-03-17T08:00");  // 21 h, inside 12 to 24
  CHECK(plan.misses.empty());
  CHECK(isoTime(eventOf(plan, "walk").at) == "2027-03-18T10:00");
  CHECK(isoTime(eventOf(plan, "furniture").at) == "2027-03-20T10:00");
}

TEST_CASE("a first coat waits for Monday when the weekend would spoil the second") {
  Scene s;
  s.c.job.start = day("2027-03-19");  // a Friday
  s.labour("coat", 0, 6, 1);
  s.labour("coat", 0, 4, 2);
  const auto plan = s.plan();
  CHECK(isoTime(eventOf(plan, "coat_1_start").at) == "2027-03-22T08:00");
  CHECK(plan.misses.empty());
}

TEST_CASE("a coat outside its ideal window is told with the reason") {
  Scene s;
  for (auto& works : s.c.job.crew.works) works = false;
  s.c.job.crew.works[1] = s.c.job.crew.works[3] = true;  // Tuesdays and Thursdays only
  s.labour("coat", 0, 6, 1);
  s.labour("coat", 0, 4, 2);
  const auto plan = s.plan();
  REQUIRE(plan.misses.size() == 1);
  CHECK(plan.misses[0].why == WindowViolation::Why::DaysOff);
  CHECK(plan.misses[0].isLate);
  CHECK_FALSE(plan.misses[0].isPastMax);  // 45 h, at most 72
  CHECK(plan.misses[0].gap == h(45));     // Tuesday 11:00 to Thursday 08:00
}

TEST_CASE("a product that must wait longer than overnight is coated when its wait is over") {
  Scene s;
  s.product.times.recoatMin = s.product.times.recoatIdealFrom = h(24);
  s.product.times.recoatIdealTo = h(48);
  s.labour("coat", 0, 6, 1);  // 08:00 to 11:00
  s.labour("coat", 0, 2, 2);
  const auto plan = s.plan();
  CHECK(isoTime(eventOf(plan, "coat_2_start").at) == "2027-03-17T11:00");
  CHECK(isoTime(plan.days.back().arrive) == "2027-03-17T10:30");  // nobody waits on site for it
}

TEST_CASE("a coat is laid in one go, over the time of the usual break too") {
  Scene s;
  s.labour("coat", 0, 7, 1);
  const auto plan = s.plan();
  CHECK(isoTime(eventOf(plan, "coat_1_start").at) == "2027-03-16T08:00");
  CHECK(isoTime(eventOf(plan, "coat_1_end").at) == "2027-03-16T11:30");
}

TEST_CASE("decks that do not fit one morning are coated in batches, each with all its coats") {
  Scene s(3);
  for (std::size_t deck = 0; deck < 3; ++deck) {
    for (int coat = 1; coat <= 2; ++coat)
      s.labour("coat", deck, 4, coat);  // two hours each; 08:00 to 13:00 holds two
  }
  const auto plan = s.plan();
  REQUIRE(plan.events.size() >= 8);
  CHECK(plan.events[0].decks == std::vector<std::size_t>{0, 1});
  CHECK(model::nameOf(plan.events[4]) == "coat_1_start");
  CHECK(plan.events[4].decks == std::vector<std::size_t>{2});
  CHECK(plan.misses.empty());
  for (std::size_t i = 1; i < plan.events.size(); ++i) CHECK(plan.events[i - 1].at <= plan.events[i].at);
  CHECK(plan.days.size() == 4);
}

TEST_CASE("blowing the boards clean is not the start of a coat") {
  Scene s;
  s.labour("blow", 0, 1, 1);  // half an hour
  s.labour("coat", 0, 4, 1);
  CHECK(isoTime(eventOf(s.plan(), "coat_1_start").at) == "2027-03-16T08:30");
}

TEST_CASE("tasks after the coats follow the last coat") {
  Scene s;
  s.labour("coat", 0, 2, 1);
  s.labour("rags", 0, 1);
  const auto plan = s.plan();
  CHECK(plan.shifts.back().task == "rags");
  CHECK(isoTime(plan.finished) == "2027-03-16T09:00");
}

TEST_CASE("the yearly visit falls on a working day") {
  Scene s;
  s.labour("coat", 0, 2, 1);
  // 2028-03-16 is a Thursday; take Thursdays off
  s.c.job.crew.works[3] = false;
  CHECK(isoTime(eventOf(s.plan(), "maintenance").at) == "2028-03-17T07:30");
}

TEST_CASE("a crew without time to work is refused in words") {
  Scene s;
  s.labour("coat", 0, 2, 1);
  base::Diagnostics messages;
  s.c.job.crew.endMinutes = s.c.job.crew.startMinutes + 60;
  schedule::makePlan(s.c, s.content, s.e, messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all()[0]) ==
        "error: crew: leaves no time to work: setting up and packing down fill the day, or every day is off\n"
        "  hint: give longer 'hours', or take days out of 'off'\n");
}

TEST_CASE("a deck too large for a day is laid in parts, each with all its coats") {
  Scene s;
  s.labour("coat", 0, 14, 1);  // 7 h by two people: 08:00 to 13:00 holds 5 h
  s.labour("coat", 0, 14, 2);
  const auto plan = s.plan();
  std::vector<std::string> coats;
  for (const auto& c : plan.coats)
    coats.push_back(isoTime(c.start) + " " + base::isoClock(c.end.minutes) + " part " +
                    std::to_string(c.part) + " coat " + std::to_string(c.coat));
  CHECK(coats == std::vector<std::string>{
                     "2027-03-16T08:00 11:30 part 1 coat 1", "2027-03-17T08:00 11:30 part 1 coat 2",
                     "2027-03-18T08:00 11:30 part 2 coat 1", "2027-03-19T08:00 11:30 part 2 coat 2"});
  CHECK(plan.misses.empty());
}

TEST_CASE("a job without a coat is not asked for coating hours") {
  Scene s;
  s.c.job.crew.startMinutes = 13 * 60;  // in the open coats stop at 13:00
  s.c.job.crew.endMinutes = 18 * 60;
  s.labour("wash", 0, 2);
  CHECK(s.plan().days.size() == 1);
}

TEST_CASE("work for ages is refused, not counted round") {
  Scene s;
  s.labour("wash", 0, 46'000'000);
  base::Diagnostics messages;
  schedule::makePlan(s.c, s.content, s.e, messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all()[0]) ==
        "error: crew: the work would take more than a year\n  hint: check the sizes, or add people\n");
}

TEST_CASE("a second coat past the product's longest wait is sanded for, then laid") {
  // Tuesdays only: the second coat comes a week after the first, 168 h, where the product takes 72 h at the
  // most.
  Scene s;
  s.onTuesdays();
  s.labour("coat", 0, 2, 1);
  s.labour("coat", 0, 2, 2);
  s.sandedIfLate(0);
  const Plan plan = s.plan();
  CHECK(shiftsOf(plan) == Lines{"coat 2027-03-16T08:00 09:00", "sand-between 2027-03-23T08:00 09:30",
                                "coat 2027-03-23T09:30 10:30"});
  REQUIRE(plan.misses.size() == 1);
  CHECK(plan.misses[0].isPastMax);
  CHECK(plan.misses[0].why == WindowViolation::Why::DaysOff);
  CHECK(plan.misses[0].gap == Hours{168'500'000});  // from 09:00 to 09:30 a week later

  // Tuesdays and Fridays: 71 h lie outside the ideal window, but the product allows them.
  s.c.job.crew.works[4] = true;
  const Plan allowed = s.plan();
  CHECK(shiftsOf(allowed) == Lines{"coat 2027-03-16T08:00 09:00", "coat 2027-03-19T08:00 09:00"});
  REQUIRE(allowed.misses.size() == 1);
  CHECK_FALSE(allowed.misses[0].isPastMax);
  CHECK(allowed.misses[0].gap == h(71));
}

TEST_CASE("no coat is sanded for that still comes in time beside one that does not") {
  // A week later the small deck is coated 167 h after its first coat, the large one 165 h after its own, past
  // and within the longest wait.
  Scene s(2);
  s.onTuesdays();
  s.product.times.recoatIdealTo = s.product.times.recoatMax = h(166);
  s.c.job.coatingFrom = 10 * 60;
  s.c.job.coatingUntil = 15 * 60;
  for (int coat = 1; coat <= 2; ++coat) {
    s.labour("coat", 0, 2, coat);
    s.labour("coat", 1, 6, coat);
  }
  s.sandedIfLate(0);
  s.sandedIfLate(1);
  const Plan plan = s.plan();
  CHECK(shiftsOf(plan) == Lines{"coat 2027-03-16T10:00 11:00", "coat 2027-03-16T11:00 14:00",
                                "sand-between 2027-03-23T08:30 10:00", "coat 2027-03-23T10:00 11:00",
                                "coat 2027-03-23T11:00 14:00"});
  REQUIRE(plan.misses.size() == 1);
  CHECK(plan.misses[0].deck == 0);
  CHECK(plan.misses[0].isPastMax);
  CHECK(plan.extraPasses.size() == 1);
}
