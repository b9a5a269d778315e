#include "input/yaml/quantity.h"

#include "base/letters.h"

#include <array>
#include <vector>

namespace input {
namespace {

using base::Wide;

enum class Kind { Length, Area, Volume, Time, Share, Temperature, Page, Pieces, None };

/// One of a unit is numerator / denominator millionths of what quantities of its kind are counted in.
struct Unit {
  std::string_view name;
  Kind kind;
  std::int64_t numerator;
  std::int64_t denominator = 1;
};

// Inch, foot, yard and gallon: NIST SP 811 (2008), App. B.8; exact by definition (1 in = 25.4 mm, 1 gal = 231
// in3).
constexpr std::array units = {
    Unit{"m", Kind::Length, 1'000'000'000},
    Unit{"cm", Kind::Length, 10'000'000},
    Unit{"mm", Kind::Length, 1'000'000},
    Unit{"um", Kind::Length, 1000},
    Unit{"yd", Kind::Length, 914'400'000},
    Unit{"ft", Kind::Length, 304'800'000},
    Unit{"'", Kind::Length, 304'800'000},
    Unit{"in", Kind::Length, 25'400'000},
    Unit{"\"", Kind::Length, 25'400'000},
    Unit{"m2", Kind::Area, 1'000'000'000'000},
    Unit{"yd2", Kind::Area, 836'127'360'000},
    Unit{"ft2", Kind::Area, 92'903'040'000},
    Unit{"sq ft", Kind::Area, 92'903'040'000},
    Unit{"in2", Kind::Area, 645'160'000},
    Unit{"L", Kind::Volume, 1'000'000'000},
    Unit{"l", Kind::Volume, 1'000'000'000},
    Unit{"mL", Kind::Volume, 1'000'000},
    Unit{"ml", Kind::Volume, 1'000'000},
    Unit{"gal", Kind::Volume, 3'785'411'784},
    Unit{"qt", Kind::Volume, 946'352'946},
    Unit{"pt", Kind::Volume, 473'176'473},
    Unit{"fl oz", Kind::Volume, 473'176'473, 16},
    Unit{"d", Kind::Time, 24'000'000},
    Unit{"h", Kind::Time, 1'000'000},
    Unit{"min", Kind::Time, 1'000'000, 60},
    Unit{"%", Kind::Share, 1'000'000},
    Unit{"C", Kind::Temperature, 1'000'000},
    Unit{"F", Kind::Temperature, 5'000'000, 9},  // after 32 is taken off
    Unit{"mm", Kind::Page, 360'000, 127},        // thousandths of a point: 72 / 25.4 points
    Unit{"pt", Kind::Page, 1000},
    Unit{"pieces", Kind::Pieces, 1'000'000},
    Unit{"fixings", Kind::Pieces, 1'000'000},
};

/// Other spellings of units, in small letters.
constexpr std::pair<std::string_view, std::string_view> spellings[] = {{"metre", "m"},
                                                                       {"meter", "m"},
                                                                       {"foot", "ft"},
                                                                       {"feet", "ft"},
                                                                       {"inch", "in"},
                                                                       {"inches", "in"},
                                                                       {"yard", "yd"},
                                                                       {"square metre", "m2"},
                                                                       {"square meter", "m2"},
                                                                       {"sq m", "m2"},
                                                                       {"sqm", "m2"},
                                                                       {"square foot", "ft2"},
                                                                       {"square feet", "ft2"},
                                                                       {"sqft", "ft2"},
                                                                       {"litre", "L"},
                                                                       {"liter", "L"},
                                                                       {"gallon", "gal"},
                                                                       {"quart", "qt"},
                                                                       {"pint", "pt"},
                                                                       {"day", "d"},
                                                                       {"hour", "h"},
                                                                       {"hr", "h"},
                                                                       {"minute", "min"},
                                                                       {"percent", "%"},
                                                                       {"c", "C"},
                                                                       {"f", "F"}};

/// A unit of exactly that name, of the wanted kind where a name serves two ('pt' is a pint and a point).
const Unit* unitNamed(std::string_view name, Kind wanted) {
  const Unit* found = nullptr;
  for (const Unit& u : units) {
    if (u.name == name && (found == nullptr || u.kind == wanted)) found = &u;
  }
  return found;
}

/// The same for a name in full, in capitals or in the plural: 'feet', 'MM', 'litres'.
const Unit* findUnit(std::string_view name, Kind wanted) {
  if (const Unit* u = unitNamed(name, wanted)) return u;
  const std::string small = base::lowered(name);
  const std::string one = small.ends_with('s') ? small.substr(0, small.size() - 1) : small;
  for (const auto& [spelling, unit] : spellings) {
    if (spelling == small || spelling == one) return unitNamed(unit, wanted);
  }
  const Unit* u = unitNamed(small, wanted);
  return u != nullptr || one.size() < 2 ? u : unitNamed(one, wanted);
}

struct UnitWords {
  const char* name;     // 'a length'
  const char* example;  // unit for the hint of a number without unit
  const char* hint;
};

UnitWords words(Kind k) {
  switch (k) {
    case Kind::Length:
      return {"a length", "m",
              "lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'"};
    case Kind::Area:
      return {"an area", "m2", "areas are given in m2, ft2, in2 or yd2, like '24 m2'"};
    case Kind::Volume:
      return {"a volume", "L", "volumes are given in L, mL, gal, qt, pt or fl oz, like '2.5 L'"};
    case Kind::Time:
      return {"a time", "h", "times are given in d, h or min, like '45 min' or '1 h 30 min'"};
    case Kind::Share:
      return {"a share", "%", "shares are given in per cent, like '5 %'"};
    case Kind::Temperature:
      return {"a temperature", "C", "temperatures are given in C or F, like '20 C'"};
    case Kind::Page:
      return {"a length on paper", "pt", "lengths on paper are given in pt or mm, like '10.5 pt'"};
    case Kind::Pieces:
    case Kind::None:
      break;
  }
  return {"a number", "", "numbers are written like '12.5'"};
}

constexpr std::int64_t foot = 304'800'000;

using base::isDigit;

/// Millionths of the kind's unit; nothing when they do not fit.
std::optional<std::int64_t> millionths(const Number& n, std::int64_t numerator, std::int64_t denominator) {
  // At most 21 digits times 13 digits: 128 bits hold it.
  const Wide top = n.numerator * numerator, bottom = Wide{n.denominator} * denominator;
  if (top / bottom > INT64_MAX / 2 || top / bottom < -(INT64_MAX / 2)) return {};
  return base::divide(top, bottom, base::Round::HalfEven);
}

Problem tooLarge(std::string_view s) { return {inQuotes(s) + " is too large", "check number and unit"}; }

Problem needsUnit(std::string_view s, std::string_view unit) {
  return {inQuotes(s) + " needs a unit", "write " + inQuotes(std::string(s) + " " + std::string(unit)), true};
}

Problem notA(std::string_view s, Kind kind) {
  return {inQuotes(s) + " is not " + words(kind).name, words(kind).hint};
}

/// A sum of numbers with falling units of one kind, as millionths.
Parsed<std::int64_t> parseSum(std::string_view text, Kind kind) {
  const std::string s = plain(text);
  Scanner in(s);
  std::int64_t sum = 0;
  std::int64_t last = 0;  // size of the unit before, 0 = none
  const auto fail = [](Problem p) { return Parsed<std::int64_t>{0, std::move(p)}; };
  if (s.empty()) return fail({"'' is empty", words(kind).hint});
  if (!isDigit(s[0]) && s[0] != '-' && s[0] != '.') {
    if (s == "nan" || s == "inf")
      return fail({inQuotes(s) + " is not a plain number", "write digits with a point, like 12.5"});
    return fail(notA(s, kind));
  }
  const bool isNegative = s[0] == '-';
  while (!in.isAtEnd()) {
    Number n;
    if (auto p = in.number(n)) return fail(*p);
    const std::string name = in.unit();
    if (name.empty() && last == 0) return fail(needsUnit(s, words(kind).example));
    const Unit* u = findUnit(name, kind);
    if (name.empty() || (u != nullptr && u->kind != kind) || (u != nullptr && in.slash()))
      return fail(notA(s, kind));
    if (u == nullptr) return fail({inQuotes(name) + " is not a known unit", words(kind).hint});
    if (u->name == "F") n.numerator -= Wide{32} * n.denominator;
    const auto part = millionths(n, u->numerator, u->denominator);
    if (!part || *part + sum > INT64_MAX / 4 || *part + sum < -(INT64_MAX / 4)) return fail(tooLarge(s));
    if (last != 0 && (kind == Kind::Share || kind == Kind::Temperature)) return fail(notA(s, kind));
    if (last != 0 && (*part >= last || *part < 0))
      return fail(
          {"the parts of " + inQuotes(s) + " do not fall: the second must be less than one of the first",
           words(kind).hint});
    sum += isNegative && last != 0 ? -*part : *part;
    last = u->numerator / u->denominator;
    if (last == foot) in.dash();
  }
  return {sum, {}};
}

/// Joists are given 'on centre': 16" o.c., 450 mm crs.
std::string_view withoutCentres(std::string_view s) {
  for (const std::string_view words :
       {" ", "o.c.", " oc", "o/c", "c/c", " crs", " centres", " centers", " centre", " center", " on"}) {
    if (s.ends_with(words) && s.size() > words.size()) s.remove_suffix(words.size());
  }
  return s;
}

template <class T>
Parsed<T> parseAs(std::string_view s, Kind kind) {
  Parsed<std::int64_t> p = parseSum(s, kind);
  return {T{p.value}, std::move(p.problem)};
}

struct Ratio {
  Number number;
  std::string unit, per;
};

/// 'number unit/unit'; nothing when it has another shape.
Parsed<std::optional<Ratio>> parseRatio(const std::string& s) {
  Scanner in(s);
  Ratio r;
  if (!beginsLikeNumber(s)) return {};
  if (auto p = in.number(r.number)) return {{}, p};
  if (in.isAtEnd()) return {{}, {}};
  r.unit = in.unit();
  if (!in.slash()) return {{}, {}};
  r.per = in.unit();
  if (r.per.empty() || !in.isAtEnd()) return {{}, {}};
  return {r, {}};
}

bool isBareNumber(std::string_view s) {
  Scanner in(s);
  Number n;
  return !in.number(n) && in.isAtEnd();
}

}  // namespace

Parsed<base::Length> parseLength(std::string_view s) {
  return parseAs<base::Length>(withoutCentres(s), Kind::Length);
}
Parsed<base::Area> parseArea(std::string_view s) { return parseAs<base::Area>(s, Kind::Area); }
Parsed<base::Volume> parseVolume(std::string_view s) { return parseAs<base::Volume>(s, Kind::Volume); }
Parsed<base::Share> parseShare(std::string_view s) { return parseAs<base::Share>(s, Kind::Share); }
Parsed<base::Hours> parseTime(std::string_view s) { return parseAs<base::Hours>(s, Kind::Time); }
Parsed<base::Temperature> parseTemperature(std::string_view s) {
  return parseAs<base::Temperature>(s, Kind::Temperature);
}

Parsed<PageLength> parsePageLength(std::string_view s) {
  Parsed<std::int64_t> p = parseSum(s, Kind::Page);
  if (!p.problem && (p.value > 10'000'000 || p.value < -10'000'000)) p = {0, tooLarge(s)};
  return {{static_cast<std::int32_t>(p.value)}, std::move(p.problem)};
}

Parsed<base::Spread> parseSpread(std::string_view text) {
  const std::string s = plain(text);
  const Problem other = {inQuotes(s) + " is not a spreading rate",
                         "spreading rates are given like '8 m2/L', '350 ft2/gal' or '125 mL/m2'"};
  const auto ratio = parseRatio(s);
  if (ratio.problem) return {{}, ratio.problem};
  if (!ratio.value) return {{}, isBareNumber(s) ? needsUnit(s, "m2/L") : other};
  const Unit* top = findUnit(ratio.value->unit, Kind::Area);
  const Unit* bottom = findUnit(ratio.value->per, Kind::Volume);
  if (top == nullptr || bottom == nullptr) return {{}, other};
  const auto amount = millionths(ratio.value->number, top->numerator, top->denominator);
  const std::int64_t one = bottom->numerator / bottom->denominator;
  if (!amount) return {{}, tooLarge(s)};
  if (top->kind == Kind::Area && bottom->kind == Kind::Volume) return {{{*amount}, {one}}, {}};
  if (top->kind == Kind::Volume && bottom->kind == Kind::Area) return {{{one}, {*amount}}, {}};
  return {{}, other};
}

Parsed<base::Count> parsePerHour(std::string_view text, PerHour counted) {
  const std::string s = plain(text);
  // Millionths of a square metre, metre or piece, from those of a unit.
  const Kind kind = counted == PerHour::Area     ? Kind::Area
                    : counted == PerHour::Length ? Kind::Length
                                                 : Kind::Pieces;
  const std::int64_t scale = counted == PerHour::Area ? 1'000'000 : counted == PerHour::Length ? 1000 : 1;
  const std::string unit = counted == PerHour::Area     ? "m2/h"
                           : counted == PerHour::Length ? "m/h"
                                                        : "pieces/h";
  const auto ratio = parseRatio(s);
  if (ratio.problem) return {{}, ratio.problem};
  if (!ratio.value) {
    if (isBareNumber(s)) return {{}, needsUnit(s, unit)};
    return {{}, Problem{inQuotes(s) + " is not a rate", "this rate is given like '40 " + unit + "'"}};
  }
  const Unit* top = ratio.value->unit.empty() ? findUnit("pieces", kind) : findUnit(ratio.value->unit, kind);
  const Unit* per = findUnit(ratio.value->per, Kind::Time);
  if (top == nullptr || top->kind != kind || per == nullptr || per->name != "h")
    return {{},
            Problem{inQuotes(s) + " is not a rate in " + unit, "this rate is given like '40 " + unit + "'"}};
  const auto n = millionths(ratio.value->number, top->numerator, top->denominator * scale);
  if (!n) return {{}, tooLarge(s)};
  return {{*n}, {}};
}

Parsed<base::Count> parseWith(std::string_view unit, std::string_view text) {
  std::string s = plain(text);
  const Problem other = {inQuotes(s) + " is not a value in " + std::string(unit),
                         "it is given like '12 " + std::string(unit) + "'"};
  if (isBareNumber(s)) return {{}, needsUnit(s, unit)};
  if (s.size() <= unit.size() || s.substr(s.size() - unit.size()) != unit) return {{}, other};
  s.resize(s.size() - unit.size());
  Parsed<base::Count> n = parseNumber(s);
  return n;
}

Parsed<base::Count> parseNumber(std::string_view text) {
  const std::string s = plain(text);
  Scanner in(s);
  Number n;
  if (auto p = in.number(n)) return {{}, p};
  if (!in.isAtEnd() || n.isFraction)
    return {{}, Problem{inQuotes(s) + " is not a plain number", "write digits with a point, like 12.5"}};
  const auto m = millionths(n, 1'000'000, 1);
  if (!m) return {{}, tooLarge(s)};
  return {{*m}, {}};
}

Parsed<std::int64_t> parseWhole(std::string_view text) {
  const std::string s = plain(text);
  const Problem other = {inQuotes(s) + " is not a whole number", "write digits only, like 12"};
  if (!beginsLikeNumber(s)) return {{}, other};
  Scanner in(s);
  Number n;
  if (auto p = in.number(n)) return {{}, p};
  if (!in.isAtEnd() || n.isFraction || n.decimals > 0) return {{}, other};
  return {static_cast<std::int64_t>(n.numerator), {}};
}

Parsed<base::Money> parseMoney(std::string_view text, int digits) {
  const std::string s = plain(text);
  const Problem other = {inQuotes(s) + " is not an amount of money",
                         "write the number alone, without a currency sign, like 118.00"};
  if (!beginsLikeNumber(s)) return {{}, other};
  Scanner in(s);
  Number n;
  if (auto p = in.number(n)) return {{}, p};
  if (!in.isAtEnd() || n.isFraction) return {{}, other};
  if (n.decimals > digits)
    return {{},
            Problem{inQuotes(s) + " has more than " + std::to_string(digits) + " decimals",
                    "round it to the cent"}};
  std::int64_t coins = 1;
  for (int i = 0; i < digits; ++i) coins *= 10;
  const auto m = millionths(n, coins, 1);
  if (!m) return {{}, tooLarge(s)};
  return {{*m}, {}};
}

}  // namespace input
