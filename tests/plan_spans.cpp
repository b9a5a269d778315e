// Coats that weather leaves only parts of a day: each part ends where its fit hours end, and nothing goes on
// before the coat below is touch dry in the air there is.
#include "estimate/estimate.h"
#include "schedule/plan.h"
#include "schedule/weather/zone.h"
#include "weather_sample.h"

#include <map>

using model::Plan;
using model::Shift;
using namespace weather;
using base::isoTime;
using base::LocalTime;

namespace {

model::Product windyProduct() {
  model::Product p = fixtures::sampleProduct();
  p.limits.windMax = base::Count::whole(7);
  return p;
}

/// Mild and dry, but too windy for a coat outside of these hours of the day.
AirOfHour stillIn(std::vector<std::pair<int, int>> spans) {
  return [=](int hour) {
    model::Air air = still(20, 55, 1);
    const bool isStill = std::any_of(spans.begin(), spans.end(), [&](const auto& span) {
      return hour % 24 >= span.first && hour % 24 < span.second;
    });
    air.wind = isStill ? 2 : 12;
    return air;
  };
}

/// One deck of 40 m x 8 m, more than a day's work, oiled by two people from 08:00 to 17:00 with an hour off
/// from 12:00 on.
struct LargeDeck {
  model::Product product = windyProduct();
  model::Content content = fixtures::sampleContent();
  model::JobInputs c;

  explicit LargeDeck(const AirOfHour& air, int days = 12) : c(summerCase(air, days)) {
    c.product = &product;
    c.job.work = {model::Work::Oil};
    c.job.areas.pop_back();
    c.job.areas[0].shape = model::Rectangle{base::metres(40), base::metres(8)};
    c.job.crew.startMinutes = 8 * 60;
    c.job.crew.endMinutes = 17 * 60;
    c.job.crew.breakMinutes = 60;
    product.times.wipeOff = {};
  }

  Plan plan() const {
    base::Diagnostics messages;
    Plan plan = schedule::makePlan(c, content, estimate::makeEstimate(c, content), messages);
    for (const auto& m : messages.all()) FAIL(base::format(m));
    return plan;
  }
};

bool isStroke(const Shift& shift) { return shift.task == "cut-in" || shift.task == "oil"; }

std::vector<std::string> strokesOf(const Plan& plan, int coat) {
  std::vector<std::string> all;
  for (const auto& shift : plan.shifts) {
    if (isStroke(shift) && shift.pass == coat)
      all.push_back(shift.task + " " + isoTime(shift.start) + " " + base::isoClock(shift.end.minutes));
  }
  return all;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a fit hour that lies wholly in the break holds no coat, and the plan ends", "[plan]") {
  // Every day 12:00 to 13:00 is fit, which is the break, and from 15:00 on: 105 minutes of the 555 that the
  // coat takes, of which cutting in has 75. 75 x 105 / 555 = 14.2, so 15.
  const auto strokes = strokesOf(LargeDeck(stillIn({{12, 14}, {15, 24}})).plan(), 1);
  REQUIRE(strokes.size() >= 2);
  CHECK(strokes[0] == "cut-in 2027-01-12T15:00 15:15");
  CHECK(strokes[1] == "oil 2027-01-12T15:15 16:45");
}

TEST_CASE("a part of a coat ends where its fit hours end, and the coat goes on another day", "[plan]") {
  // The crew has its tools out from 08:15 to 16:45; of that 08:15 to 09:00 is fit, and from 14:00 on. Two
  // people cut in 96 m in 72 min, so 75, and oil 320 m2 in 8 h. Of 555 minutes 165 are laid on a day, cutting
  // in along with the surface: 75 x 165 / 555 = 22.3, so 25; 50 x 165 / 390 = 21.2; 25 x 165 / 225 = 18.3.
  const Plan plan = LargeDeck(stillIn({{0, 10}, {14, 24}})).plan();
  CHECK(strokesOf(plan, 1) == Lines{"cut-in 2027-01-12T14:00 14:25", "oil 2027-01-12T14:25 16:45",
                                    "cut-in 2027-01-13T14:00 14:25", "oil 2027-01-13T14:25 16:45",
                                    "cut-in 2027-01-14T14:00 14:20", "oil 2027-01-14T14:20 16:45",
                                    "cut-in 2027-01-15T14:00 14:05", "oil 2027-01-15T14:05 15:00"});
}

TEST_CASE("a coat past its longest wait is sanded only when the one below is touch dry in the cold",
          "[plan]") {
  // 10 C makes touch dry twice as long: 40 h instead of 20. The second coat may come 20 h after the first, on
  // the next morning; nobody works after that for five days, past the longest wait of 72 h.
  LargeDeck s(
      [](int hour) {
        model::Air air = stillIn({{0, 24}})(hour);
        air.celsius = 10;
        return air;
      },
      40);
  s.c.job.areas[0].shape = model::Rectangle{base::metres(5), base::metres(4)};
  for (int weekday = 0; weekday < 7; ++weekday) s.c.job.crew.works[weekday] = weekday == 1 || weekday == 2;
  s.product.times.touchDry = s.product.times.rainSafe = base::Hours::whole(20);
  s.product.times.recoatMin = s.product.times.recoatIdealFrom = base::Hours::whole(20);
  model::Task sanding = fixtures::sampleTask("sand-between", model::Work::Oil, model::Measure::Surface, 40);
  sanding.isForLateCoat = true;
  s.content.tasks.insert(s.content.tasks.end() - 1, sanding);
  const Plan plan = s.plan();
  const auto sanded = std::find_if(plan.shifts.begin(), plan.shifts.end(),
                                   [](const auto& shift) { return shift.task == "sand-between"; });
  REQUIRE(sanded != plan.shifts.end());
  CHECK(strokesOf(plan, 1).back() == "oil 2027-01-12T09:30 10:00");
  CHECK(isoTime(sanded->start) == "2027-01-19T08:15");
  CHECK(strokesOf(plan, 2).front() == "cut-in 2027-01-19T08:30 08:45");
  REQUIRE(plan.misses.size() == 1);
  CHECK(plan.misses[0].isPastMax);
}

TEST_CASE("a second coat over days waits until the first is touch dry in the cold", "[plan]") {
  LargeDeck s([](int hour) {
    model::Air air = stillIn({{0, 24}})(hour);
    air.celsius = 10;
    return air;
  });
  s.product.times.touchDry = s.product.times.rainSafe = base::Hours::whole(16);  // 32 h at 10 C
  s.product.times.recoatMin = s.product.times.recoatIdealFrom = base::Hours::whole(16);
  const Plan plan = s.plan();
  LocalTime end, start;
  for (const auto& shift : plan.shifts) {
    if (shift.pass == 1) end = std::max(end, shift.end);
    if (shift.pass == 2 && start.day == base::Date{}) start = shift.start;
  }
  CHECK(schedule::between("Pacific/Auckland", end, start) >= base::Hours::whole(32));
}

TEST_CASE("wiping off that goes on after the crew's hours is told", "[plan]") {
  // Two people from 08:00 on: a quarter of an hour to set up, half an hour to clear, 25 min to mask 14 m, 15
  // to cut in and 15 to oil 10 m2, until 09:40. It is wiped off four hours later, then they pack down in 15
  // min.
  LargeDeck s(stillIn({{0, 24}}));
  s.c.job.areas[0].shape = model::Rectangle{base::metres(5), base::metres(2)};
  s.c.job.areas[0].coats = 1;
  s.c.job.crew.endMinutes = 12 * 60;
  s.c.job.crew.breakMinutes = 0;
  s.product.times.wipeOff = base::Hours::whole(4);
  base::Diagnostics messages;
  schedule::makePlan(s.c, s.content, estimate::makeEstimate(s.c, s.content), messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all()[0]) ==
        "warning: crew.hours: wiping off and packing down end at 13:55 on 2027-01-12, after the crew's hours "
        "end "
        "at 12:00\n"
        "  hint: give the crew longer hours, or end the coats sooner with 'coating:'\n");
  s.product.times.wipeOff = base::Hours::whole(1);
  base::Diagnostics none;
  schedule::makePlan(s.c, s.content, estimate::makeEstimate(s.c, s.content), none);
  CHECK(none.all().empty());
}

TEST_CASE("the customer's dates wait for the air as the plan does", "[plan]") {
  // 10 C doubles what the data sheet promises for 20 C; at 20 C it stands.
  const auto datesAt = [](double celsius) {
    LargeDeck s(
        [=](int hour) {
          model::Air air = stillIn({{0, 24}})(hour);
          air.celsius = celsius;
          return air;
        },
        60);
    s.c.job.areas[0].shape = model::Rectangle{base::metres(5), base::metres(4)};
    const Plan plan = s.plan();
    std::map<std::string, base::Hours> waits;
    for (const auto& event : plan.events) {
      if (event.decks.empty())
        waits[event.name] = schedule::between("Pacific/Auckland", plan.finished, event.at);
    }
    return waits;
  };
  auto mild = datesAt(20), cold = datesAt(10);
  CHECK(mild["walk"] == base::Hours::whole(24));
  CHECK(cold["walk"] == base::Hours::whole(48));
  CHECK(mild["furniture"] == base::Hours::whole(72));
  CHECK(cold["furniture"] == base::Hours::whole(144));
  CHECK(cold["rugs"] == base::Hours::whole(28 * 24));
}
