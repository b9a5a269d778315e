// Values become words: in the units, numbers and order of dates of a region, in the words of a language.
#pragma once

#include "base/language.h"
#include "model/plan.h"

#include <string>
#include <vector>

namespace sheets {

class Formatter {
 public:
  /// Both outlive it. Figures keep the region's form in every language, so that the sheets of a job read
  /// alike and like the labels on its tins.
  Formatter(const model::Region& region, const base::Language& language)
      : region_(region), language_(language) {}

  /// What the language says under a key of content/languages, its places filled.
  std::string operator()(const std::string& key, const base::Values& values = {}) const {
    return language_(key, values);
  }
  /// The form for n of a phrase that counts.
  std::string counted(const std::string& key, std::int64_t n, base::Values values = {}) const {
    return language_.counted(key, n, std::move(values));
  }
  /// 'one' to 'twelve', figures from there on.
  std::string spelled(std::int64_t n) const { return language_.spelled(n); }
  /// 'a', 'a and b', 'a, b and c'.
  std::string joined(const std::vector<std::string>& parts) const { return language_.joined(parts); }
  std::string range(const std::string& from, const std::string& to) const;  // from to to
  std::string times(int n) const;                                           // once, twice, three times

  std::string money(base::Money m) const;        // 8,686.10
  std::string signedMoney(base::Money m) const;  // $8,686.10
  std::string share(base::Share s) const;        // 15 %
  std::string number(base::Count n, int places) const;
  std::string briefNumber(base::Count n) const;  // 2,000, or 322.92: two places at most

  std::string areaNumber(base::Area a) const;  // 75.75, in m2 or ft2
  std::string areaUnit() const;
  std::string area(base::Area a) const;                // 75.75 m2
  std::string roundArea(base::Area a) const;           // 75.8 m2, or 185 m2
  std::string length(base::Length l) const;            // 12.40 m, or 40 ft 6 in
  std::string size(base::Length l) const;              // 138 mm, or 5 1⁄2 in
  std::string volume(base::Volume v) const;            // 38.5 L, 350 mL; or 10.2 gal, 1.4 qt, 12 fl oz
  std::string volumeNumber(std::int64_t steps) const;  // of volumeStep(), without the unit
  base::Volume volumeStep() const;                     // the last printed digit of a volume
  std::string volumeUnit() const;
  std::string tinSize(base::Volume v) const;             // 2.5 L, or 1 gal
  std::string spread(const base::Spread& s) const;       // 8 m2/L, or 350 ft2/gal
  std::string roundSpread(const base::Spread& s) const;  // 8.0 m2/L, for columns
  std::string temperature(base::Temperature t) const;
  /// Limits, rounded to their safe side: from 8 C is from 47 F, up to 8 C is up to 46 F.
  std::string leastTemperature(base::Temperature t) const { return degrees(t, base::Round::Up); }
  std::string mostTemperature(base::Temperature t) const { return degrees(t, base::Round::Down); }
  std::string mass(base::Volume v) const;  // of a full tin: common practice, a kilogram a litre
  /// '90 minutes', '12 hours', '3 days', '2 weeks'; from four days on whole days, the next.
  std::string wait(base::Hours h) const;
  /// '12 to 24 hours'; one of them when both are the same. Whole days lie inside the range.
  std::string waitRange(base::Hours from, base::Hours to) const;

  std::string longDate(base::Date d) const;       // Tuesday 16 March 2027
  std::string weekdayDate(base::Date d) const;    // Tuesday 16 March
  std::string date(base::Date d) const;           // 16 March 2027
  std::string shortDate(base::Date d) const;      // Tue 16 Mar
  std::string shortDateYear(base::Date d) const;  // Tue 16 Mar 2027
  std::string dayMonthYear(base::Date d) const;   // 16 Mar 2027
  std::string shortDay(base::Date d) const;       // Tue 16
  std::string dayMonth(base::Date d) const;       // 16 Mar
  std::string weekday(base::Date d) const;        // Tuesday
  std::string shortWeekday(base::Date d) const;   // Tue
  std::string month(base::Date d) const;          // March
  std::string year(base::Date d) const;
  std::string clock(int minutes) const;       // 08:30, or 8:30 am
  std::string shortClock(int minutes) const;  // 08:30, or 8:30: among others of its day

  bool isMetric() const { return region_.units == model::UnitSystem::Metric; }
  const model::Region& region() const { return region_; }
  const base::Language& language() const { return language_; }

 private:
  std::string degrees(base::Temperature t, base::Round round) const;
  std::string waitWords(base::Hours h, base::Round ofDays) const;
  std::string form(const char* name) const;  // the key of a pattern for dates
  std::string dated(base::Date d, const std::string& form, bool isShort) const;
  std::string spreadNumber(const base::Spread& s, int metricPlaces) const;
  const char* spreadUnit() const;
  std::string withUnit(const std::string& number, const char* unit) const;

  const model::Region& region_;
  const base::Language& language_;
};

/// The same or the next half hour: nobody is told that he may step onto a coat at 16:55.
base::LocalTime upToHalfHour(base::LocalTime at);

using base::capitalised;
/// The letter of a deck on plan and in text: A for the first.
std::string deckLetter(std::size_t deck);

/// Whole steps for each amount (zero or above) that add up to the rounded sum: the largest remainders are
/// rounded up.
std::vector<std::int64_t> apportioned(const std::vector<std::int64_t>& amounts, std::int64_t step);

}  // namespace sheets
