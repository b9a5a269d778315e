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

/// From the first stroke of a day to its last, each so much later. Nothing on a day without a coat, or for a
/// product that is not wiped.
inline std::optional<ClockSpan> wipingOn(const Plan& plan, const Content& content, const ProductTimes& times,
                                         base::Date day) {
  const int wait = wipeOffMinutes(times);
  std::optional<ClockSpan> span;
  for (const auto& shift : plan.shifts) {
    if (wait == 0 || shift.start.day != day || !laysProduct(taskOf(content, shift.task))) continue;
    const ClockSpan wiped{shift.start.minutes + wait, shift.end.minutes + wait};
    span = span ? ClockSpan{std::min(span->from, wiped.from), std::max(span->until, wiped.until)} : wiped;
  }
  return span;
}

}  // namespace model
