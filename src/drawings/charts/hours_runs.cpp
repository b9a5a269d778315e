#include "drawings/charts/hours_runs.h"

#include <algorithm>

namespace drawings {

namespace {

using model::WeatherLimit;

/// Adds a run, or makes the last one longer.
void add(std::vector<Run>& runs, const Run& run) {
  if (run.at.from >= run.at.until) return;
  Run* last = runs.empty() ? nullptr : &runs.back();
  const bool isAlike =
      last && last->at.until == run.at.from && last->isFit == run.isFit && last->reason == run.reason;
  if (isAlike) last->at.until = run.at.until;
  else runs.push_back(run);
}

/// The part of a dark hour in which it is dark.
Span darkOf(const Span& hour, const HoursDay& day) {
  const auto lies = [&](const std::optional<int>& minute) {
    return minute && *minute > hour.from && *minute < hour.until;
  };
  if (lies(day.sunrise) == lies(day.sunset)) return hour;
  return lies(day.sunrise) ? Span{hour.from, *day.sunrise} : Span{*day.sunset, hour.until};
}

std::optional<WeatherLimit> reasonBesideDark(const std::vector<WeatherLimit>& reasons) {
  const auto other =
      std::find_if(reasons.begin(), reasons.end(), [](WeatherLimit g) { return g != WeatherLimit::Dark; });
  return other == reasons.end() ? std::nullopt : std::optional(*other);
}

}  // namespace

std::vector<Run> runsOf(const std::vector<model::Hour>& hours, const HoursDay& day) {
  std::vector<Run> runs;
  for (const auto& hour : hours) {
    const Span all = {std::max(hour.at.minutes, day.from * 60),
                      std::min(hour.at.minutes + 60, day.until * 60)};
    const auto other = reasonBesideDark(hour.reasons);
    const bool isDark =
        std::find(hour.reasons.begin(), hour.reasons.end(), WeatherLimit::Dark) != hour.reasons.end();
    if (!isDark) {
      add(runs, {all, hour.isFit, other});
      continue;
    }
    const Span dark = darkOf(all, day);
    add(runs, {{all.from, dark.from}, false, other});
    add(runs, {dark, false, WeatherLimit::Dark});
    add(runs, {{dark.until, all.until}, false, other});
  }
  return runs;
}

Span freePart(const Run& run, const std::vector<CoatSpan>& coats) {
  std::vector<CoatSpan> inOrder = coats;
  std::sort(inOrder.begin(), inOrder.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
  Span best = {run.at.from, run.at.from}, part = best;
  const auto end = [&](int until) {
    part.until = std::min(until, run.at.until);
    if (part.until - part.from > best.until - best.from) best = part;
  };
  for (const auto& coat : inOrder) {
    end(coat.from);
    part.from = std::max(part.from, coat.until);
  }
  end(run.at.until);
  return best;
}

Hatch hatchOf(const Run& run) {
  if (run.isFit) return Hatch::Wood;
  if (!run.reason) return Hatch::Plain;
  switch (*run.reason) {
    case WeatherLimit::AirHot:
    case WeatherLimit::BoardsHot:
      return Hatch::Slash;
    case WeatherLimit::Damp:
    case WeatherLimit::Moisture:
      return Hatch::Backslash;
    case WeatherLimit::Dew:
    case WeatherLimit::DewBefore:
      return Hatch::Dashes;
    case WeatherLimit::Rain:
    case WeatherLimit::Wet:
    case WeatherLimit::RainBefore:
      return Hatch::Crossed;
    case WeatherLimit::AirCold:
      return Hatch::Upright;
    case WeatherLimit::Wind:
      return Hatch::Tight;
    case WeatherLimit::Dark:
      return Hatch::Level;
    case WeatherLimit::Unknown:
      return Hatch::Tint;
  }
  throw std::logic_error("internal error: no such gate");
}

}  // namespace drawings
