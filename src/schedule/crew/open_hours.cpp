#include "schedule/crew/open_hours.h"

#include "schedule/weather/boards.h"
#include "schedule/weather/hours.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <array>

namespace schedule {
namespace {

using std::chrono::days;

constexpr days stretch{7};  // read at once

Span inBoth(Span a, Span b) { return {std::max(a.from, b.from), std::min(a.until, b.until)}; }

/// Nothing is known of its weather, not even that it has rained before: it goes by the clock.
bool isByClock(const model::Hour& hour) {
  if (isShutBy(hour, model::WeatherLimit::Wet)) return false;
  return hour.source == model::WeatherSource::None ||
         (hour.reasons.size() == 1 && isShutBy(hour, model::WeatherLimit::Unknown));
}

bool isOpen(const model::Hour& hour, Heed heed) {
  switch (heed) {
    case Heed::All:
      return hour.isFit || (isByClock(hour) && !isShutBy(hour, model::WeatherLimit::Dark));
    case Heed::Forecast:
      return hour.isFit ||
             (hour.source != model::WeatherSource::Forecast && !isShutBy(hour, model::WeatherLimit::Dark));
    case Heed::Clock:
      return true;
  }
  return true;
}

}  // namespace

bool isShutBy(const model::Hour& hour, model::WeatherLimit gate) {
  return std::find(hour.reasons.begin(), hour.reasons.end(), gate) != hour.reasons.end();
}

Span usualHours(const model::Job& job, Span day) {
  if (job.coatingUntil > 0) return inBoth({job.coatingFrom, job.coatingUntil}, day);
  switch (job.site.exposure) {
    case model::Exposure::Sheltered:
      return day;
    case model::Exposure::Open:
      return inBoth({0, 13 * 60}, day);
    case model::Exposure::Coastal:
      return inBoth({9 * 60, 13 * 60}, day);
  }
  return day;
}

OpenHours::OpenHours(const model::JobInputs& c, const Calendar& calendar, base::Date from)
    : c_(c),
      calendar_(calendar),
      moments_(c),
      hasWeather_(!c.job.forecast.steps.empty() || !c.job.normals.months.empty()),
      usual_(usualHours(c.job, calendar.day())),
      bounds_(hasWeather_ && c.job.coatingUntil == 0 ? calendar.day() : usual_),
      first_(from),
      end_(from) {
  // Who works in the afternoon only is not bound to the mornings where the weather is known.
  if (hasWeather_ && usual_.until <= usual_.from) usual_ = bounds_;
}

void OpenHours::readMore(base::Date until) {
  while (end_ < until) {
    const base::Date next = end_ + stretch;
    for (auto& hour : fitHours(c_, end_, next, moments_)) {
      const auto day = static_cast<std::size_t>((hour.at.day - first_).count());
      if (days_.size() <= day) days_.resize(day + 1);
      days_[day].hours.push_back(hours_.size());
      hours_.push_back(std::move(hour));
    }
    end_ = next;
    days_.resize(static_cast<std::size_t>((end_ - first_).count()));
  }
}

OpenHours::Day& OpenHours::dayOf(base::Date day) {
  if (day < first_) throw std::logic_error("internal error: hours before the plan were asked for");
  readMore(day + days{1});
  return days_[static_cast<std::size_t>((day - first_).count())];
}

std::vector<Span> OpenHours::spansOf(const Day& day, std::size_t deck, Heed heed) const {
  std::vector<Span> spans;
  bool isCoated = false;
  for (const std::size_t i : day.hours) {
    const auto& hour = hours_[i];
    if (hour.deck != deck) continue;
    isCoated = true;
    if (!isOpen(hour, heed)) continue;
    const bool goesByClock = !hour.isFit || hour.source == model::WeatherSource::None;
    const Span open = inBoth({hour.at.minutes, hour.at.minutes + 60}, goesByClock ? usual_ : bounds_);
    if (open.until <= open.from) continue;
    if (!spans.empty() && spans.back().until == open.from) spans.back().until = open.until;
    else spans.push_back(open);
  }
  if (!isCoated) spans.push_back(usual_);
  std::erase_if(spans, [](const Span& span) { return span.until <= span.from; });
  return spans;
}

const std::vector<Span>& OpenHours::on(base::Date date, std::size_t deck, Heed heed) {
  Day& day = dayOf(date);
  auto& open = day.open[static_cast<int>(heed)];
  if (open.empty()) {
    for (std::size_t d = 0; d < c_.job.areas.size(); ++d) open.push_back(spansOf(day, d, heed));
  }
  return open.at(deck);
}

const model::Hour* OpenHours::hourAt(base::LocalTime at, std::size_t deck) {
  const auto& day = dayOf(at.day).hours;
  const auto isOver = [&](std::size_t i) { return hours_[i].at.minutes + 60 <= at.minutes; };
  for (auto i = std::partition_point(day.begin(), day.end(), isOver); i != day.end(); ++i) {
    const auto& hour = hours_[*i];
    if (hour.at.minutes > at.minutes) break;
    if (hour.deck == deck) return &hour;
  }
  return nullptr;
}

const std::array<double, 24>& OpenHours::surfaces(base::Date date, std::size_t deck) {
  Day& day = dayOf(date);
  if (day.surfaces.empty()) {
    day.surfaces.resize(c_.job.areas.size());
    for (auto& surfaces : day.surfaces) surfaces.fill(20);
    for (const std::size_t i : day.hours) {
      const auto& hour = hours_[i];
      if (hour.source != model::WeatherSource::None)
        day.surfaces[hour.deck][static_cast<std::size_t>(hour.at.minutes / 60)] = hour.surface;
    }
  }
  return day.surfaces.at(deck);
}

std::optional<model::WeatherLimit> OpenHours::trouble(std::size_t deck, base::LocalTime from,
                                                      base::LocalTime until) {
  std::array<int, static_cast<std::size_t>(model::WeatherLimit::Unknown) + 1> counts{};
  for (base::Date date = from.day; date <= until.day; date += days{1}) {
    if (!calendar_.isWorkday(date)) continue;
    for (const std::size_t i : dayOf(date).hours) {
      const auto& hour = hours_[i];
      const bool isWorked = hour.at.minutes < bounds_.until && bounds_.from < hour.at.minutes + 60;
      if (hour.deck != deck || !isWorked || isByClock(hour) || hour.at < from || hour.at >= until) continue;
      for (const auto gate : hour.reasons) ++counts[static_cast<std::size_t>(gate)];
    }
  }
  const auto most = std::max_element(counts.begin(), counts.end());
  if (*most == 0) return {};
  return static_cast<model::WeatherLimit>(most - counts.begin());
}

base::LocalTime OpenHours::dryAfter(std::size_t deck, base::LocalTime end, base::Hours least) {
  const auto& zone = c_.job.site.timezone;
  const base::LocalTime soonest = after(zone, end, least);
  const double limit = static_cast<double>(c_.product->limits.moistureMax.millionths) / 1e6;
  if (!hasWeather_ || limit <= 0) return soonest;
  constexpr int longest = 14 * 24;
  double dried = 0;  // of the way from wet through to dry
  for (int hour = 0; hour < longest; ++hour) {
    const base::LocalTime t = after(zone, end, base::Hours::whole(hour));
    const model::Hour* air = hourAt(t, deck);
    if (!air) return std::max(soonest, t);
    const bool isKnown = air->source != model::WeatherSource::None;
    const bool isWet = isShutBy(*air, model::WeatherLimit::Wet);  // it has rained since
    if (!isWet && (dried >= 1 || !isKnown)) return std::max(soonest, t);
    if (!isKnown) continue;
    if (const auto hours = washedWoodHours(0, air->air.celsius, air->air.humidity, limit);
        hours && *hours > 0)
      dried += 1 / *hours;
  }
  return soonest;
}

std::vector<model::Hour> OpenHours::hours(base::Date from, base::Date until) {
  readMore(until);
  std::vector<model::Hour> all;
  for (const auto& hour : hours_) {
    if (hour.at.day >= from && hour.at.day < until) all.push_back(hour);
  }
  return all;
}

}  // namespace schedule
