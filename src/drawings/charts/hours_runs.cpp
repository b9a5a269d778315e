#include "drawings/charts/hours_runs.h"

#include <algorithm>

namespace drawings {

namespace {

using model::WeatherLimit;

/// Adds a part, or makes the last one longer.
void add(std::vector<HoursPart>& parts, const HoursPart& part) {
  if (part.at.from >= part.at.until) return;
  HoursPart* last = parts.empty() ? nullptr : &parts.back();
  const bool isAlike = last && last->at.until == part.at.from && last->kind == part.kind &&
                       (isFit(part.kind) || last->reason == part.reason);
  if (isAlike) last->at.until = part.at.until;
  else parts.push_back(part);
}

/// A part that is fit for the weather, cut where the last start and the last stroke lie.
void addFit(std::vector<HoursPart>& parts, const Span& at, const HoursDay& day) {
  const int lastStroke = std::clamp(day.lastStroke.value_or(at.until), at.from, at.until);
  const int lastStart = std::clamp(day.lastStart.value_or(lastStroke), at.from, lastStroke);
  add(parts, {{at.from, lastStart}, HoursPart::Kind::Fit, {}});
  add(parts, {{lastStart, lastStroke}, HoursPart::Kind::ToFinish, {}});
  add(parts, {{lastStroke, at.until}, HoursPart::Kind::TooLate, {}});
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

std::vector<HoursPart> partsOf(const std::vector<model::Hour>& hours, const HoursDay& day) {
  std::vector<HoursPart> parts;
  for (const auto& hour : hours) {
    const Span all = {std::max(hour.at.minutes, day.from * 60),
                      std::min(hour.at.minutes + 60, day.until * 60)};
    if (all.from >= all.until) continue;
    const auto other = reasonBesideDark(hour.reasons);
    const bool isDark =
        std::find(hour.reasons.begin(), hour.reasons.end(), WeatherLimit::Dark) != hour.reasons.end();
    constexpr auto unfit = HoursPart::Kind::Unfit;
    if (!isDark) {
      if (hour.isFit) addFit(parts, all, day);
      else add(parts, {all, unfit, other});
      continue;
    }
    const Span dark = darkOf(all, day);
    add(parts, {{all.from, dark.from}, unfit, other});
    add(parts, {dark, unfit, WeatherLimit::Dark});
    add(parts, {{dark.until, all.until}, unfit, other});
  }
  return parts;
}

}  // namespace drawings
