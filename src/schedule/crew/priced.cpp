#include "schedule/crew/priced.h"

#include "schedule/weather/zone.h"

#include <tuple>

namespace schedule {
namespace {

/// Of a coat's day that the forecast does not reach: now and then it rains, and everyone has come for an hour
/// in vain. That hour is our own choice.
std::int64_t rainCost(const DayPlan& day, const Work& work, const Desk& desk, const Rates& rates) {
  const auto& months = desk.c.job.normals.months;
  if (day.strips.empty() || months.empty() || desk.c.job.forecast.file.empty()) return 0;
  const auto& first = day.strips.front();
  const auto* hour = desk.open.hourAt({day.date, first.firstStroke()}, work.units[first.unit].deck);
  if (!hour || hour->source != model::WeatherSource::Normals) return 0;
  constexpr int daysOfMonth = 30;
  const auto month = unsigned{std::chrono::year_month_day{day.date}.month()};
  return (rates.visit + rates.hour * day.people) * months[month - 1].rainDays / daysOfMonth;
}

}  // namespace

Rates ratesOf(const model::Rates& rates) {
  constexpr std::int64_t usualHour = 4000;
  if (rates.labourCostPerHour.minor <= 0) return {usualHour, usualHour};
  return {rates.labourCostPerHour.minor, rates.travelPerDay.minor};
}

bool Priced::isBetterThan(const Priced& other) const {
  const auto orderOf = [](const Priced& p) {
    return std::tie(p.unfit, p.unlicensed, p.overworked, p.schedule.unreached, p.schedule.late, p.cost,
                    p.outside, p.finish);
  };
  return orderOf(*this) < orderOf(other);
}

Priced priced(Schedule schedule, const Work& work, const Desk& desk) {
  Priced p;
  const Rates rates = ratesOf(desk.c.rates);
  for (const auto& day : schedule.days) {
    p.personMinutes += std::int64_t{day.home - day.arrive} * day.people;
    p.overworked += day.overworked;
    p.cost += rainCost(day, work, desk, rates);
  }
  p.cost += rates.visit * static_cast<std::int64_t>(schedule.days.size()) + rates.hour * p.personMinutes / 60;
  constexpr int week = 7;
  for (std::size_t i = 1; i < schedule.days.size(); ++i) {
    const auto gap = (schedule.days[i].date - schedule.days[i - 1].date).count();
    p.leftAlone += std::max(0, static_cast<int>(gap) - week);
  }
  p.cost += rates.hour * p.leftAlone;  // our own choice: a day that the customer waits, for an hour of work
  const auto& zone = desk.c.job.site.timezone;
  p.finish = schedule.end();
  if (!schedule.coats.empty()) p.finish = {};
  for (const auto& coat : schedule.coats) {
    p.unfit += coat.heed != Heed::All;
    const auto& laid = work.units[coat.unit].coats[static_cast<std::size_t>(coat.coat - 1)];
    p.unlicensed += coat.isExtra && laid.needsPapers;
    p.finish = std::max(p.finish, coat.end);
    const auto* before = schedule.before(coat);
    if (!before) continue;
    const auto gap = between(zone, before->end, coat.start);
    const auto& times = desk.c.product->times;
    p.outside += gap < times.recoatIdealFrom || gap > times.recoatIdealTo;
  }
  p.schedule = std::move(schedule);
  return p;
}

}  // namespace schedule
