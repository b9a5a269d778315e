// Mistakes in content files: each test copies tests/sample_content to a folder of its own,
// spoils one file, and compares all that is said.
#include "content_folder.h"
#include "near.h"

using fixture::Bad;
using fixture::checkEach;
using fixture::Folder;
namespace fs = std::filesystem;

TEST_CASE("content, firm and theme files are read to the last digit") {
  Folder folder;
  const model::Content c = folder.content();
  const model::Product& p = c.products.at("oil");
  CHECK(p.id == "oil");
  CHECK(p.kind == model::ProductKind::PenetratingOil);
  CHECK(p.isDryingOil);
  CHECK_FALSE(p.isWaterborne);
  CHECK(p.tins.at("nz").at(0).size == base::millilitres(750));  // smallest first
  CHECK(p.tins.at("nz").at(1).price.minor == 11'800);
  CHECK(p.tins.at("us").at(0).size.millionths == 3'785'411'784);  // 1 gal: NIST SP 811 (2008), App. B.8
  CHECK(p.rates.at(model::Uptake::Open).at(1).area == base::squareMetres(12));
  CHECK(p.rates.at(model::Uptake::Tight).at(0).area.millionths == 500 * 92'903'040'000);
  CHECK(p.lowUse == base::Share::whole(85));
  CHECK(p.highUse == base::Share::whole(120));
  CHECK(p.openedLoss == base::Share::whole(10));  // where the file says nothing
  CHECK(p.times.touchDry == base::Hours::whole(6));
  CHECK(p.times.rainSafe == base::Hours::whole(8));
  CHECK(p.times.wipeOff.millionths == 500'000);
  CHECK(p.times.recoatMin == base::Hours::whole(12));
  CHECK(p.times.recoatIdealTo == base::Hours::whole(24));
  CHECK(p.times.recoatMax == base::Hours::whole(72));
  CHECK(p.times.rugs == base::Hours::whole(14 * 24));
  CHECK(p.times.maintenanceMonths == 12);
  CHECK(p.limits.airMin.millionths == 7'777'778);  // 46 F: (46 - 32) / 1.8
  CHECK(p.limits.airMax == base::Temperature::whole(32));
  CHECK(p.limits.moistureMax == base::Share::whole(16));
  CHECK(p.limits.windMax == base::Count{7'500'000});
  CHECK(p.openTime.millionths == 333'333);
  CHECK(p.vocGramsPerLitre == 420);
  CHECK(p.sds->signalWord == "Warning");
  CHECK(p.sds->statements == std::vector<std::string>{"H226", "EUH066"});
  CHECK(p.sds->flashPoint == base::Temperature::whole(62));
  CHECK(p.gramsPerLitre == 860);
  CHECK(p.sds->precautions == std::vector<std::string>{"P210", "P301+P310"});
  CHECK(p.sds->vapours.at(0).substance == "spirit");
  CHECK(p.sds->vapours.at(0).exposureLimit == 350);
  CHECK(p.sds->vapours.at(0).lowerExplosiveLimit.millionths == 600'000);
  CHECK(p.sds->vapours.at(0).molarMass == 142);
  const model::Region& nz = c.regions.at("nz");
  CHECK(nz.currency == "NZD");
  CHECK(nz.currencyDigits == 2);
  CHECK(nz.numbers.currencyBefore == "$");
  CHECK(nz.tax.rounding == base::Round::HalfDown);
  CHECK_FALSE(nz.tax.onLines);
  CHECK(nz.states.at("S") == "South");
  REQUIRE(nz.depositCaps.size() == 2);
  const auto& law = nz.depositCaps[0];
  CHECK(law.states == std::vector<std::string>{"S"});
  CHECK((law.from == base::Money{500'01} && law.to == base::Money{9000'00}));
  CHECK((law.part == 1 && law.whole == 3));
  CHECK(law.amount == base::Money{800'00});
  CHECK(law.specialOrders == model::SpecialOrders::Added);
  CHECK_FALSE(law.isAdvice);
  const auto& advice = nz.depositCaps[1];
  CHECK((advice.states.empty() && !advice.from && !advice.to && !advice.amount));
  CHECK(advice.part * 10 == advice.whole);
  CHECK(advice.isAdvice);
  CHECK(nz.cancellation.text == "You may cancel.");
  CHECK((nz.cancellation.days == 5 && nz.cancellation.uninvitedDays == 30));
  CHECK(nz.cancellation.counted == model::CountedDays::Working);
  CHECK(nz.cancellation.isStandstill);
  REQUIRE(nz.holidays.size() == 1);
  CHECK(nz.holidays[0].name == "Show Day");
  CHECK(nz.holidays[0].source == "an act of 2003");
  CHECK(nz.holidays[0].states == std::vector<std::string>{"N"});
  CHECK(nz.limits.noise.rule == model::NoiseRule::Average8h);
  CHECK(nz.limits.noise.lower == 80);
  CHECK(nz.limits.noise.limit == 87);
  CHECK(nz.limits.vibration.action->millionths == 2'500'000);
  CHECK(nz.limits.vibration.limit == base::Count::whole(5));
  CHECK(nz.limits.dust.hardwood->millionths == 1'500'000);
  CHECK_FALSE(nz.limits.dust.softwood);
  CHECK(nz.leadUntil == 1980);
  CHECK(nz.equipment.at("ears") == "class 4");
  const model::Region& us = c.regions.at("us");
  CHECK(us.tax.onLines);
  CHECK(us.units == model::UnitSystem::UsCustomary);
  CHECK(us.paper == model::Paper::Letter);
  CHECK(us.monthFirst);
  CHECK(us.depositCaps.empty());
  CHECK(us.limits.noise.rule == model::NoiseRule::Osha);
  CHECK_FALSE(us.limits.noise.lower);
  CHECK_FALSE(us.limits.vibration.action);
  CHECK(us.limits.heat.usesHeatIndex);
  const model::Timber& kwila = c.timbers.at("kwila");
  CHECK(kwila.isHardwood);
  CHECK_FALSE(kwila.mayBeTreated);
  CHECK(kwila.densityKgPerM3 == 830);
  CHECK(kwila.uptake.at(model::State::Weathered) == model::Uptake::Open);
  CHECK(c.consumables.at("cleaner").price.at("us").minor == 940);
  CHECK_FALSE(c.consumables.at("cleaner").soaksOil);
  CHECK(c.consumables.at("pad").soaksOil);
  CHECK(c.tasks.at(0).measure == model::Measure::Job);
  CHECK(c.tasks.at(0).hoursEach == base::Hours::whole(1));
  const model::Task& wash = c.tasks.at(1);
  CHECK(wash.work == model::Work::Wash);
  CHECK(wash.ratePerHour == base::Count::whole(30));
  CHECK(wash.timeByState.at(model::State::Weathered) == base::Share::whole(120));
  CHECK(wash.dryAfter == base::Hours::whole(36));
  CHECK(wash.uses.at(0).per.millionths == 50'000);
  CHECK(wash.wears == std::vector<std::string>{"boots", "gloves"});
  const model::Task& sand = c.tasks.at(2);
  CHECK(sand.isPerPass);
  CHECK(sand.ratePerHour.millionths == 13'935'456);  // 150 ft2 = 13.935 456 m2
  CHECK(sand.rateByGrit.at(40) == base::Count::whole(9));
  CHECK(c.tools.at(0).soundDb == 86);
  CHECK(c.tools.at(0).vibration->millionths == 2'500'000);

  const model::Firm b = folder.firm();
  CHECK(b.name == "Tideboard Timber Care");
  CHECK(b.address.size() == 2);
  CHECK(b.logoFile == (folder.path() / "logo.png").string());
  CHECK(b.colours.at("accent") == model::Colour{0x7a, 0x45, 0x22});
  CHECK(b.theme == "generous");
  CHECK(b.rates.at("nz").labourCostPerHour.minor == 4200);
  CHECK(b.rates.at("nz").margin == base::Share::whole(25));

  const model::Theme t = folder.theme();
  CHECK(t.marginLeft == 56'693);
  CHECK(t.textWidth == 334'488);
  CHECK(t.unit == 3500);
  CHECK(t.faces.at(model::Face::SansBold) == (folder.path() / "face.ttf").string());
  CHECK(t.fallbackFaces.size() == 1);
  CHECK(t.styles.size() == 16);
  CHECK(t.styles.at("signal").tracking == 1200);
  CHECK(t.styles.at("total").tabular);
  CHECK(t.styles.at("body").strong == model::Face::TextBold);  // goes with the face unless named
  CHECK(t.styles.at("note").emphasis == model::Face::SansItalic);
  CHECK(t.styles.at("table").strong == model::Face::Sans);
  CHECK(t.colours.at("notice") == model::Colour{0x00, 0x53, 0x87});
  CHECK(folder.said() == "");
}

TEST_CASE("mistakes in content files are told with the whole message") {
  const Bad table[] = {
      {"regions/nz.yaml", "upper: 85 dB", "upper: 79 dB",
       "regions/nz.yaml:15:10: error: limits.noise: the levels do not rise: lower, upper, limit\n"
       "  hint: check the three against their source\n"},
      {"regions/nz.yaml", "upper: 85 dB", "uper: 85 dB",
       "regions/nz.yaml:15:51: error: limits.noise: 'uper' is not a known key here; did you mean 'upper'?\n"
       "  hint: known: from, until, rule, lower, upper, limit, protector, real_world_loss or source\n"},
      {"regions/nz.yaml", "limit: 5 m/s2", "limit: 2 m/s2",
       "regions/nz.yaml:16:14: error: limits.vibration: the limit is below the action value\n"
       "  hint: check both against their source\n"},
      {"regions/nz.yaml", "hardwood: 1.5 mg/m3", "hardwood: 1.5 g/m3",
       "regions/nz.yaml:17:20: error: limits.dust.hardwood: '1.5 g/m3' is not a value in mg/m3\n"
       "  hint: it is given like '12 mg/m3'\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}",
       "[{until: 2026-11-30, protection: P2, source: a}, {from: 2026-12-02, protection: P2, source: b}]",
       "regions/nz.yaml:17:65: error: limits.dust[2].from: the rule before it ends on 2026-11-30\n"
       "  hint: write from: 2026-12-01\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}",
       "[{protection: P2, source: a}, {from: 2026-12-01, protection: P2, source: b}]",
       "regions/nz.yaml:17:10: error: limits.dust[1]: 'until' is missing\n"
       "  hint: write it like until: 2026-11-30\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}",
       "[{until: 2026-11-30, protection: P2, source: a}, {protection: P2, source: b}]",
       "regions/nz.yaml:17:58: error: limits.dust[2]: 'from' is missing\n"
       "  hint: write it like from: 2026-12-01\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}",
       "{until: 2026-11-30, protection: P2, source: a}",
       "regions/nz.yaml:17:17: error: limits.dust.until: the last rule has no 'until'\n"
       "  hint: add the rule that follows it, with its 'from:'\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}",
       "{from: 2026-11-30, protection: P2, source: a}",
       "regions/nz.yaml:17:16: error: limits.dust.from: the first rule has no 'from'\n"
       "  hint: put the rule before it first\n"},
      {"regions/nz.yaml", "{hardwood: 1.5 mg/m3, protection: P2, source: an example}", "[]",
       "regions/nz.yaml:17:9: error: limits.dust: the list is empty\n"
       "  hint: write the rule that is in force\n"},
      {"regions/us.yaml", "form: heat index", "form: wet bulb",
       "regions/us.yaml:15:16: error: limits.heat.form: 'wet bulb' is not a known form of heat\n"
       "  hint: known: heat index or apparent temperature\n"},
      {"products/oil.yaml", "lel: 0.6 %", "lel: 60 %",
       "products/oil.yaml:37:63: error: sds.vapour.lel: '60 %' is out of range\n"
       "  hint: allowed: from 0.1 % to 30 %\n"},
      {"products/oil.yaml", "density: 0.86 kg/L", "density: 860 kg/L",
       "products/oil.yaml:38:10: error: density: '860 kg/L' is out of range\n"
       "  hint: allowed: from 0.5 kg/L to 2 kg/L\n"},
      {"products/oil.yaml", "P210", "Q210",
       "products/oil.yaml:36:17: error: sds.precautions[1]: 'Q210' is not a known precautionary statement; "
       "did you "
       "mean 'P210'?\n"
       "  hint: known: P210 or P301+P310\n"},
      {"products/oil.yaml", "recoat: {min: 12 h", "recoat: {min: 14 h",
       "products/oil.yaml:17:11: error: times.recoat: the times do not rise: min, the two of ideal, max\n"
       "  hint: min is not above the first of ideal, max not below the second\n"},
      {"products/oil.yaml", "rain_safe: 8 h", "rain_safe: 2 h",
       "products/oil.yaml:15:14: error: times.rain_safe: a coat is not rain safe before it is touch dry\n"
       "  hint: give at least the time of 'touch_dry'\n"},
      {"products/oil.yaml", "wind: 7.5 m/s", "wind: 45 m/s",
       "products/oil.yaml:23:82: error: limits.wind: '45 m/s' is out of range\n"
       "  hint: allowed: from 1 m/s to 30 m/s\n"},
      {"products/oil.yaml", "kind: penetrating oil", "kind: penetrating oli",
       "products/oil.yaml:2:7: error: kind: 'penetrating oli' is not a known kind of product; did you mean "
       "'penetrating oil'?\n"
       "  hint: known: penetrating oil, water-borne oil or film stain\n"},
      {"products/oil.yaml", "size: 0.75 L", "size: 2.5 L",
       "products/oil.yaml:5:38: error: tins.nz[2]: this size is given twice\n"
       "  hint: leave one out\n"},
      {"products/oil.yaml", "  us: [", "  uk: [",
       "products/oil.yaml:6:3: error: tins.uk: 'uk' is not a known region\n"
       "  hint: known: nz or us\n"},
      {"products/oil.yaml", "  tight: [500 ft2/gal]", "  tight: []",
       "products/oil.yaml:11:10: error: rates.tight: at least one rate is needed\n"
       "  hint: write one for each coat, like [8 m2/L, 12 m2/L]\n"},
      {"products/oil.yaml", "tight: [500 ft2/gal]", "tight: [0.1 m2/L]",
       "products/oil.yaml:11:11: error: rates.tight[1]: '0.1 m2/L' is out of range\n"
       "  hint: allowed: from 0.5 m2/L to 100 m2/L\n"},
      {"products/oil.yaml", "low: 85 %", "low: 105 %",
       "products/oil.yaml:12:12: error: use.low: '105 %' is out of range\n"
       "  hint: allowed: from 10 % to 100 %\n"},
      {"products/oil.yaml", "use: {low", "opened_loss: 130 %\nuse: {low",
       "products/oil.yaml:12:14: error: opened_loss: '130 %' is out of range\n"
       "  hint: allowed: from 0 % to 100 %\n"},
      {"products/oil.yaml", "maintenance: 12 months", "maintenance: 1 year",
       "products/oil.yaml:22:16: error: times.maintenance: '1 year' is not a value in months\n"
       "  hint: it is given like '12 months'\n"},
      {"products/oil.yaml", "voc: 420 g/L", "voc: 420",
       "products/oil.yaml:25:6: error: voc: '420' needs a unit\n"
       "  hint: write '420 g/L'\n"},
      {"products/oil.yaml", "flash_point: 62 C", "flash_point: 62 m",
       "products/oil.yaml:30:16: error: sds.flash_point: '62 m' is not a temperature\n"
       "  hint: temperatures are given in C or F, like '20 C'\n"},
      {"products/oil.yaml", "air: [46 F, 32 C]", "air: [32 C, 46 F]",
       "products/oil.yaml:23:15: error: limits.air: the second temperature is not above the first\n"
       "  hint: write the lowest first, like [8 C, 32 C]\n"},
      {"products/oil.yaml", "signal: Warning", "signal: warning",
       "products/oil.yaml:27:11: error: sds.signal: 'warning' is not a known signal word; did you mean "
       "'Warning'?\n"
       "  hint: known: Danger or Warning\n"},
      {"products/oil.yaml", "[H226, EUH066]", "[226, EUH066]",
       "products/oil.yaml:28:16: error: sds.statements[1]: '226' is not a known hazard statement; did you "
       "mean "
       "'H226'?\n"
       "  hint: known: EUH066 or H226\n"},
      {"products/oil.yaml", "drying_oil: true", "drying_oil: true\ncolours: [{name: oak, screen: brown}]",
       "products/oil.yaml:4:31: error: colours[1].screen: 'brown' is not a colour\n"
       "  hint: write it in quotes like '#7a4522'\n"},
      {"products/oil.yaml", "drying_oil: true",
       "drying_oil: true\ncolours: [{name: oak, screen: '#7a4522'}, {name: oak, screen: '#7a4522'}]",
       "products/oil.yaml:4:50: error: colours[2].name: 'oak' is given twice\n"
       "  hint: leave one out\n"},
      {"products/oil.yaml", "drying_oil: true", "drying_oil: perhaps",
       "products/oil.yaml:3:13: error: drying_oil: 'perhaps' is not a known answer\n"
       "  hint: known: true, false, yes or no\n"},
      {"regions/nz.yaml", "rounding: half down", "rounding: half",
       "regions/nz.yaml:4:40: error: tax.rounding: 'half' is not a known rounding; did you mean 'half up' or "
       "'half down' or 'half even'?\n"
       "  hint: known: half up, half down, half even, up or down\n"},
      {"regions/nz.yaml", "code: NZD", "code: dollars",
       "regions/nz.yaml:3:18: error: currency.code: 'dollars' is not a currency code\n"
       "  hint: write three capitals (ISO 4217), like NZD\n"},
      {"regions/nz.yaml", "group: ','", "group: '.'",
       "regions/nz.yaml:8:10: error: numbers: the decimal sign also parts the thousands\n"
       "  hint: write another sign under 'group', or '' for none\n"},
      {"regions/nz.yaml", "dates: day first", "dates: year first",
       "regions/nz.yaml:7:8: error: dates: 'year first' is not a known order of dates; did you mean 'day "
       "first'?\n"
       "  hint: known: day first or month first\n"},
      {"regions/nz.yaml", ", source: two", "",
       "regions/nz.yaml:12:110: error: deposit[2]: 'source' is missing\n"
       "  hint: write it like source: title and year of the rule\n"},
      {"regions/nz.yaml", "{most: 10 %, advice: true", "{advice: true",
       "regions/nz.yaml:12:110: error: deposit[2]: neither 'most' nor 'amount' is given\n"
       "  hint: write the share, like 'most: 10 %', the amount, or both\n"},
      {"regions/nz.yaml", "states: [S]", "states: [W]",
       "regions/nz.yaml:12:21: error: deposit[1].states[1]: 'W' is not a known state\n"
       "  hint: known: N or S\n"},
      {"regions/nz.yaml", "first Tuesday of November + 10", "Cup Day",
       "regions/nz.yaml:23:79: error: holidays[1].days[1].day: 'Cup Day' is not a day of every year\n"
       "  hint: write it like '25 December', 'first Monday of June', 'last Monday of May - 1', 'Easter + 1', "
       "'Monday nearest 29 January' or 'Wednesday on or after 10 August'\n"},
      {"regions/nz.yaml", "first Tuesday of November + 10", "29 February",
       "regions/nz.yaml:23:79: error: holidays[1].days[1].day: '29 February' is not a day of every year\n"
       "  hint: write it like '25 December', 'first Monday of June', 'last Monday of May - 1', 'Easter + 1', "
       "'Monday nearest 29 January' or 'Wednesday on or after 10 August'\n"},
      {"regions/nz.yaml", ", day: first Tuesday of November + 10", ", weekend: Friday",
       "regions/nz.yaml:23:57: error: holidays[1].days[1]: neither 'day' nor 'dates' is given\n"
       "  hint: write the rule, like 'day: 25 December', or the dates of each year\n"
       "regions/nz.yaml:23:83: error: holidays[1].days[1].weekend: 'Friday' is not a known rule for "
       "weekends\n"
       "  hint: known: Monday too, Monday instead, Monday instead of Sunday, two days later too, two days "
       "later or nearest weekday too\n"},
      {"regions/nz.yaml", "states: [N], days", "states: [E], days",
       "regions/nz.yaml:23:46: error: holidays[1].states[1]: 'E' is not a known state\n"
       "  hint: known: N or S\n"},
      {"regions/nz.yaml", "counted: working days", "counted: weekdays",
       "regions/nz.yaml:13:77: error: cancellation.counted: 'weekdays' is not a known way to count days\n"
       "  hint: known: all days, working days or working days and Saturdays\n"},
      {"tasks.yaml", "rate: 30 m2/h", "rate: 30 m/h",
       "tasks.yaml:7:11: error: tasks[2].rate: '30 m/h' is not a rate in m2/h\n"
       "  hint: this rate is given like '40 m2/h'\n"},
      {"tasks.yaml", "hours: 1 h", "rate: 1 m2/h",
       "tasks.yaml:2:5: error: tasks[1]: 'hours' is missing\n"
       "  hint: a task per job or per day takes a fixed time; write it like hours: 0.5 h\n"
       "tasks.yaml:2:46: error: tasks[1].rate: a task per job or per day has no rate\n"
       "  hint: give its 'hours'\n"},
      {"tasks.yaml", "rate: 30 m2/h", "hours: 2 h",
       "tasks.yaml:3:5: error: tasks[2]: 'rate' is missing\n"
       "  hint: write it like rate: 30 m2/h\n"
       "tasks.yaml:7:12: error: tasks[2].hours: only a task per job or per day has 'hours'\n"
       "  hint: give its 'rate'\n"},
      {"tasks.yaml", "    each: pass\n", "",
       "tasks.yaml:17:12: error: tasks[3].rates: only a task repeated for each pass has rates by grit\n"
       "  hint: add 'each: pass'\n"},
      {"tasks.yaml", "    each: pass\n", "    each: pass\n    raised: {new: 2 %}\n",
       "tasks.yaml:17:13: error: tasks[3].raised: only a task per fixings has a share of raised ones\n"
       "  hint: leave it out, or write per: fixings\n"},
      {"tasks.yaml", "    each: pass\n", "    each: pass\n    check: 1500 pieces/h\n",
       "tasks.yaml:17:12: error: tasks[3].check: only a task per fixings looks them over\n"
       "  hint: leave it out, or write per: fixings\n"},
      {"tasks.yaml", "{40: 9 m2/h}", "{coarse: 9 m2/h}",
       "tasks.yaml:18:13: error: tasks[3].rates.coarse: 'coarse' is not a grit\n"
       "  hint: write a number from 12 to 600\n"},
      {"tasks.yaml", "id: sand", "id: wash",
       "tasks.yaml:12:5: error: tasks[3]: the task 'wash' is given twice\n"
       "  hint: give each its own id\n"},
      {"tasks.yaml", "wears: [mask]", "wears: [masc]",
       "tasks.yaml:19:13: error: tasks[3].wears[1]: 'masc' is not a known piece of protective equipment; did "
       "you mean 'mask'?\n"
       "  hint: known: boots, gloves, eyes, ears, mask, gas_mask or sleeves\n"},
      {"tasks.yaml", "{cleaner: 0.05}", "{cleener: 0.05}",
       "tasks.yaml:10:12: error: tasks[2].uses.cleener: 'cleener' is not a known consumable; did you mean "
       "'cleaner'?\n"
       "  hint: known: cleaner or pad\n"},
      {"tools.yaml", "tasks: [wash]", "tasks: [wahs]",
       "tools.yaml:2:34: error: tools.washer.tasks[1]: 'wahs' is not a known task; did you mean 'wash'?\n"
       "  hint: known: clear, wash or sand\n"},
      {"tools.yaml", "sound: 86 dB", "sound: 860 dB",
       "tools.yaml:2:48: error: tools.washer.sound: '860 dB' is out of range\n"
       "  hint: allowed: from 30 dB to 140 dB\n"},
      {"tools.yaml", "sound: 86 dB", "sound: 86.5 dB",
       "tools.yaml:2:48: error: tools.washer.sound: '86.5 dB' is not a whole number\n"
       "  hint: round it\n"},
      {"timbers.yaml", "density: 830 kg/m3", "density: 8300 kg/m3",
       "timbers.yaml:2:49: error: timbers.kwila.density: '8300 kg/m3' is out of range\n"
       "  hint: allowed: from 50 kg/m3 to 1500 kg/m3\n"},
      {"timbers.yaml", "film: tight", "film: dense",
       "timbers.yaml:2:134: error: timbers.kwila.uptake.film: 'dense' is not a known thirst of boards\n"
       "  hint: known: tight, medium, open or thirsty\n"},
      {"consumables.yaml", "nz: 14.50", "nz: 14.505",
       "consumables.yaml:2:49: error: consumables.cleaner.price.nz: '14.505' has more than 2 decimals\n"
       "  hint: round it to the cent\n"},
  };
  checkEach(table, [](Folder& f) { f.content(); });
}
