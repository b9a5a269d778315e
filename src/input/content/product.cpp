#include "input/content/content_parts.h"
#include "input/yaml/words.h"

#include <algorithm>

namespace input {
namespace {

using base::Hours;
using base::Share;
using base::Temperature;

std::vector<model::Tin> readTins(const Field& f, int digits) {
  std::vector<model::Tin> tins;
  for (const Field& item : f.items()) {
    Record r(item);
    model::Tin t;
    t.size = quantity(r.must("size"), parseVolume, tinSizes);
    t.price = money(r.must("price"), digits);
    r.finish();
    for (const model::Tin& other : tins) {
      if (other.size == t.size && !t.size.isZero()) item.error("this size is given twice", "leave one out");
    }
    if (!t.size.isZero()) tins.push_back(t);
  }
  std::sort(tins.begin(), tins.end(), [](const auto& a, const auto& b) { return a.size < b.size; });
  return tins;
}

std::map<model::Uptake, std::vector<base::Spread>> readRates(const Field& f) {
  std::map<model::Uptake, std::vector<base::Spread>> rates;
  if (!f.isGiven()) return rates;
  Record r(f);
  for (const auto& word : uptakeWords) {
    const Field list = r.must(word.name);
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
  t.recoatMin = time(r.must("min"));
  const Field ideal = r.must("ideal");
  const std::vector<Field> both = ideal.items();
  if (ideal.is(Node::Kind::List) && both.size() != 2)
    ideal.error("two times are needed", "write them like [12 h, 24 h]");
  t.recoatIdealFrom = both.size() == 2 ? time(both[0]) : t.recoatMin;
  t.recoatIdealTo = both.size() == 2 ? time(both[1]) : t.recoatIdealFrom;
  t.recoatMax = time(r.must("max"));
  r.finish();
  if (t.recoatMin > t.recoatIdealFrom || t.recoatIdealFrom > t.recoatIdealTo || t.recoatIdealTo > t.recoatMax)
    f.error("the times do not rise: min, the two of ideal, max",
            "min is not above the first of ideal, max not below the second");
}

model::ProductTimes readTimes(const Field& f) {
  model::ProductTimes t;
  if (!f.isGiven()) return t;
  Record r(f);
  t.touchDry = time(r.must("touch_dry"));
  const Field rain = r.may("rain_safe");
  t.rainSafe = rain.isGiven() ? time(rain) : t.touchDry;
  if (t.rainSafe < t.touchDry)
    rain.error("a coat is not rain safe before it is touch dry", "give at least the time of 'touch_dry'");
  if (const Field wipe = r.may("wipe_off"); wipe.isGiven()) t.wipeOff = time(wipe);
  readRecoat(r.must("recoat"), t);
  t.walk = time(r.must("walk"));
  t.furniture = time(r.must("furniture"));
  t.rugs = time(r.must("rugs"));
  t.firstWash = time(r.must("first_wash"));
  t.maintenanceMonths = wholeWith(r.must("maintenance"), "months", {1, 120, "from 1 to 120 months"});
  r.finish();
  return t;
}

model::ProductLimits readLimits(const Field& f) {
  constexpr Limits<Temperature> weather = {Temperature::whole(-40), Temperature::whole(70),
                                           "from -40 C to 70 C"};
  model::ProductLimits l;
  if (!f.isGiven()) return l;
  Record r(f);
  const Field air = r.must("air");
  const std::vector<Field> both = air.items();
  if (both.size() == 2) {
    l.airMin = quantity(both[0], parseTemperature, weather);
    l.airMax = quantity(both[1], parseTemperature, weather);
    if (l.airMin >= l.airMax)
      air.error("the second temperature is not above the first", "write the lowest first, like [8 C, 32 C]");
  } else if (air.is(Node::Kind::List)) {
    air.error("two temperatures are needed", "write them like [8 C, 32 C]");
  }
  l.surfaceMax = quantity(r.must("surface"), parseTemperature, weather);
  l.humidityMax = quantity(r.must("humidity"), parseShare, toWhole);
  l.moistureMax = quantity(r.must("moisture"), parseShare, toWhole);
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
  v.substance = text(r.must("substance"));
  const Field limit = r.must("exposure_limit");
  v.isInPpm = limit.isGiven() && limit.word().value_or("").ends_with("ppm");
  v.exposureLimit = v.isInPpm ? wholeWith(limit, "ppm", {1, 10'000, "from 1 ppm to 10000 ppm"})
                              : wholeWith(limit, "mg/m3", {1, 10'000, "from 1 mg/m3 to 10000 mg/m3"});
  v.lowerExplosiveLimit = quantity(r.must("lel"), parseShare,
                                   {Share{100'000}, Share::whole(30), "from 0.1 % to 30 %"}, Share::whole(1));
  v.molarMass = wholeWith(r.must("molar_mass"), "g/mol", {16, 1000, "from 16 g/mol to 1000 g/mol"});
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

model::SafetyData readSafetyData(const Field& f, const model::LabelTexts& labels) {
  constexpr Word<const char*> signalWords[] = {{"Danger", "Danger"}, {"Warning", "Warning"}};
  Record r(f);
  model::SafetyData s;
  if (const Field signal = r.may("signal"); signal.isGiven())
    s.signalWord = choice(signal, signalWords, "signal word", "");
  s.statements = codes(r.must("statements"), labels.statements, "hazard statement");
  s.pictograms = codes(r.must("pictograms"), labels.pictograms, "pictogram");
  if (const Field list = r.may("precautions"); list.isGiven())
    s.precautions = codes(list, labels.precautions, "precautionary statement");
  if (const Field vapour = r.may("vapour"); vapour.isGiven()) s.vapours = readVapours(vapour);
  if (const Field flash = r.may("flash_point"); flash.isGiven())
    s.flashPoint = quantity(flash, parseTemperature,
                            {Temperature::whole(-60), Temperature::whole(400), "from -60 C to 400 C"});
  s.skin = text(r.must("skin"));
  s.eyes = text(r.must("eyes"));
  s.inhaled = text(r.must("inhaled"));
  s.swallowed = text(r.must("swallowed"));
  s.spill = text(r.must("spill"));
  r.finish();
  return s;
}

}  // namespace

model::Product readProduct(Record& r, const std::map<std::string, model::Region>& regions,
                           const model::LabelTexts& labels) {
  model::Product p;
  p.name = text(r.must("name"));
  p.kind = choice(r.must("kind"), productKindWords, "kind of product", p.kind);
  p.isDryingOil = yesNo(r.must("drying_oil"), true);
  p.isWaterborne = yesNo(r.may("waterborne"), p.kind == model::ProductKind::WaterborneOil);
  if (const Field f = r.must("tins"); f.isGiven()) {
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
  p.rates = readRates(r.must("rates"));
  if (const Field f = r.must("use"); f.isGiven()) {
    Record use(f);
    p.lowUse = quantity(use.must("low"), parseShare,
                        {Share::whole(10), Share::whole(100), "from 10 % to 100 %"}, Share::whole(100));
    p.highUse = quantity(use.must("high"), parseShare,
                         {Share::whole(100), Share::whole(300), "from 100 % to 300 %"}, Share::whole(100));
    use.finish();
  }
  p.times = readTimes(r.must("times"));
  p.limits = readLimits(r.must("limits"));
  p.openTime = time(r.must("open_time"));
  p.vocGramsPerLitre = wholeWith(r.must("voc"), "g/L", {0, 1500, "from 0 g/L to 1500 g/L"});
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
