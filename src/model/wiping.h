// When what is left on the boards is wiped off, a while after each strip is laid.
#pragma once

#include "model/lookup.h"
#include "model/plan.h"

#include <optional>

namespace model {

/// Clock minutes after the stroke, rounded up; 0 for a product that is not wiped.
inline int wipeOffMinutes(const ProductTimes& times) {
  return static_cast<int>(
      base::divide(base::Wide{times.wipeOff.millionths} * 60, 1'000'000, base::Round::Up));
}

/// From the first strip that is wiped on a day to the last. Nothing on a day without, or for a product that
/// is not wiped.
inline std::optional<ClockSpan> wipingOn(const Plan& plan, const Content& content, base::Date day) {
  std::optional<ClockSpan> span;
  for (const auto& shift : plan.shifts) {
    if (shift.start.day != day || !taskOf(content, shift.task).isWiping) continue;
    const ClockSpan wiped{shift.start.minutes, shift.end.minutes};
    span = span ? ClockSpan{std::min(span->from, wiped.from), std::max(span->until, wiped.until)} : wiped;
  }
  return span;
}

}  // namespace model
