// Boards under open sky after rain: they dry as washed ones do before a coat is laid. That they take 24 to 48
// hours is common practice, without a source; from how much rain on is our own choice.
#include "estimate/estimate.h"
#include "model/names.h"
#include "near.h"
#include "schedule/plan.h"
#include "schedule/weather/boards.h"
#include "weather_sample.h"

using model::WeatherLimit;
using namespace weather;
using base::LocalTime;

namespace {

constexpr std::chrono::days day{1};

/// A product for boards of up to 18 %: at 20 C and 65 % washed boards come down to it in 36 hours.
model::Product usualProduct() {
  model::Product p = fixtures::sampleProduct();
  p.limits.moistureMax = base::Share::whole(18);
  return p;
}

/// Still air; so many millimetres fall in each of some hours, counted from the first midnight.
AirOfHour rainIn(std::map<int, double> millimetres, double celsius = 20, double humidity = 65) {
  return [=](int hour) {
    model::Air air = still(celsius, humidity, 1);
    if (const auto found = millimetres.find(hour); found != millimetres.end()) air.rain = found->second;
    return air;
  };
}

/// Hours from the first midnight during which the first deck is wet from rain.
std::vector<int> wetHours(const model::JobInputs& c, int days) {
  std::vector<int> wet;
  for (const auto& h : schedule::fitHours(c, summerDay(), summerDay() + days * day)) {
    if (h.deck == 0 && isFor(h, WeatherLimit::Wet))
      wet.push_back(static_cast<int>((h.at.day - summerDay()).count()) * 24 + h.at.minutes / 60);
  }
  return wet;
}

std::vector<int> range(int from, int until) {
  std::vector<int> hours;
  for (int hour = from; hour < until; ++hour) hours.push_back(hour);
  return hours;
}

model::Plan planned(const model::JobInputs& c) {
  const auto& content = fixtures::sampleContent();
  base::Diagnostics messages;
  return schedule::makePlan(c, content, estimate::makeEstimate(c, content), messages);
}

}  // namespace

TEST_CASE("a dry hour right after rain is not fit: boards dry as long as after washing") {
  const model::Product product = usualProduct();
  model::JobInputs c = summerCase(rainIn({{6, 2}}), 4);
  c.product = &product;
  CHECK(schedule::washedWoodHours(0, 20, 65, 18) == near(36));
  CHECK(wetHours(c, 4) == range(6, 7 + 36));
  const auto after = hourAt(c, summerDay(), 7);
  CHECK_FALSE(after.isFit);
  CHECK(after.reasons == std::vector{WeatherLimit::Wet});
  CHECK(after.air.rain == 0);
  CHECK(hourAt(c, summerDay(), 5).reasons == std::vector{WeatherLimit::RainBefore, WeatherLimit::Dark});
  CHECK(hourAt(c, summerDay() + day, 18).reasons == std::vector{WeatherLimit::Wet});
  CHECK(hourAt(c, summerDay() + day, 19).isFit);
}

TEST_CASE("boards wet from rain need a day in warm dry air, and far longer in cold air") {
  const model::Product product = usualProduct();
  // At 30 C and 30 % wood settles at 6 %: 32.8 x ln(24 / 12) = 23 h, but never less than 24.
  model::JobInputs warm = summerCase(rainIn({{6, 2}}, 30, 30), 3);
  warm.product = &product;
  CHECK(*schedule::washedWoodHours(0, 30, 30, 18) < 24);
  CHECK(wetHours(warm, 3) == range(6, 7 + 24));
  // Ten kelvin colder doubles it: 72 h and a little, for colder wood also settles a little moister.
  model::JobInputs cold = summerCase(rainIn({{6, 2}}, 10, 65), 6);
  cold.product = &product;
  const auto wet = wetHours(cold, 6);
  CHECK(wet.size() >= 1 + 72);
  CHECK(wet.size() <= 1 + 76);
}

TEST_CASE("drizzle of less than half a millimetre in a day keeps boards wet for two hours only") {
  const model::Product product = usualProduct();
  const auto wet = [&](std::map<int, double> millimetres) {
    model::JobInputs c = summerCase(rainIn(std::move(millimetres)), 4);
    c.product = &product;
    return wetHours(c, 4);
  };
  CHECK(wet({{6, 0.4}}) == range(6, 9));
  CHECK(wet({{6, 0.2}, {7, 0.2}}) == range(6, 10));
  CHECK(wet({{6, 0.5}}) == range(6, 7 + 36));
  CHECK(wet({{6, 0.1}, {7, 0.1}, {8, 0.1}, {9, 0.1}, {10, 0.1}}) == range(6, 11 + 36));
  // Twice 0.3 mm: within 24 hours they are 0.6, apart they are two drizzles.
  CHECK(wet({{6, 0.3}, {20, 0.3}}).back() == 20 + 36);
  CHECK(wet({{6, 0.3}, {31, 0.3}}) == std::vector{6, 7, 8, 31, 32, 33});
  CHECK(wet({}).empty());
}

TEST_CASE("rain on wet boards starts their drying anew") {
  const model::Product product = usualProduct();
  model::JobInputs c = summerCase(rainIn({{6, 2}, {30, 1}}), 4);
  c.product = &product;
  CHECK(wetHours(c, 4) == range(6, 31 + 36));
}

TEST_CASE("rain does not wet a covered area beside an open one") {
  model::JobInputs c = summerCase(rainIn({{6, 5}, {7, 5}}), 3);
  c.job.areas[1].isCovered = true;
  for (const auto& h : schedule::fitHours(c, summerDay(), summerDay() + 2 * day)) {
    CAPTURE(base::isoTime(h.at), h.deck);
    CHECK(isFor(h, WeatherLimit::Wet) == (h.deck == 0 && h.at >= LocalTime{summerDay(), 6 * 60}));
  }
}

TEST_CASE("rain dries the same by steps of a quarter, one and three hours") {
  const model::Product product = usualProduct();
  for (const int minutes : {15, 60, 180}) {
    model::JobInputs c = summerCase(rainIn({}), 1);
    c.product = &product;
    c.job.forecast = {};
    c.job.forecast.file = "forecast.csv";
    c.job.forecast.stepMinutes = minutes;
    c.job.forecast.from = schedule::localToUtc(c.job.site.timezone, {summerDay(), 0});
    for (int at = 0; at < 4 * 24 * 60; at += minutes) {
      model::Air air = still(20, 65, 1);
      if (at >= 6 * 60 && at < 9 * 60) air.rain = 0.6 * minutes / 180;  // rain of three hours, 0.6 mm
      c.job.forecast.steps.push_back(air);
    }
    CAPTURE(minutes);
    const auto wet = wetHours(c, 4);
    REQUIRE_FALSE(wet.empty());
    CHECK(wet.front() == 6);
    CHECK(wet.back() == 9 + 36 - 1);
  }
}

TEST_CASE("boards wet at the end of a forecast stay so in usual and in unknown weather") {
  const model::Product product = usualProduct();
  model::JobInputs c = summerCase(rainIn({{23, 2}}), 1);
  c.product = &product;
  CHECK(wetHours(c, 5) == range(23, 24 + 48));  // common practice: 48 h at the most
  c.job.normals.months.assign(12, {20, 20, 65, 1, 2, 8});
  CHECK(wetHours(c, 5) == range(23, 24 + 36));
  // The calendar heeds it where the rest goes by the clock.
  c.job.normals = {};
  c.job.work = {model::Work::Oil};
  for (const auto& shift : planned(c).shifts) {
    if (shift.task == "oil") CHECK(shift.start.day >= summerDay() + 3 * day);
  }
  // Usual weather alone knows no rain, so no boards are wet.
  c.job.normals.months.assign(12, {20, 20, 65, 1, 2, 8});
  c.job.forecast = {};
  CHECK(wetHours(c, 5).empty());
}

TEST_CASE("an hour is as wet whatever day the question begins with") {
  const model::Product product = usualProduct();
  model::JobInputs c = summerCase(rainIn({{6, 2}}, 5, 70), 8);
  c.product = &product;
  const auto all = schedule::fitHours(c, summerDay(), summerDay() + 8 * day);
  for (int from = 1; from < 8; ++from) {
    for (const auto& h : schedule::fitHours(c, summerDay() + from * day, summerDay() + 8 * day)) {
      const auto same = std::find_if(all.begin(), all.end(), [&](const auto& other) {
        return other.at == h.at && other.deck == h.deck;
      });
      REQUIRE(same != all.end());
      CHECK(same->reasons == h.reasons);
    }
  }
}

TEST_CASE("a coat waits for the boards to dry after rain, on a covered area it does not", "[plan]") {
  const model::Product product = usualProduct();
  // Rain until seven on Tuesday; 36 hours later it is seven in the evening of Wednesday.
  model::JobInputs c = summerCase(rainIn({{5, 3}, {6, 3}}), 8);
  c.product = &product;
  c.job.work = {model::Work::Oil};
  c.job.areas.pop_back();
  const auto coated = [](const model::JobInputs& job) {
    for (const auto& e : planned(job).events) {
      if (model::nameOf(e) == "coat_1_start") return e.at.day;
    }
    throw std::logic_error("no coat");
  };
  CHECK(coated(c) == summerDay() + 2 * day);
  c.job.areas[0].isCovered = true;
  CHECK(coated(c) == summerDay());
  c.job.areas[0].isCovered = false;
  c.job.forecast = hourly(summerDay(), 8, rainIn({{5, 0.2}, {6, 0.2}}));
  CHECK(coated(c) == summerDay());
}

TEST_CASE("nobody sands in the rain, not even in a drizzle that wets no boards", "[plan]") {
  const model::Product product = usualProduct();
  const auto sanded = [&](std::map<int, double> millimetres) {
    model::JobInputs c = summerCase(rainIn(std::move(millimetres)), 8);
    c.product = &product;
    c.job.work = {model::Work::Sand, model::Work::Oil};
    c.job.areas.pop_back();
    std::vector<std::pair<LocalTime, LocalTime>> all;
    for (const auto& shift : planned(c).shifts) {
      if (shift.task == "sand") all.emplace_back(shift.start, shift.end);
    }
    REQUIRE_FALSE(all.empty());
    return all;
  };
  CHECK(sanded({}).front().first.day == summerDay());
  std::map<int, double> drizzle;
  for (int hour = 7; hour < 11; ++hour) drizzle[hour] = 0.1;
  for (const auto& [from, until] : sanded(drizzle)) {
    const bool isDry = from.day > summerDay() || from.minutes >= 11 * 60 || until.minutes <= 7 * 60;
    CHECK(isDry);
  }
}

TEST_CASE("rain after washing makes the boards wait from the rain on, drizzle does not", "[plan]") {
  const model::Product product = usualProduct();
  const auto sandedAfterWash = [&](std::map<int, double> millimetres) {
    model::JobInputs c = summerCase(rainIn(std::move(millimetres)), 10);
    c.product = &product;
    c.job.areas.pop_back();
    std::optional<LocalTime> washed, next;
    for (const auto& shift : planned(c).shifts) {
      if (shift.task == "wash") washed = shift.end;
      else if (washed && shift.deck && !next) next = shift.start;
    }
    REQUIRE(next);
    return std::pair{*washed, *next};
  };
  // Washed on Tuesday before noon: dry 36 h later, in the night to Thursday.
  const auto [washed, dry] = sandedAfterWash({});
  CHECK(washed.day == summerDay());
  CHECK(dry.day == summerDay() + 2 * day);
  // Rain until ten on Wednesday: 36 h later it is Thursday 22:00, so work goes on on Friday.
  CHECK(sandedAfterWash({{33, 2}}).second.day == summerDay() + 3 * day);
  CHECK(sandedAfterWash({{33, 0.3}}).second == dry);
}
