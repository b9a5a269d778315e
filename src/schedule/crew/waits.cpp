#include "schedule/crew/waits.h"

#include "schedule/weather/zone.h"

#include <algorithm>

namespace schedule {
namespace {

using base::LocalTime;

/// A deck's work on one coat: how far it has come at each moment.
struct Progress {
  struct Stretch {
    std::int64_t from, until;  // crew minutes since the coat's first stroke
    LocalTime start, end;
  };
  std::vector<Stretch> stretches;  // by day
  std::int64_t total = 0;
  const Calendar& calendar;

  Progress(const Lay& lay, const Calendar& c) : calendar(c) {
    for (const auto& stroke : lay.strokes) {
      const auto minutes = c.workable({stroke.start.minutes, stroke.end.minutes});
      if (!stretches.empty() && stretches.back().end.day == stroke.start.day) {
        stretches.back().until += minutes;
        stretches.back().end = stroke.end;
      } else {
        stretches.push_back({total, total + minutes, stroke.start, stroke.end});
      }
      total += minutes;
    }
  }
  LocalTime within(const Stretch& s, std::int64_t minutes) const {
    if (minutes <= 0) return s.start;
    return calendar.fill(s.start, static_cast<int>(minutes), calendar.day()).front().end;
  }
  /// When the work begins that comes after so many minutes.
  LocalTime begins(std::int64_t minutes) const {
    for (const auto& s : stretches) {
      if (minutes < s.until) return within(s, minutes - s.from);
    }
    return stretches.back().end;
  }
  /// When so many minutes are done.
  LocalTime done(std::int64_t minutes) const {
    for (const auto& s : stretches) {
      if (minutes == s.until) return s.end;
      if (minutes < s.until) return within(s, minutes - s.from);
    }
    return stretches.back().end;
  }
};

}  // namespace

Waits waitsBetween(const Lay& before, const Lay& after, const Calendar& calendar, const std::string& zone) {
  const Progress first(before, calendar), second(after, calendar);
  // Boards are told by how far the coat has come, in parts of first.total x second.total.
  std::vector<std::int64_t> cuts{0};
  for (const auto& s : first.stretches) cuts.push_back(s.until * second.total);
  for (const auto& s : second.stretches) cuts.push_back(s.until * first.total);
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
  Waits waits;
  waits.tookDays = first.stretches.size() > 1 || second.stretches.size() > 1;
  // Where two days end at nearly the same board, what lies between is no part of the deck: a minute's work.
  const std::int64_t minute = std::max(first.total, second.total);
  for (const std::int64_t least : {minute, std::int64_t{1}}) {
    bool isFirst = true;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (cuts[i + 1] - cuts[i] < least) continue;
      const auto wait =
          between(zone, first.done(cuts[i + 1] / second.total), second.begins(cuts[i] / first.total));
      waits.least = isFirst ? wait : std::min(waits.least, wait);
      waits.most = std::max(waits.most, wait);
      isFirst = false;
    }
    if (!isFirst) break;
  }
  return waits;
}

Window windowOf(const Waits& waits, const model::ProductTimes& times) {
  if (waits.most > times.recoatMax) return Window::Missed;
  const bool isIdeal = waits.least >= times.recoatIdealFrom && waits.most <= times.recoatIdealTo;
  return isIdeal ? Window::Ideal : Window::Allowed;
}

}  // namespace schedule
