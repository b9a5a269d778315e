#include "input/content/content_parts.h"
#include "input/yaml/hex_colour.h"
#include "input/yaml/words.h"

#include <algorithm>

namespace input {
namespace {

using base::Hours;
using base::Share;
using base::Temperature;

constexpr const char* ratesExample =
    "{thirsty: [6 m2/L], open: [8 m2/L], medium: [10 m2/L], tight: [12 m2/L]}";
constexpr const char* timesExample =
    "{touch_dry: 6 h, recoat: {min: 12 h, ideal: [12 h, 24 h], max: 72 h}, walk: 24 h, furniture: 72 h, "
    "rugs: 14 d, first_wash: 28 d, maintenance: 12 months}";

constexpr Share usualOpenedLoss = Share::whole(10);  // common practice

std::vector<model::Tin> readTins(const Field& f, int digits) {
  std::vector<model::Tin> tins;
  for (const Field& item : f.items()) {
    Record r(item);
    model::Tin t;
    t.size = quantity(r.must("size", "1 L"), parseVolume, tinSizes);
    t.price = money(r.must("price", "118.00"), digits);
    if (const Field code = r.may("code"); code.isGiven()) t.code = text(code);
    r.finish();
    for (const model::Tin& other : tins) {
      if (other.size == t.size && !t.size.isZero()) item.error("this size is given twice", "leave one out");
    }
    if (!t.size.isZero()) tins.push_back(t);
  }
  std::sort(tins.begin(), tins.end(), [](const auto& a, const auto& b) { return a.size < b.size; });
  return tins;
}

std::vector<model::NamedColour> readColours(const Field& f) {
  std::vector<model::NamedColour> colours;
  constexpr std::size_t most = 12;  // three rows of the quote
  const auto items = f.items();
  if (items.size() > most)
    f.error("a quote has no room for " + std::to_string(items.size()) + " colours",
            "keep the " + std::to_string(most) + " you sell most");
  for (const Field& item : items) {
    Record r(item);
    model::NamedColour one;
    const Field name = r.must("name", "teak");
    if (name.isGiven()) one.name = text(name);
    if (const Field screen = r.must("screen", "'#8b5e3c'"); screen.isGiven()) one.colour = colour(screen);
    r.finish();
    const auto isSame = [&](const auto& other) { return other.name == one.name; };
    if (!one.name.empty() && std::any_of(colours.begin(), colours.end(), isSame))
      name.error(inQuotes(one.name) + " is given twice", "leave one out");
    colours.push_back(std::move(one));
  }
  return colours;
}

std::map<model::Uptake, std::vector<base::Spread>> readRates(const Field& f) {
  std::map<model::Uptake, std::vector<base::Spread>> rates;
  if (!f.isGiven()) return rates;
  Record r(f);
  for (const auto& word : uptakeWords) {
    const Field list = r.must(word.name, "[8 m2/L, 12 m2/L]");
    const std::vector<Field> items = list.items();
    if (list.isEmptyList())
      list.error("at least one rate is needed", "write one for each coat, like [8 m2/L, 12 m2/L]");
    for (const Field& item : items) rates[word.value].push_back(spread(item));
  }
  r.finish();
  return rates;
}

Hours time(const Field& f) {
  return quantity(f, parseTime, {Hours{10'000}, Hours::whole(24 * 366), "from 1 min to 366 d"},
                  Hours::whole(1));
}

void readRecoat(const Field& f, model::ProductTimes& t) {
  if (!f.isGiven()) return;
  Record r(f);
  t.recoatMin = time(r.must("min", "12 h"));
  const Field ideal = r.must("ideal", "[12 h, 24 h]");
  const std::vector<Field> both = ideal.items();
  if (ideal.is(Node::Kind::List) && both.size() != 2)
    ideal.error("two times are needed", "write them like [12 h, 24 h]");
  t.recoatIdealFrom = both.size() == 2 ? time(both[0]) : t.recoatMin;
  t.recoatIdealTo = both.size() == 2 ? time(both[1]) : t.recoatIdealFrom;
  t.recoatMax = time(r.must("max", "72 h"));
  r.finish();
  if (t.recoatMin > t.recoatIdealFrom || t.recoatIdealFrom > t.recoatIdealTo || t.recoatIdealTo > t.recoatMax)
    f.error("the times do not rise: min, the two of ideal, max",
            "min is not above the first of ideal, max not below the second");
}

model::ProductTimes readTimes(const Field& f) {
  model::ProductTimes t;
  if (!f.isGiven()) return t;
  Record r(f);
  t.touchDry = time(r.must("touch_dry", "6 h"));
  const Field rain = r.may("rain_safe");
  t.rainSafe = rain.isGiven() ? time(rain) : t.touchDry;
  if (t.rainSafe < t.touchDry)
    rain.error("a coat is not rain safe before it is touch dry", "give at least the time of 'touch_dry'");
  if (const Field wipe = r.may("wipe_off"); wipe.isGiven()) t.wipeOff = time(wipe);
  readRecoat(r.must("recoat", "{min: 12 h, ideal: [12 h, 24 h], max: 72 h}"), t);
  t.walk = time(r.must("walk", "24 h"));
  t.furniture = time(r.must("furniture", "72 h"));
  t.rugs = time(r.must("rugs", "14 d"));
  t.firstWash = time(r.must("first_wash", "28 d"));
  t.maintenanceMonths =
      wholeWith(r.must("maintenance", "12 months"), "months", {1, 120, "from 1 to 120 months"});
  r.finish();
  return t;
}

model::ProductLimits readLimits(const Field& f) {
  constexpr Limits<Temperature> weather = {Temperature::whole(-40), Temperature::whole(70),
                                           "from -40 C to 70 C"};
  model::ProductLimits l;
  if (!f.isGiven()) return l;
  Record r(f);
  const Field air = r.must("air", "[8 C, 32 C]");
  const std::vector<Field> both = air.items();
  if (both.size() == 2) {
    l.airMin = quantity(both[0], parseTemperature, weather);
    l.airMax = quantity(both[1], parseTemperature, weather);
    if (l.airMin >= l.airMax)
      air.error("the second temperature is not above the first", "write the lowest first, like [8 C, 32 C]");
  } else if (air.is(Node::Kind::List)) {
    air.error("two temperatures are needed", "write them like [8 C, 32 C]");
  }
  l.surfaceMax = quantity(r.must("surface", "40 C"), parseTemperature, weather);
  l.humidityMax = quantity(r.must("humidity", "85 %"), parseShare, toWhole);
  l.moistureMax = quantity(r.must("moisture", "16 %"), parseShare, toWhole);
  if (const Field wind = r.may("wind"); wind.isGiven())
    l.windMax =
        quantityWith(wind, "m/s", {base::Count::whole(1), base::Count::whole(30), "from 1 m/s to 30 m/s"});
  r.finish();
  return l;
}

/// Codes of a label, 'H226', 'P210' or 'GHS02', each with a standard text.
std::vector<std::string> codes(const Field& f, const std::map<std::string, std::string>& texts,
                               const char* what) {
  std::vector<std::string> all;
  for (const Field& item : f.items()) all.push_back(knownId(item, texts, what));
  return all;
}

model::Vapour readVapour(const Field& f) {
  model::Vapour v;
  Record r(f);
  v.substance = text(r.must("substance", "mineral spirit"));
  const Field limit = r.must("exposure_limit", "350 mg/m3");
  v.isInPpm = limit.isGiven() && limit.word().value_or("").ends_with("ppm");
  v.exposureLimit = v.isInPpm ? wholeWith(limit, "ppm", {1, 10'000, "from 1 ppm to 10000 ppm"})
                              : wholeWith(limit, "mg/m3", {1, 10'000, "from 1 mg/m3 to 10000 mg/m3"});
  v.lowerExplosiveLimit = quantity(r.must("lel", "0.6 %"), parseShare,
                                   {Share{100'000}, Share::whole(30), "from 0.1 % to 30 %"}, Share::whole(1));
  v.molarMass =
      wholeWith(r.must("molar_mass", "142 g/mol"), "g/mol", {16, 1000, "from 16 g/mol to 1000 g/mol"});
  if (const Field share = r.may("share"); share.isGiven())
    v.share = quantity(share, parseShare, {Share::whole(1), Share::whole(100), "from 1 % to 100 %"}, v.share);
  r.finish();
  return v;
}

/// One solvent, or a list of them with their shares.
std::vector<model::Vapour> readVapours(const Field& f) {
  if (!f.is(Node::Kind::List)) return {readVapour(f)};
  std::vector<model::Vapour> all;
  Share sum;
  for (const Field& item : f.items()) {
    all.push_back(readVapour(item));
    sum += all.back().share;
  }
  if (sum > Share::whole(100))
    f.error("the shares come to more than 100 %", "they are parts of what evaporates");
  return all;
}

}  // namespace

model::SafetyData readSafetyData(const Field& f, const model::LabelTexts& labels) {
  constexpr Word<const char*> signalWords[] = {{"Danger", "Danger"}, {"Warning", "Warning"}};
  Record r(f);
  model::SafetyData s;
  if (const Field signal = r.may("signal"); signal.isGiven())
    s.signalWord = choice(signal, signalWords, "signal word", "");
  s.statements = codes(r.must("statements", "[H226]"), labels.statements, "hazard statement");
  s.pictograms = codes(r.must("pictograms", "[GHS02]"), labels.pictograms, "pictogram");
  if (const Field list = r.may("precautions"); list.isGiven())
    s.precautions = codes(list, labels.precautions, "precautionary statement");
  if (const Field vapour = r.may("vapour"); vapour.isGiven()) s.vapours = readVapours(vapour);
  if (const Field flash = r.may("flash_point"); flash.isGiven())
    s.flashPoint = quantity(flash, parseTemperature,
                            {Temperature::whole(-60), Temperature::whole(400), "from -60 C to 400 C"});
  s.skin = text(r.must("skin", "Wash with soap and water."));
  s.eyes = text(r.must("eyes", "Rinse with clean water, then see a doctor."));
  s.inhaled = text(r.must("inhaled", "Go into fresh air."));
  s.swallowed = text(r.must("swallowed", "Call a doctor at once."));
  s.spill = text(r.must("spill", "Dam it with sand."));
  if (const Field mix = r.may("mix"); mix.isGiven()) s.mix = text(mix);
  r.finish();
  return s;
}

model::Product readProduct(Record& r, const std::map<std::string, model::Region>& regions,
                           const model::LabelTexts& labels) {
  model::Product p;
  p.name = text(r.must("name", "penetrating oil for outdoor timber"));
  if (const Field f = r.may("supplier"); f.isGiven()) p.supplier = text(f);
  p.kind = choice(r.must("kind", "penetrating oil"), productKindWords, "kind of product", p.kind);
  p.isDryingOil = yesNo(r.must("drying_oil", "true"), true);
  p.isWaterborne = yesNo(r.may("waterborne"), p.kind == model::ProductKind::WaterborneOil);
  if (const Field f = r.must("tins", "{nz: [{size: 2.5 L, price: 118.00}]}"); f.isGiven()) {
    Record tins(f);
    for (const auto& [id, at, list] : tins.all()) {
      const auto region = regions.find(id);
      if (region == regions.end()) {
        reportUnknown(at, id, "region", keysOf(regions));
      } else {
        p.tins[id] = readTins(list, region->second.currencyDigits);
      }
    }
    tins.finish();
  }
  p.colours = readColours(r.may("colours"));
  p.rates = readRates(r.must("rates", ratesExample));
  if (const Field f = r.must("use", "{low: 85 %, high: 120 %}"); f.isGiven()) {
    Record use(f);
    p.lowUse = quantity(use.must("low", "85 %"), parseShare,
                        {Share::whole(10), Share::whole(100), "from 10 % to 100 %"}, Share::whole(100));
    p.highUse = quantity(use.must("high", "120 %"), parseShare,
                         {Share::whole(100), Share::whole(300), "from 100 % to 300 %"}, Share::whole(100));
    use.finish();
  }
  p.openedLoss = quantity(r.may("opened_loss"), parseShare, toWhole, usualOpenedLoss);
  p.times = readTimes(r.must("times", timesExample));
  p.limits =
      readLimits(r.must("limits", "{air: [8 C, 32 C], surface: 40 C, humidity: 85 %, moisture: 16 %}"));
  p.openTime = time(r.must("open_time", "20 min"));
  p.vocGramsPerLitre = wholeWith(r.must("voc", "420 g/L"), "g/L", {0, 1500, "from 0 g/L to 1500 g/L"});
  if (const Field f = r.may("density"); f.isGiven())
    p.gramsPerLitre = static_cast<int>(base::mulDiv(
        quantityWith(f, "kg/L", {base::Count{500'000}, base::Count::whole(2), "from 0.5 kg/L to 2 kg/L"})
            .millionths,
        1, 1000, base::Round::HalfUp));
  if (const Field f = r.may("sds"); f.isGiven()) p.sds = readSafetyData(f, labels);
  if (const Field f = r.may("remark"); f.isGiven()) p.remark = text(f);
  return p;
}

}  // namespace input
