#include "forecast/clock.h"

#include "schedule/weather/zone.h"

#include <map>

namespace forecast {
namespace {

base::LocalTime localOf(Time clock) {
  const base::Date day = std::chrono::floor<std::chrono::days>(clock);
  return {day, static_cast<int>(std::chrono::duration_cast<std::chrono::minutes>(clock - day).count())};
}

/// The step that most lines keep to; 0 where no line comes after another.
std::chrono::seconds commonStep(const std::vector<ClockTime>& times) {
  std::map<std::chrono::seconds, int> counts;
  for (std::size_t i = 1; i < times.size(); ++i) {
    if (times[i].clock > times[i - 1].clock) ++counts[times[i].clock - times[i - 1].clock];
  }
  std::chrono::seconds best{0};
  for (const auto& [step, count] : counts) {
    if (best == std::chrono::seconds{0} || count > counts[best]) best = step;
  }
  return best;
}

}  // namespace

std::vector<Time> momentsOf(const std::vector<ClockTime>& times, const std::string& zone,
                            const std::string& file, base::Diagnostics& messages) {
  const std::chrono::seconds step = commonStep(times);
  std::vector<Time> moments;
  for (const ClockTime& each : times) {
    const base::LocalTime local = localOf(each.clock);
    Time t = schedule::localToUtc(zone, local);
    if (schedule::utcToLocal(zone, t) != local)
      messages.error({file, each.line, 1}, "time",
                     "'" + base::isoTime(local) + "' is left out by the clocks in " + zone,
                     "leave the line out");
    if (!moments.empty()) {
      const Time second = schedule::lastLocalToUtc(zone, local);
      if (t <= moments.back() || second - moments.back() == step) t = second;
    }
    moments.push_back(t);
  }
  return moments;
}

}  // namespace forecast
