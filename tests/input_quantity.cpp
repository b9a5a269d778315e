#include "input/yaml/quantity.h"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

using namespace input;

namespace {

std::int64_t nm(std::string_view s) {
  const auto p = parseLength(s);
  INFO(s << (p.problem ? ": " + p.problem->message : ""));
  CHECK_FALSE(p.problem);
  return p.value.millionths;
}

template <class T>
std::string said(const Parsed<T>& p) {
  if (!p.problem) return "fine";
  return p.problem->message + (p.problem->hint.empty() ? "" : "; " + p.problem->hint);
}

}  // namespace

TEST_CASE("US customary units convert as NIST SP 811 (2008), App. B.8, prints them") {
  // Seen in a transcription of the table, bold figures exact: in 0.0254 m, ft 0.3048, yd 0.9144, ft2
  // 0.09290304 m2, in2 0.00064516 m2.
  CHECK(nm("1 in") == 25'400'000);
  CHECK(nm("1 ft") == 304'800'000);
  CHECK(nm("1 yd") == 914'400'000);
  CHECK(parseArea("1 ft2").value.millionths == 92'903'040'000);
  CHECK(parseArea("1 in2").value.millionths == 645'160'000);
  // Seen, rounded there to seven figures: yd2 0.8361274 m2, gal 3.785412 L, qt 0.9463529 L, pt 0.4731765 L,
  // fl oz 29.57353 mL. The exact ones follow from 1 in = 25.4 mm and 1 gal = 231 in3 (recomputed).
  CHECK(parseArea("1 yd2").value.millionths == 836'127'360'000);
  CHECK(parseVolume("1 gal").value.millionths == 3'785'411'784);
  CHECK(parseVolume("1 qt").value.millionths == 946'352'946);
  CHECK(parseVolume("1 pt").value.millionths == 473'176'473);
  CHECK(parseVolume("16 fl oz").value == parseVolume("1 pt").value);
  CHECK(parseVolume("1 fl oz").value.millionths == 29'573'530);  // 29 573 529.5625, rounded to the nanolitre
}

TEST_CASE("temperatures convert by (t - 32) / 1.8") {
  // NIST SP 811 (2008), App. B.8: t/C = (t/F - 32)/1.8. The values are recomputed; -40 and 212 from memory.
  const std::pair<const char*, std::int64_t> table[] = {
      {"-40 F", -40'000'000}, {"0 F", -17'777'778}, {"14 F", -10'000'000}, {"32 F", 0},
      {"50 F", 10'000'000},   {"59 F", 15'000'000}, {"68 F", 20'000'000},  {"77 \u00B0F", 25'000'000},
      {"86F", 30'000'000},    {"90 F", 32'222'222}, {"104 F", 40'000'000}, {"212 F", 100'000'000}};
  for (const auto& [text, expected] : table) {
    INFO(text);
    CHECK(parseTemperature(text).value.millionths == expected);
  }
  CHECK(parseTemperature("8 \u00B0C").value.millionths == 8'000'000);
  CHECK(parseTemperature("-2.5 C").value.millionths == -2'500'000);
  CHECK(parseTemperature("\u22125 C").value.millionths == -5'000'000);
}

TEST_CASE("lengths are read in every spelling of the trade") {
  CHECK(nm("12.4 m") == 12'400'000'000);
  CHECK(nm("138 mm") == 138'000'000);
  CHECK(nm("138mm") == 138'000'000);
  CHECK(nm("13.8 cm") == 138'000'000);
  CHECK(nm("50 um") == 50'000);
  CHECK(nm("40 ft 6 in") == 486 * 25'400'000LL);
  CHECK(nm("40'6\"") == 486 * 25'400'000LL);
  CHECK(nm("40' 6\"") == 486 * 25'400'000LL);
  CHECK(nm("40' 6 1/2\"") == 486 * 25'400'000LL + 12'700'000);
  CHECK(nm("5 1/2 in") == 139'700'000);
  CHECK(nm("5-1/2 in") == 139'700'000);
  CHECK(nm("1/2 in") == 12'700'000);
  CHECK(nm("7/64 in") == 7 * 396'875);
  CHECK(nm("1/3 in") == 8'466'667);  // 8 466 666.67 nm
  CHECK(nm(" 6.2\u00A0m ") == 6'200'000'000);
  CHECK(nm("-3 m") == -3'000'000'000);
  CHECK(nm("0 m") == 0);
}

TEST_CASE("areas, volumes, shares and times are read") {
  CHECK(parseArea("24 m2").value == base::squareMetres(24));
  CHECK(parseArea("24 m\u00B2").value == base::squareMetres(24));
  CHECK(parseArea("100 sq ft").value == parseArea("100 ft2").value);
  CHECK(parseVolume("2.5 L").value == base::millilitres(2500));
  CHECK(parseVolume("2.5l").value == base::millilitres(2500));
  CHECK(parseVolume("750 mL").value == base::millilitres(750));
  CHECK(parseShare("5 %").value == base::Share::whole(5));
  CHECK(parseShare("12.5%").value.millionths == 12'500'000);
  CHECK(parseTime("45 min").value.millionths == 750'000);
  CHECK(parseTime("12 h").value == base::Hours::whole(12));
  CHECK(parseTime("1 h 30 min").value.millionths == 1'500'000);
  CHECK(parseTime("14 d").value == base::Hours::whole(336));
}

TEST_CASE("a spreading rate keeps the two amounts it was given in") {
  const auto metric = parseSpread("5.6 m2/L").value;
  CHECK(metric.area.millionths == 5'600'000'000'000);
  CHECK(metric.volume == base::litres(1));
  const auto us = parseSpread("350 ft2/gal").value;
  CHECK(us.area.millionths == 350 * 92'903'040'000);
  CHECK(us.volume.millionths == 3'785'411'784);
  const auto turned = parseSpread("125 mL/m\u00B2").value;
  CHECK(turned.area == base::squareMetres(1));
  CHECK(turned.volume == base::millilitres(125));
  CHECK_FALSE(parseSpread("350 sq ft / gal").problem);
}

TEST_CASE("rates per hour, fixed units, numbers and money are read") {
  CHECK(parsePerHour("40 m2/h", PerHour::Area).value == base::Count::whole(40));
  CHECK(parsePerHour("430 ft2/h", PerHour::Area).value.millionths == 39'948'307);  // 39.948 307 2
  CHECK(parsePerHour("60 m/h", PerHour::Length).value == base::Count::whole(60));
  CHECK(parsePerHour("140 pieces/h", PerHour::Pieces).value == base::Count::whole(140));
  CHECK(parsePerHour("140 /h", PerHour::Pieces).value == base::Count::whole(140));
  CHECK(parseWith("kg/m3", "830 kg/m\u00B3").value == base::Count::whole(830));
  CHECK(parseWith("m/s2", "3.5 m/s2").value.millionths == 3'500'000);
  CHECK(parseNumber("0.05").value.millionths == 50'000);
  CHECK(parseWhole("40").value == 40);
  CHECK(parseMoney("118.00", 2).value.minor == 11'800);
  CHECK(parseMoney("118", 2).value.minor == 11'800);
  CHECK(parseMoney("118.5", 2).value.minor == 11'850);
  CHECK(parseMoney("118", 0).value.minor == 118);
  CHECK(parsePageLength("20 mm").value.millipoints == 56'693);  // 20 / 25.4 x 72 = 56.6929
  CHECK(parsePageLength("3.5 pt").value.millipoints == 3500);
}

TEST_CASE("what is no quantity is refused with its reason") {
  CHECK(said(parseLength("12.4")) == "'12.4' needs a unit; write '12.4 m'");
  CHECK(said(parseArea("24")) == "'24' needs a unit; write '24 m2'");
  CHECK(said(parseShare("5")) == "'5' needs a unit; write '5 %'");
  CHECK(said(parseSpread("8")) == "'8' needs a unit; write '8 m2/L'");
  CHECK(said(parsePerHour("40", PerHour::Area)) == "'40' needs a unit; write '40 m2/h'");
  CHECK(said(parseWith("g/L", "420")) == "'420' needs a unit; write '420 g/L'");
  const std::string lengths =
      "; lengths are given in m, cm, mm, um, ft, in or yd, like '12.4 m' or '40 ft 6 in'";
  CHECK(said(parseLength("5 L")) == "'5 L' is not a length" + lengths);
  CHECK(said(parseLength("5 m2")) == "'5 m2' is not a length" + lengths);
  CHECK(said(parseLength("wide")) == "'wide' is not a length" + lengths);
  CHECK(said(parseLength("5 m/L")) == "'5 m/L' is not a length" + lengths);
  CHECK(said(parseLength("5 mtr")) == "'mtr' is not a known unit" + lengths);
  CHECK(said(parseLength("")) == "'' is empty" + lengths);
  CHECK(said(parseLength("1,5 m")) == "'1,5' has a comma in its number; write '1.5 m'");
  CHECK(said(parseLength("1,500 mm")) == "'1,500' has a comma in its number; write '1500 mm' or '1.500 mm'");
  CHECK(said(parseLength("5 m 3 m")) ==
        "the parts of '5 m 3 m' do not fall: the second must be less than one of the first" + lengths);
  CHECK(said(parseLength("40 ft 14 in")) ==
        "the parts of '40 ft 14 in' do not fall: the second must be less than one of the first" + lengths);
  CHECK(said(parseSpread("8 m2")) ==
        "'8 m2' is not a spreading rate; spreading rates are given like '8 m2/L', '350 ft2/gal' or '125 "
        "mL/m2'");
  CHECK(said(parsePerHour("40 m/h", PerHour::Area)) ==
        "'40 m/h' is not a rate in m2/h; this rate is given like '40 m2/h'");
  CHECK(said(parseMoney("$118", 2)) ==
        "'$118' is not an amount of money; write the number alone, without a currency sign, like 118.00");
  CHECK(said(parseMoney("118 NZD", 2)) ==
        "'118 NZD' is not an amount of money; write the number alone, without a currency sign, like 118.00");
  CHECK(said(parseMoney("118.005", 2)) == "'118.005' has more than 2 decimals; round it to the cent");
  CHECK(said(parseWhole("2.5")) == "'2.5' is not a whole number; write digits only, like 12");
  CHECK(said(parseWhole("1234567890123")) ==
        "'1234567890123' has too many digits; round it: twelve digits before the point, nine after");
  CHECK(said(parseLength("999999999999 m")) == "'999999999999 m' is too large; check number and unit");
}

TEST_CASE("numbers of programmers are no numbers here") {
  for (const char* s : {"1e400", "1e3", "nan", ".inf", "-.inf", "0x10", "1_000", "010", "1.", ".5", "+5",
                        "1/0", "1.2.3", "1e-400", "--5"}) {
    INFO(s);
    CHECK(parseNumber(s).problem);
    CHECK(parseWhole(s).problem);
    CHECK(parseMoney(s, 2).problem);
    CHECK(parseLength(std::string(s) + " m").problem);
    CHECK(parseShare(std::string(s) + " %").problem);
  }
}

TEST_CASE("a length written out comes back exactly") {
  rc::check([] {
    const auto n = *rc::gen::inRange<std::int64_t>(0, 10'000'000'000'000);
    std::string decimals = std::to_string(n % 1'000'000);
    decimals.insert(0, 6 - decimals.size(), '0');
    return parseLength(std::to_string(n / 1'000'000) + "." + decimals + " mm").value.millionths == n;
  });
  rc::check([] {
    const auto sixteenths = *rc::gen::inRange<std::int64_t>(1, 1'000'000);
    const std::string text = std::to_string(sixteenths / 192) + " ft " +
                             std::to_string(sixteenths / 16 % 12) + " " + std::to_string(sixteenths % 16) +
                             "/16 in";
    return parseLength(text).value.millionths == sixteenths * 1'587'500;
  });
}

TEST_CASE("no text makes the quantity parser fall over") {
  const std::string letters = "0123456789 .,-/'\"mftinLgalyd2%hCFx_";
  rc::check([&] {
    std::string s;
    for (const int i :
         *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, static_cast<int>(letters.size()))))
      s += letters[static_cast<std::size_t>(i)];
    (void)parseLength(s);
    (void)parseSpread(s);
    (void)parseTime(s);
    (void)parseTemperature(s);
    (void)parsePerHour(s, PerHour::Pieces);
    (void)parseWith("kg/m3", s);
    (void)parseMoney(s, 2);
  });
}
