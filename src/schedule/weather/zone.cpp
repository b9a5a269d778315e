#include "schedule/weather/zone.h"

#include <date/tz.h>

namespace schedule {
namespace {

using std::chrono::duration_cast;
using std::chrono::minutes;

date::sys_seconds toSys(const date::time_zone& zone, base::LocalTime t,
                        date::choose which = date::choose::earliest) {
  const date::local_seconds local{t.day.time_since_epoch() + minutes{t.minutes}};
  return zone.to_sys(local, which);
}

base::LocalTime toLocal(const date::time_zone& zone, date::sys_seconds t) {
  const auto local = zone.to_local(t);
  const auto day = date::floor<date::days>(local);
  return {base::Date{std::chrono::days{day.time_since_epoch().count()}},
          static_cast<int>(duration_cast<minutes>(local - day).count())};
}

}  // namespace

bool isZone(const std::string& name) {
  // The name becomes a path: no dots, no spaces.
  const bool isName =
      !name.empty() && name.size() <= 60 && name.front() != '/' &&
      name.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789/_+-") ==
          std::string::npos;
  if (!isName) return false;
  try {
    return date::locate_zone(name) != nullptr;
  } catch (const std::runtime_error&) {
    return false;
  }
}

std::chrono::sys_seconds localToUtc(const std::string& zone, base::LocalTime local) {
  return toSys(*date::locate_zone(zone), local);
}

std::chrono::sys_seconds lastLocalToUtc(const std::string& zone, base::LocalTime local) {
  return toSys(*date::locate_zone(zone), local, date::choose::latest);
}

base::LocalTime utcToLocal(const std::string& zone, std::chrono::sys_seconds utc) {
  return toLocal(*date::locate_zone(zone), utc);
}

base::LocalTime ZoneClock::at(std::chrono::sys_seconds utc) {
  if (utc < from_ || utc >= until_) {
    const auto info = date::locate_zone(zone_)->get_info(utc);
    from_ = info.begin;
    until_ = info.end;
    offset_ = info.offset;
  }
  const auto local = utc + offset_;
  const auto day = std::chrono::floor<std::chrono::days>(local);
  return {day, static_cast<int>(duration_cast<minutes>(local - day).count())};
}

base::LocalTime after(const std::string& zone, base::LocalTime from, base::Hours hours) {
  const auto& z = *date::locate_zone(zone);
  const auto wait = minutes{base::divide(base::Wide{hours.millionths} * 60, 1'000'000, base::Round::Up)};
  return toLocal(z, toSys(z, from) + wait);
}

base::Hours between(const std::string& zone, base::LocalTime from, base::LocalTime to) {
  const auto& z = *date::locate_zone(zone);
  const auto seconds = (toSys(z, to) - toSys(z, from)).count();
  return {base::mulDiv(seconds, 1'000'000, 3600, base::Round::HalfUp)};
}

int utcOffset(const std::string& zone, base::LocalTime at) {
  const auto& z = *date::locate_zone(zone);
  return static_cast<int>(duration_cast<minutes>(z.get_info(toSys(z, at)).offset).count());
}

std::string abbreviation(const std::string& zone, base::LocalTime at) {
  const auto& z = *date::locate_zone(zone);
  return z.get_info(toSys(z, at)).abbrev;
}

}  // namespace schedule
