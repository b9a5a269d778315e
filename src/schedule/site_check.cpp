// Whether zone, coordinates and region of a site are of one place. The towns of zones and their countries are
// those of the tz database's zone.tab.
#include "base/joined.h"
#include "base/nearest.h"
#include "base/quantity_words.h"
#include "schedule/plan.h"
#include "schedule/weather/distance.h"
#include "schedule/weather/weather_at.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <optional>

namespace schedule {
namespace {

struct Town {
  std::string country;  // ISO 3166
  Place place;
  std::string zone;
};

/// '+404251' and '-0740023' are degrees, minutes and, where there are more than five digits, seconds.
double degrees(const std::string& s) {
  const std::size_t whole = s.size() % 2 == 0 ? 4 : 3;  // longitudes have three digits
  double d = std::stod(s.substr(1, whole - 1)) + std::stod(s.substr(whole, 2)) / 60;
  if (s.size() > whole + 2) d += std::stod(s.substr(whole + 2)) / 3600;
  return s[0] == '-' ? -d : d;
}

std::vector<Town> readTowns() {
  std::vector<Town> towns;
  std::ifstream in("/usr/share/zoneinfo/zone.tab");
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const auto place = line.find('\t') + 1, zone = line.find('\t', place) + 1;
    const auto east = line.find_first_of("+-", place + 1);
    if (zone == 0 || east == std::string::npos) continue;
    towns.push_back({line.substr(0, 2),
                     {degrees(line.substr(place, east - place)), degrees(line.substr(east, zone - 1 - east))},
                     line.substr(zone, line.find('\t', zone) - zone)});
  }
  return towns;
}

/// Those of one country; of all where it is empty.
std::vector<Town> townsOf(const std::string& country) {
  static const std::vector<Town> all = readTowns();
  std::vector<Town> own;
  for (const Town& t : all) {
    if (country.empty() || t.country == country) own.push_back(t);
  }
  return own;
}

const Town* nearestTown(const std::vector<Town>& towns, Place p) {
  const auto isNearer = [&](const Town& a, const Town& b) {
    return kilometres(a.place, p) < kilometres(b.place, p);
  };
  const auto found = std::min_element(towns.begin(), towns.end(), isNearer);
  return found == towns.end() ? nullptr : &*found;
}

/// A site and what is known of its country.
class SiteCheck {
 public:
  SiteCheck(const model::Job& job, const model::Region& region, base::Diagnostics& messages)
      : job_(job), region_(region), messages_(messages), site_(placeOf(job.site)) {
    const auto dash = region.language.rfind('-');  // en-NZ
    if (dash != std::string::npos) towns_ = townsOf(region.language.substr(dash + 1));
  }

  void run() {
    const std::string& zone = job_.site.timezone;
    if (zone.empty()) return;
    if (zone.find('/') == std::string::npos || !isZone(zone)) {
      std::vector<std::string> names;
      for (const Town& t : townsOf("")) names.push_back(t.zone);
      const std::string near = zone.find('/') == std::string::npos ? "" : base::nearest(zone, names);
      error("site.timezone", "'" + zone + "' is not a known time zone" + base::didYouMean(near), zoneHint());
      return;
    }
    if (towns_.empty()) return;
    const bool isItsClock = checkClock();
    checkPoint(isItsClock);
  }

 private:
  base::SourcePos at(const char* path) const { return base::placeOf(job_.places, path); }
  void error(const char* path, std::string message, std::string hint) {
    messages_.error(at(path), path, std::move(message), std::move(hint));
  }
  void warn(const char* path, std::string message, std::string hint) {
    messages_.warn(at(path), path, std::move(message), std::move(hint));
  }

  base::LocalTime middleOf(unsigned month) const {
    const auto year = std::chrono::year_month_day{job_.start}.year();
    return {std::chrono::sys_days{year / std::chrono::month{month} / 15}, 12 * 60};
  }
  bool isSameClock(const std::string& a, const std::string& b) const {
    return a == b || (utcOffset(a, middleOf(1)) == utcOffset(b, middleOf(1)) &&
                      utcOffset(a, middleOf(7)) == utcOffset(b, middleOf(7)));
  }

  /// The zones that may be meant: those that name their clock so (EST), else the nearest, else the country's.
  std::string zoneHint() const {
    const std::string& word = job_.site.timezone;
    std::vector<std::string> named, all;
    for (const Town& t : towns_) {
      // Zones of a few counties, and those of stations in the ice.
      if (std::count(t.zone.begin(), t.zone.end(), '/') > 1 || t.zone.starts_with("Antarctica")) continue;
      all.push_back(t.zone);
      if (abbreviation(t.zone, middleOf(1)) == word || abbreviation(t.zone, middleOf(7)) == word)
        named.push_back(t.zone);
    }
    if (!named.empty()) return word + " in " + region_.name + ": " + base::joined(named);
    if (const Town* t = site_ ? nearestTown(towns_, *site_) : nullptr; t && isNearCountry(*site_))
      return "the nearest to the site is " + t->zone;
    return all.empty() ? "write it as in the tz database, like Pacific/Auckland"
                       : "in " + region_.name + ": " + base::joined(all);
  }

  bool checkClock() {
    const std::string& zone = job_.site.timezone;
    const bool isKnown =
        std::any_of(towns_.begin(), towns_.end(), [&](const Town& t) { return isSameClock(t.zone, zone); });
    if (!isKnown) warn("site.timezone", "'" + zone + "' is not the time of " + region_.name, zoneHint());
    return isKnown;
  }

  /// Farther from a country's zone towns lies no place in it: the farthest is some 1,700 km.
  bool isNearCountry(Place p) const {
    const Town* t = nearestTown(towns_, p);
    return t && kilometres(t->place, p) <= 2000;
  }

  void checkPoint(bool isItsClock) {
    if (!site_) return;
    const Town* nearest = nearestTown(towns_, *site_);
    if (!isNearCountry(*site_)) {
      const auto away = std::lround(kilometres(nearest->place, *site_) / 100) * 100;
      warn("site.latitude", "this place lies some " + std::to_string(away) + " km from " + region_.name,
           isItsClock ? pointHint() : checkAll);
      return;
    }
    for (const Town& t : towns_) {
      // No zone reaches so far east or west of its town.
      if (t.zone != job_.site.timezone || std::abs(t.place.longitude - site_->longitude) <= 20) continue;
      warn("site.timezone", "the site lies far from where '" + t.zone + "' holds",
           "the nearest is " + nearest->zone);
    }
  }

  /// Other signs, or the two exchanged, where that leads to the country.
  std::string pointHint() const {
    const auto [north, east] = *site_;
    for (const Place p : {Place{-north, east}, Place{north, -east}, Place{-north, -east}, Place{east, north},
                          Place{east, -north}, Place{-east, north}}) {
      if (std::abs(p.latitude) <= 90 && isNearCountry(p))
        return "did you mean latitude: " + inDegrees(p.latitude) + ", longitude: " + inDegrees(p.longitude) +
               "?";
    }
    return checkAll;
  }

  static std::string inDegrees(double d) {
    std::string s = base::decimal(std::llround(std::abs(d) * 1e6), 4, ".", "");
    s.erase(s.find_last_not_of('0') + 1);
    if (s.back() == '.') s.pop_back();
    return (d < 0 ? "-" : "") + s;
  }

  static constexpr auto checkAll = "check 'region', 'latitude' and 'longitude'; south and west are negative";

  const model::Job& job_;
  const model::Region& region_;
  base::Diagnostics& messages_;
  std::optional<Place> site_;
  std::vector<Town> towns_;
};

}  // namespace

void checkSite(const model::Job& job, const model::Region& region, base::Diagnostics& messages) {
  SiteCheck(job, region, messages).run();
}

}  // namespace schedule
