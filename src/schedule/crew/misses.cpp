#include "schedule/crew/misses.h"

#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

/// The first day from 'from' on, within a year, with hours that hold a coat in the weather that is usual.
std::optional<base::Date> nearestFit(const SessionMaker& maker, const Lay& lay, base::Date from) {
  const int wanted = std::min(lay.deck->minutes(lay.coat), 4 * 60);
  for (base::Date day = from; day < from + days{366}; day += days{1}) {
    if (!maker.calendar().isWorkday(day)) continue;
    for (const auto& span : maker.open().on(day, lay.deck->deck, Heed::All)) {
      if (maker.calendar().workable(span) >= wanted) return day;
    }
  }
  return {};
}

bool isInFitHours(const SessionMaker& maker, const Lay& lay) {
  return std::all_of(lay.strokes.begin(), lay.strokes.end(), [&](const model::Shift& stroke) {
    const auto& spans = maker.open().on(stroke.start.day, lay.deck->deck, Heed::All);
    return std::any_of(spans.begin(), spans.end(), [&](const Span& s) {
      return s.from <= stroke.start.minutes && stroke.end.minutes <= s.until;
    });
  });
}

/// Why the second of two coats does not fall into the ideal window.
void giveReason(model::WindowViolation& miss, const Lay& before, const Lay& lay, bool tookDays,
                const SessionMaker& maker) {
  miss.why = model::WindowViolation::Why::CoatingHours;
  if (tookDays) {
    miss.why = model::WindowViolation::Why::LargeDeck;
    return;
  }
  const auto& times = maker.job().product->times;
  const auto& zone = maker.job().job.site.timezone;
  miss.gate = maker.open().trouble(lay.deck->deck, after(zone, before.end(), times.recoatIdealFrom),
                                   after(zone, before.end(), times.recoatIdealTo));
  if (miss.gate) {
    miss.why = model::WindowViolation::Why::Weather;
    return;
  }
  for (base::Date d = before.end().day + days{1}; d < lay.start().day; d += days{1}) {
    if (!maker.calendar().isWorkday(d)) miss.why = model::WindowViolation::Why::DaysOff;
  }
}

}  // namespace

std::optional<model::WindowViolation> missOf(const Lay* before, const Lay& lay, const SessionMaker& maker) {
  const auto& t = maker.job().product->times;
  model::WindowViolation miss;
  miss.deck = lay.deck->deck;
  miss.coat = static_cast<int>(lay.coat) + 1;
  miss.isUnfit = !isInFitHours(maker, lay);
  bool isMissed = miss.isUnfit;
  if (before) {
    const Waits waits = waitsBetween(*before, lay, maker.calendar(), maker.job().job.site.timezone);
    const Window window = windowOf(waits, t);
    miss.isLate = waits.most > t.recoatIdealTo;
    miss.gap = miss.isLate ? waits.most : waits.least;
    miss.isPastMax = window == Window::Missed;
    isMissed = isMissed || window != Window::Ideal;
    if (window != Window::Ideal) giveReason(miss, *before, lay, waits.tookDays, maker);
  }
  if (!isMissed) return {};
  if (miss.isUnfit) {
    miss.why = model::WindowViolation::Why::Weather;
    miss.gate = maker.open().trouble(miss.deck, {lay.start().day, 0}, {lay.start().day + days{14}, 0});
    miss.nearest = nearestFit(maker, lay, lay.start().day);
  }
  return miss;
}

}  // namespace schedule
