#include "sheets/words.h"

#include "base/quantity_words.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace sheets {
namespace {

using base::Round;

constexpr std::int64_t million = 1'000'000;
constexpr std::int64_t squareFoot = 92'903'040'000;  // square micrometres; NIST SP 811 (2008), App. B.8
constexpr std::int64_t gallon = 3'785'411'784;       // nanolitres; NIST SP 811 (2008), App. B.8
constexpr std::int64_t inch = 25'400'000;            // nanometres; exact by definition
const std::string noBreak = "\u00A0";

constexpr std::array months = {"January", "February", "March",     "April",   "May",      "June",
                               "July",    "August",   "September", "October", "November", "December"};
constexpr std::array weekdays = {"Monday", "Tuesday",  "Wednesday", "Thursday",
                                 "Friday", "Saturday", "Sunday"};
constexpr std::array numerals = {"no",    "one",   "two",  "three", "four",   "five",  "six",
                                 "seven", "eight", "nine", "ten",   "eleven", "twelve"};

struct Parts {
  std::string day, month, year, weekday;
};

Parts partsOf(base::Date d) {
  const std::chrono::year_month_day ymd{d};
  return {std::to_string(static_cast<unsigned>(ymd.day())), months[static_cast<unsigned>(ymd.month()) - 1],
          std::to_string(static_cast<int>(ymd.year())), weekdays[std::chrono::weekday{d}.iso_encoding() - 1]};
}

std::string brief(const std::string& word) { return word.substr(0, 3); }

std::string trimmed(std::string s, const std::string& point) {
  if (s.find(point) == std::string::npos) return s;
  while (s.back() == '0') s.pop_back();
  if (s.ends_with(point)) s.resize(s.size() - point.size());
  return s;
}

/// Inches as '5 1/2', to the nearest sixteenth.
std::string inchWords(std::int64_t sixteenths) {
  const std::int64_t whole = sixteenths / 16, rest = sixteenths % 16;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t g = std::gcd(rest, std::int64_t{16});
  const std::string fraction = std::to_string(rest / g) + "/" + std::to_string(16 / g);
  return whole == 0 ? fraction : std::to_string(whole) + noBreak + fraction;
}

}  // namespace

std::string Words::number(base::Count n, int places) const {
  return base::decimal(n.millionths, places, region_.numbers.decimal, region_.numbers.group);
}

std::string Words::money(base::Money m) const {
  std::int64_t coin = 1;
  for (int i = 0; i < region_.currencyDigits; ++i) coin *= 10;
  const base::Count whole{base::mulDiv(m.minor, million, coin, Round::HalfUp)};
  return number(whole, region_.currencyDigits);
}

std::string Words::signedMoney(base::Money m) const {
  const auto& f = region_.numbers;
  if (m.minor < 0) return "\u2212" + f.currencyBefore + money({-m.minor}) + f.currencyAfter;
  return f.currencyBefore + money(m) + f.currencyAfter;
}

std::string Words::share(base::Share s) const {
  return trimmed(base::decimal(s.millionths, 3, region_.numbers.decimal, ""), region_.numbers.decimal) +
         noBreak + "%";
}

std::string Words::areaNumber(base::Area a) const {
  const std::int64_t unit = isMetric() ? million * million : squareFoot;
  return number({base::mulDiv(a.millionths, million, unit, Round::HalfUp)}, 2);
}

std::string Words::areaUnit() const { return isMetric() ? "m²" : "ft²"; }
std::string Words::area(base::Area a) const { return areaNumber(a) + noBreak + areaUnit(); }

std::string Words::length(base::Length l) const {
  if (isMetric()) return number({l.millionths / 1000}, 2) + noBreak + "m";
  const std::int64_t sixteenths = base::mulDiv(l.millionths, 16, inch, Round::HalfUp);
  const std::int64_t feet = sixteenths / 192, rest = sixteenths % 192;
  if (feet == 0) return inchWords(rest) + noBreak + "in";
  return std::to_string(feet) + noBreak + "ft" +
         (rest == 0 ? "" : noBreak + inchWords(rest) + noBreak + "in");
}

std::string Words::size(base::Length l) const {
  if (!isMetric()) return inchWords(base::mulDiv(l.millionths, 16, inch, Round::HalfUp)) + noBreak + "in";
  return trimmed(number({l.millionths}, 1), region_.numbers.decimal) + noBreak + "mm";
}

base::Volume Words::volumeStep() const { return {isMetric() ? 100'000'000 : gallon / 100}; }
std::string Words::volumeUnit() const { return isMetric() ? "L" : "gal"; }

std::string Words::volumeNumber(std::int64_t steps) const {
  return isMetric() ? number({steps * million / 10}, 1) : number({steps * million / 100}, 2);
}

std::string Words::volume(base::Volume v) const {
  return volumeNumber(base::divide(v.millionths, volumeStep().millionths, Round::HalfUp)) + noBreak +
         volumeUnit();
}

std::string Words::tinSize(base::Volume v) const {
  const bool isQuart = !isMetric() && v.millionths < gallon;
  const std::int64_t unit = isMetric() ? 1000 * million : isQuart ? gallon / 4 : gallon;
  const base::Count n{base::mulDiv(v.millionths, million, unit, Round::HalfUp)};
  return trimmed(number(n, 2), region_.numbers.decimal) + noBreak +
         (isMetric() ? "L"
          : isQuart  ? "qt"
                     : "gal");
}

std::string Words::spread(const base::Spread& s) const {
  // millionths of m2/L: um2 / nL * 1e3 / 1e6 in whole square metres and litres
  const base::Wide area = s.area.millionths, volume = s.volume.millionths;
  const base::Count rate{isMetric()
                             ? base::divide(area * 1000, volume, Round::HalfUp)
                             : base::divide(area * gallon, volume * squareFoot / million, Round::HalfUp)};
  const std::string digits = trimmed(number(rate, isMetric() ? 2 : 0), region_.numbers.decimal);
  return digits + noBreak + (isMetric() ? "m²/L" : "ft²/gal");
}

std::string Words::temperature(base::Temperature t) const {
  if (isMetric()) return trimmed(number({t.millionths}, 1), region_.numbers.decimal) + noBreak + "°C";
  return number({base::mulDiv(t.millionths, 9, 5, Round::HalfUp) + 32 * million}, 0) + noBreak + "°F";
}

std::string Words::mass(base::Volume v) const {
  const std::int64_t kilograms = base::divide(v.millionths, 1000 * million, Round::Up);
  if (isMetric()) return std::to_string(kilograms) + noBreak + "kg";
  return std::to_string(base::mulDiv(kilograms, 220'462, 100'000, Round::Up)) + noBreak + "lb";
}

std::string Words::wait(base::Hours h) const {
  const std::int64_t minutes = base::divide(base::Wide{h.millionths} * 60, million, Round::HalfUp);
  if (minutes % 60 != 0 && minutes < 120) return counted(minutes, "minute", "minutes");
  const std::int64_t hours = base::divide(h.millionths, million, Round::HalfUp);
  if (hours < 48 || hours % 24 != 0) return counted(hours, "hour", "hours");
  const std::int64_t days = hours / 24;
  if (days >= 14 && days % 7 == 0) return counted(days / 7, "week", "weeks");
  return counted(days, "day", "days");
}

std::string Words::longDate(base::Date d) const {
  const Parts p = partsOf(d);
  if (region_.monthFirst) return p.weekday + ", " + p.month + noBreak + p.day + ", " + p.year;
  return p.weekday + noBreak + p.day + noBreak + p.month + " " + p.year;
}

std::string Words::weekdayDate(base::Date d) const {
  const Parts p = partsOf(d);
  return region_.monthFirst ? p.weekday + ", " + p.month + noBreak + p.day
                            : p.weekday + noBreak + p.day + noBreak + p.month;
}

std::string Words::date(base::Date d) const {
  const Parts p = partsOf(d);
  if (region_.monthFirst) return p.month + noBreak + p.day + ", " + p.year;
  return p.day + noBreak + p.month + " " + p.year;
}

std::string Words::shortDate(base::Date d) const {
  return brief(weekday(d)) + (region_.monthFirst ? ", " : noBreak) + dayMonth(d);
}

std::string Words::dayMonth(base::Date d) const {
  const Parts p = partsOf(d);
  return region_.monthFirst ? brief(p.month) + noBreak + p.day : p.day + noBreak + brief(p.month);
}

std::string Words::shortDateYear(base::Date d) const {
  return shortDate(d) + (region_.monthFirst ? ", " : " ") + year(d);
}

std::string Words::dayMonthYear(base::Date d) const {
  return dayMonth(d) + (region_.monthFirst ? ", " : " ") + year(d);
}

std::string Words::shortDay(base::Date d) const { return brief(weekday(d)) + noBreak + partsOf(d).day; }

std::string Words::weekday(base::Date d) const { return partsOf(d).weekday; }
std::string Words::month(base::Date d) const { return partsOf(d).month; }
std::string Words::year(base::Date d) const { return partsOf(d).year; }

std::string Words::clock(int minutes) const {
  if (!region_.monthFirst) return base::isoClock(minutes);
  const int hour = minutes / 60 % 12 == 0 ? 12 : minutes / 60 % 12;
  return std::to_string(hour) + base::isoClock(minutes).substr(2) + noBreak + (minutes < 720 ? "am" : "pm");
}

std::string spelled(std::int64_t n) {
  return n >= 0 && n < static_cast<std::int64_t>(numerals.size()) ? numerals[static_cast<std::size_t>(n)]
                                                                  : std::to_string(n);
}

std::string counted(std::int64_t n, const std::string& one, const std::string& many) {
  return std::to_string(n) + noBreak + (n == 1 ? one : many);
}

std::string joined(const std::vector<std::string>& words) {
  std::string s;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) s += i + 1 == words.size() ? " and " : ", ";
    s += words[i];
  }
  return s;
}

std::string capitalised(std::string s) {
  if (!s.empty() && s[0] >= 'a' && s[0] <= 'z') s[0] = static_cast<char>(s[0] - 'a' + 'A');
  return s;
}

std::string deckLetter(std::size_t deck) { return std::string(1, static_cast<char>('A' + deck % 26)); }

std::string times(int n) { return n == 1 ? "once" : n == 2 ? "twice" : spelled(n) + " times"; }

std::string ordinal(int n) {
  constexpr std::array words = {"first", "second", "third", "fourth"};
  return n >= 1 && n <= 4 ? words[static_cast<std::size_t>(n) - 1] : std::to_string(n) + "th";
}

std::vector<std::int64_t> apportioned(const std::vector<std::int64_t>& amounts, std::int64_t step) {
  std::int64_t sum = 0;
  for (const auto a : amounts) sum += a;
  std::int64_t left = base::divide(sum, step, Round::HalfUp);
  std::vector<std::int64_t> steps;
  std::vector<std::size_t> order;
  for (const auto a : amounts) {
    steps.push_back(a / step);
    left -= steps.back();
    order.push_back(order.size());
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return amounts[a] % step > amounts[b] % step; });
  for (std::size_t i = 0; i < order.size() && left > 0; ++i, --left) ++steps[order[i]];
  return steps;
}

}  // namespace sheets
