// What must hold for the plan of any job in any weather: it ends, each part of a coat is laid in one go, and
// nothing is done to a coat that is not yet touch dry. A plan that looked at more days than any job takes
// would end with an internal error, and so fail here. 'RANDOM_TIMES=20' tries 10,000 jobs.
#include "plan_cases.h"

#include "schedule/weather/boards.h"
#include "schedule/weather/weather_at.h"

#include <catch2/catch.hpp>

using namespace plan_cases;

namespace {

/// Days that are much alike, with wind and rain now and then; steps of three hours.
Forecast anyForecast(base::Date start, const std::string& zone) {
  Forecast f;
  f.file = "forecast.csv";
  f.stepMinutes = 180;
  f.from = schedule::localToUtc(zone, {start - std::chrono::days{within(-2, 2)}, 0});
  for (int day = within(1, 12); day > 0; --day) {
    const double celsius = within(2, 34), humidity = within(30, 95), cloud = within(0, 10) / 10.0;
    const int windFrom = within(0, 24), windUntil = within(0, 24), rainFrom = within(0, 60);
    const auto count = static_cast<int>(f.steps.size());
    for (int step = count; step < count + 8; ++step) {
      const int hour = step % 8 * 3;
      Air air{celsius + (hour >= 9 && hour < 20 ? 4 : -4), humidity, cloud, 2, 0};
      if (hour >= windFrom && hour < windUntil) air.wind = 12;
      if (hour >= rainFrom && hour < rainFrom + 5) air.rain = 0.4;
      f.steps.push_back(air);
    }
  }
  return f;
}

Normals anyNormals() {
  Normals n;
  n.source = "invented";
  const double warmest = within(20, 30);
  for (int month = 0; month < 12; ++month)
    n.months.push_back({warmest - 10 - month % 6, warmest - month % 6, within(45, 70) * 1.0, 0.5, 3, 8});
  return n;
}

void addWeather(Scene& s) {
  auto& site = s.c.job.site;
  site.latitudeMicro = within(-60, 65) * std::int64_t{1'000'000} + 1;
  site.longitudeMicro = within(-170, 170) * std::int64_t{1'000'000};
  s.product.limits = {base::Temperature::whole(within(2, 8)),   base::Temperature::whole(within(28, 38)),
                      base::Temperature::whole(within(30, 45)), base::Share::whole(within(75, 95)),
                      base::Share::whole(within(16, 20)),       {}};
  if (flip()) s.product.limits.windMax = base::Count::whole(7);
  s.product.times.rainSafe = s.product.times.touchDry + threes(0, 200);
  if (within(0, 3) > 0) s.c.job.forecast = anyForecast(s.c.job.start, s.c.job.site.timezone);
  if (flip()) s.c.job.normals = anyNormals();
  for (auto& area : s.c.job.areas) {
    area.isCovered = within(0, 3) == 0;
    if (within(0, 3) == 0) area.sun = ClockSpan{9 * 60, 15 * 60};
  }
}

std::string errorsOf(const base::Diagnostics& messages) {
  std::string all;
  for (const auto& m : messages.all()) {
    if (m.severity == base::Severity::Error) all += base::format(m);
  }
  return all;
}

/// The hours of the data sheet that a coat has dried between two moments, a quarter of an hour at a time.
double driedBetween(const Scene& s, LocalTime from, LocalTime until) {
  const auto& zone = s.c.job.site.timezone;
  schedule::Weather weather(s.c);
  double dried = 0;
  for (auto t = schedule::localToUtc(zone, from); t < schedule::localToUtc(zone, until);
       t += std::chrono::minutes{15}) {
    const auto known = weather.at(t);
    const bool isKnown = known.source != WeatherSource::None;
    dried += 0.25 / (isKnown ? schedule::dryingHours(1, known.air.celsius, known.air.humidity) : 1);
  }
  return dried;
}

void nothingComesTooSoon(const Scene& s, const Plan& plan) {
  const double touchDry = static_cast<double>(s.product.times.touchDry.millionths) / 1e6;
  const double slack = 0.3 + touchDry / 100;  // h: the plan takes the air by the hour
  for (const auto& coat : plan.coats) {
    for (const auto& shift : plan.shifts) {
      const bool isNext = isForCoat(shift) && shift.deck == coat.deck && shift.part == coat.part &&
                          shift.pass == coat.coat + 1;
      if (isNext) RC_ASSERT(driedBetween(s, coat.end, shift.start) >= touchDry - slack);
    }
  }
}

/// Sanded for exactly where a coat comes too late.
void lateCoatsAreSanded(const Scene& s, const Plan& plan) {
  for (const auto& line : s.e.lateCoats) {
    const bool isLate = std::any_of(plan.misses.begin(), plan.misses.end(), [&](const WindowViolation& m) {
      return m.isPastMax && m.deck == line.deck && m.coat == line.pass;
    });
    const bool isSanded = std::any_of(plan.shifts.begin(), plan.shifts.end(), [&](const Shift& shift) {
      return shift.task == line.task && shift.deck == line.deck && shift.pass == line.pass;
    });
    RC_ASSERT(isLate == isSanded);
  }
}

}  // namespace

TEST_CASE("for any plan in any weather it ends, every part laid in one go, on dry coats", "[plan]") {
  holdsAlways(500,
              [] {
                Scene s;
                fill(s);
                addWeather(s);
                base::Diagnostics messages;
                const Plan plan = schedule::makePlan(s.c, s.content, s.e, messages);
                RC_ASSERT(errorsOf(messages) == "");
                RC_CLASSIFY(!s.c.job.forecast.steps.empty(), "forecast");
                RC_CLASSIFY(!s.c.job.normals.months.empty(), "usual weather");
                RC_CLASSIFY(!plan.misses.empty(), "waits beside the window");
                for (const auto& coat : plan.coats) RC_ASSERT(coat.start.day == coat.end.day);
                nothingComesTooSoon(s, plan);
                lateCoatsAreSanded(s, plan);
              },
              {"forecast", "usual weather", "waits beside the window"});
}
