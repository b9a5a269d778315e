// Wall-clock times at a place: how long a night with a change of the clocks really is. By the tz database.
#pragma once

#include "base/date.h"
#include "base/units.h"

#include <chrono>
#include <string>

namespace schedule {

bool isZone(const std::string& name);

/// The moment of a wall-clock time. An hour that happens twice means its first time; one that is skipped
/// means the moment of the change.
std::chrono::sys_seconds localToUtc(const std::string& zone, base::LocalTime local);

/// The same, but an hour that happens twice means its second time.
std::chrono::sys_seconds lastLocalToUtc(const std::string& zone, base::LocalTime local);

/// The wall clock at a moment, its seconds dropped.
base::LocalTime utcToLocal(const std::string& zone, std::chrono::sys_seconds utc);

/// utcToLocal for many moments near each other: the zone's table is asked once for as long as it holds.
class ZoneClock {
 public:
  explicit ZoneClock(const std::string& zone) : zone_(zone) {}
  base::LocalTime at(std::chrono::sys_seconds utc);

 private:
  std::string zone_;
  std::chrono::sys_seconds from_, until_;  // the offset holds between them
  std::chrono::seconds offset_{};
};

/// The wall clock so many hours after a wall-clock time. An hour that happens twice counts from its first
/// time; one that is skipped counts from the moment of the change.
base::LocalTime after(const std::string& zone, base::LocalTime from, base::Hours hours);

/// True hours from one wall-clock time to another.
base::Hours between(const std::string& zone, base::LocalTime from, base::LocalTime to);

/// Minutes the local clock is ahead of UTC at that moment.
int utcOffset(const std::string& zone, base::LocalTime at);

/// What the clock is called there at that moment: 'NZST', 'EDT'.
std::string abbreviation(const std::string& zone, base::LocalTime at);

}  // namespace schedule
