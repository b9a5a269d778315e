#include "sheets/words/formatter.h"

#include "base/quantity_words.h"

#include <algorithm>
#include <numeric>

namespace sheets {
namespace {

using base::Round;

constexpr std::int64_t million = 1'000'000;
constexpr std::int64_t squareFoot = 92'903'040'000;  // square micrometres; NIST SP 811 (2008), App. B.8
constexpr std::int64_t gallon = 3'785'411'784;       // nanolitres; NIST SP 811 (2008), App. B.8
constexpr std::int64_t inch = 25'400'000;            // nanometres; exact by definition
const std::string noBreak = "\u00A0";

std::string trimmed(std::string s, const std::string& point) {
  if (s.find(point) == std::string::npos) return s;
  while (s.back() == '0') s.pop_back();
  if (s.ends_with(point)) s.resize(s.size() - point.size());
  return s;
}

/// Inches as '5 1⁄2', to the nearest sixteenth; fonts make a fraction of figures about this slash.
std::string inchWords(std::int64_t sixteenths) {
  const std::int64_t whole = sixteenths / 16, rest = sixteenths % 16;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t g = std::gcd(rest, std::int64_t{16});
  const std::string fraction = std::to_string(rest / g) + "\u2044" + std::to_string(16 / g);
  return whole == 0 ? fraction : std::to_string(whole) + noBreak + fraction;
}

}  // namespace

std::string Formatter::number(base::Count n, int places) const {
  return base::decimal(n.millionths, places, region_.numbers.decimal, region_.numbers.group);
}

std::string Formatter::briefNumber(base::Count n) const {
  return trimmed(number(n, 2), region_.numbers.decimal);
}

std::string Formatter::money(base::Money m) const {
  std::int64_t coin = 1;
  for (int i = 0; i < region_.currencyDigits; ++i) coin *= 10;
  const base::Count whole{base::mulDiv(m.minor, million, coin, Round::HalfUp)};
  return number(whole, region_.currencyDigits);
}

std::string Formatter::signedMoney(base::Money m) const {
  const auto& f = region_.numbers;
  if (m.minor < 0) return "\u2212" + f.currencyBefore + money({-m.minor}) + f.currencyAfter;
  return f.currencyBefore + money(m) + f.currencyAfter;
}

std::string Formatter::share(base::Share s) const {
  return trimmed(base::decimal(s.millionths, 3, region_.numbers.decimal, ""), region_.numbers.decimal) +
         noBreak + "%";
}

std::string Formatter::areaNumber(base::Area a) const {
  const std::int64_t unit = isMetric() ? million * million : squareFoot;
  return number({base::mulDiv(a.millionths, million, unit, Round::HalfUp)}, 2);
}

std::string Formatter::withUnit(const std::string& number, const char* unit) const {
  return number + noBreak + language_(unit);
}

std::string Formatter::roundArea(base::Area a) const {
  return base::roundArea(isMetric() ? base::inSquareMetres(a) : base::inSquareFeet(a),
                         region_.numbers.decimal, region_.numbers.group) +
         noBreak + areaUnit();
}

std::string Formatter::areaUnit() const { return language_(isMetric() ? "units.m2" : "units.ft2"); }
std::string Formatter::area(base::Area a) const { return areaNumber(a) + noBreak + areaUnit(); }

std::string Formatter::length(base::Length l) const {
  if (isMetric()) return withUnit(number({l.millionths / 1000}, 2), "units.m");
  const std::int64_t sixteenths = base::mulDiv(l.millionths, 16, inch, Round::HalfUp);
  const std::int64_t feet = sixteenths / 192, rest = sixteenths % 192;
  if (feet == 0) return withUnit(inchWords(rest), "units.in");
  return withUnit(std::to_string(feet), "units.ft") +
         (rest == 0 ? "" : noBreak + withUnit(inchWords(rest), "units.in"));
}

std::string Formatter::size(base::Length l) const {
  if (!isMetric())
    return withUnit(inchWords(base::mulDiv(l.millionths, 16, inch, Round::HalfUp)), "units.in");
  return withUnit(trimmed(number({l.millionths}, 1), region_.numbers.decimal), "units.mm");
}

base::Volume Formatter::volumeStep() const { return {isMetric() ? 100'000'000 : gallon / 100}; }
std::string Formatter::volumeUnit() const { return language_(isMetric() ? "units.litre" : "units.gallon"); }

std::string Formatter::volumeNumber(std::int64_t steps) const {
  return isMetric() ? number({steps * million / 10}, 1) : number({steps * million / 100}, 2);
}

std::string Formatter::volume(base::Volume v) const {
  const auto in = [&](std::int64_t unit, std::int64_t step, const char* name) {
    const std::int64_t steps = base::mulDiv(v.millionths, million / step, unit, Round::HalfUp);
    return withUnit(number({steps * step}, step < million ? 1 : 0), name);
  };
  constexpr std::int64_t litre = 1000 * million, tenth = million / 10;
  if (isMetric()) {
    if (v.millionths >= litre - litre / 200 || v.isZero()) return in(litre, tenth, "units.litre");
    const std::int64_t step = v.millionths < litre / 10 ? 1 : 10;  // millilitres
    return withUnit(
        std::to_string(std::max<std::int64_t>(1, base::divide(v.millionths, million * step, Round::HalfUp)) *
                       step),
        "units.millilitre");
  }
  if (v.millionths >= gallon || v.isZero()) return in(gallon, tenth, "units.gallon");
  if (v.millionths >= gallon / 4) return in(gallon / 4, tenth, "units.quart");
  return in(gallon / 128, million, "units.fluid_ounce");
}

std::string Formatter::tinSize(base::Volume v) const {
  const bool isQuart = !isMetric() && v.millionths < gallon;
  const std::int64_t unit = isMetric() ? 1000 * million : isQuart ? gallon / 4 : gallon;
  const base::Count n{base::mulDiv(v.millionths, million, unit, Round::HalfUp)};
  return withUnit(trimmed(number(n, 2), region_.numbers.decimal), isMetric() ? "units.litre"
                                                                  : isQuart  ? "units.quart"
                                                                             : "units.gallon");
}

std::string Formatter::spread(const base::Spread& s) const {
  return withUnit(trimmed(spreadNumber(s, 2), region_.numbers.decimal), spreadUnit());
}

std::string Formatter::roundSpread(const base::Spread& s) const {
  return withUnit(spreadNumber(s, 1), spreadUnit());
}

const char* Formatter::spreadUnit() const {
  return isMetric() ? "units.m2_per_litre" : "units.ft2_per_gallon";
}

std::string Formatter::spreadNumber(const base::Spread& s, int metricPlaces) const {
  // millionths of m2/L: um2 / nL * 1e3 / 1e6 in whole square metres and litres
  const base::Wide area = s.area.millionths, volume = s.volume.millionths;
  const base::Count rate{isMetric()
                             ? base::divide(area * 1000, volume, Round::HalfUp)
                             : base::divide(area * gallon, volume * squareFoot / million, Round::HalfUp)};
  return number(rate, isMetric() ? metricPlaces : 0);
}

std::string Formatter::temperature(base::Temperature t) const { return degrees(t, Round::HalfUp); }

/// In tenths of a degree Celsius or whole degrees Fahrenheit.
std::string Formatter::degrees(base::Temperature t, Round round) const {
  const auto inSteps = [&](std::int64_t millionths, std::int64_t step) {
    return base::Count{base::divide(millionths, step, round) * step};
  };
  if (isMetric())
    return withUnit(trimmed(number(inSteps(t.millionths, million / 10), 1), region_.numbers.decimal),
                    "units.celsius");
  const std::int64_t fahrenheit = base::mulDiv(t.millionths, 9, 5, Round::HalfUp) + 32 * million;
  return withUnit(number(inSteps(fahrenheit, million), 0), "units.fahrenheit");
}

std::string Formatter::mass(base::Volume v) const {
  const std::int64_t kilograms = base::divide(v.millionths, 1000 * million, Round::Up);
  if (isMetric()) return withUnit(std::to_string(kilograms), "units.kg");
  return withUnit(std::to_string(base::mulDiv(kilograms, 220'462, 100'000, Round::Up)), "units.lb");
}

namespace {

/// A wait in the unit a person would use.
struct Wait {
  const char* key;
  std::int64_t n;
};

Wait waitOf(base::Hours h, Round ofDays) {
  const std::int64_t minutes = base::divide(base::Wide{h.millionths} * 60, million, Round::HalfUp);
  if (minutes % 60 != 0 && minutes < 120) return {"waits.minutes", minutes};
  const std::int64_t hours = base::divide(h.millionths, million, Round::HalfUp);
  if (hours < 48 || (hours < 96 && hours % 24 != 0)) return {"waits.hours", hours};
  const std::int64_t days = base::divide(hours, 24, ofDays);
  if (days >= 14 && days % 7 == 0) return {"waits.weeks", days / 7};
  return {"waits.days", days};
}

}  // namespace

std::string Formatter::wait(base::Hours h) const { return waitWords(h, Round::Up); }

std::string Formatter::waitWords(base::Hours h, Round ofDays) const {
  const Wait w = waitOf(h, ofDays);
  return counted(w.key, w.n);
}

std::string Formatter::waitRange(base::Hours from, base::Hours to) const {
  if (from == to) return wait(to);
  // Hours are said once: '12 to 24 hours'.
  const bool areHours = waitOf(to, Round::Down).key == std::string("waits.hours");
  return range(areHours ? std::to_string(base::divide(from.millionths, million, Round::HalfUp)) : wait(from),
               waitWords(to, Round::Down));
}

std::string Formatter::range(const std::string& from, const std::string& to) const {
  return language_("numbers.range", {{"from", from}, {"to", to}});
}

std::string Formatter::times(int n) const {
  if (n == 1) return language_("numbers.once");
  return n == 2 ? language_("numbers.twice") : counted("numbers.times", n);
}

std::string Formatter::dated(base::Date d, const std::string& form, bool isShort) const {
  const std::chrono::year_month_day ymd{d};
  const auto month = std::to_string(static_cast<unsigned>(ymd.month()));
  const auto weekday = std::to_string(std::chrono::weekday{d}.iso_encoding());
  return language_(form,
                   {{"day", std::to_string(static_cast<unsigned>(ymd.day()))},
                    {"month", language_((isShort ? "dates.months_short." : "dates.months.") + month)},
                    {"weekday", language_((isShort ? "dates.weekdays_short." : "dates.weekdays.") + weekday)},
                    {"year", year(d)}});
}

std::string Formatter::form(const char* name) const {
  return std::string(region_.monthFirst ? "dates.month_first." : "dates.day_first.") + name;
}

std::string Formatter::longDate(base::Date d) const { return dated(d, form("long"), false); }
std::string Formatter::weekdayDate(base::Date d) const { return dated(d, form("weekday_date"), false); }
std::string Formatter::date(base::Date d) const { return dated(d, form("date"), false); }
std::string Formatter::shortDate(base::Date d) const { return dated(d, form("short"), true); }
std::string Formatter::dayMonth(base::Date d) const { return dated(d, form("day_month"), true); }
std::string Formatter::shortDateYear(base::Date d) const { return dated(d, form("short_year"), true); }
std::string Formatter::dayMonthYear(base::Date d) const { return dated(d, form("day_month_year"), true); }
std::string Formatter::shortDay(base::Date d) const { return dated(d, "dates.short_day", true); }

std::string Formatter::weekday(base::Date d) const {
  return language_("dates.weekdays." + std::to_string(std::chrono::weekday{d}.iso_encoding()));
}
std::string Formatter::shortWeekday(base::Date d) const {
  return language_("dates.weekdays_short." + std::to_string(std::chrono::weekday{d}.iso_encoding()));
}
std::string Formatter::month(base::Date d) const {
  const std::chrono::year_month_day ymd{d};
  return language_("dates.months_alone." + std::to_string(static_cast<unsigned>(ymd.month())));
}
std::string Formatter::year(base::Date d) const {
  return std::to_string(static_cast<int>(std::chrono::year_month_day{d}.year()));
}

std::string Formatter::shortClock(int minutes) const {
  if (!region_.monthFirst) return base::isoClock(minutes);
  const int hour = minutes / 60 % 12 == 0 ? 12 : minutes / 60 % 12;
  return std::to_string(hour) + base::isoClock(minutes).substr(2);
}

std::string Formatter::clock(int minutes) const {
  if (!region_.monthFirst) return base::isoClock(minutes);
  return language_(minutes < 720 ? "dates.am" : "dates.pm", {{"time", shortClock(minutes)}});
}

std::string deckLetter(std::size_t deck) { return std::string(1, static_cast<char>('A' + deck % 26)); }

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

base::LocalTime upToHalfHour(base::LocalTime at) {
  constexpr int half = 30, day = 24 * 60;
  const int minutes = (at.minutes + half - 1) / half * half;
  return {at.day + std::chrono::days{minutes / day}, minutes % day};
}

}  // namespace sheets
