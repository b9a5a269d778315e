#include "input/content_parts.h"
#include "input/words.h"

namespace input {
namespace {

/// Signs and separators keep their spaces: ' €' after an amount, a no-break space between thousands.
std::string sign(const Field& f) {
  const std::string s = f.word().value_or("");
  if (s.size() > 16) f.error("the sign is longer than 16 bytes");
  return s;
}

void readCurrency(const Field& f, model::Region& region) {
  if (!f.isGiven()) return;
  Record r(f);
  const Field code = r.must("code");
  region.currency = text(code);
  if (!region.currency.empty() &&
      (region.currency.size() != 3 ||
       region.currency.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") != std::string::npos))
    code.error(inQuotes(region.currency) + " is not a currency code",
               "write three capitals (ISO 4217), like NZD");
  region.currencyName = text(r.must("name"));
  region.currencyDigits = whole(r.may("digits"), {0, 3, "from 0 to 3"}, 2);
  const Field before = r.may("before"), after = r.may("after");
  if (before.isGiven()) region.numbers.currencyBefore = sign(before);
  if (after.isGiven()) region.numbers.currencyAfter = sign(after);
  r.finish();
}

model::TaxRule readTax(const Field& f) {
  model::TaxRule t;
  if (!f.isGiven()) return t;
  constexpr Word<bool> onWords[] = {{"total", false}, {"lines", true}};
  Record r(f);
  t.name = text(r.must("name"));
  t.rate = quantity(r.must("rate"), parseShare, {{0}, base::Share::whole(50), "from 0 % to 50 %"});
  t.rounding = choice(r.must("rounding"), roundWords, "rounding", t.rounding);
  t.onLines = choice(r.must("on"), onWords, "base of the tax", t.onLines);
  t.source = text(r.must("source"));
  r.finish();
  return t;
}

/// '85 dB' of a day, where given.
std::optional<int> decibels(const Field& f) {
  if (!f.isGiven()) return {};
  return wholeWith(f, "dB", {60, 140, "from 60 dB to 140 dB"});
}

std::optional<base::Count> amount(const Field& f, const char* unit, Limits<base::Count> limits) {
  if (!f.isGiven()) return {};
  return quantityWith(f, unit, limits);
}

void readNoise(const Field& f, model::WorkLimits& l) {
  constexpr Word<model::NoiseRule> ruleWords[] = {{"average of 8 hours", model::NoiseRule::Average8h},
                                                  {"osha", model::NoiseRule::Osha}};
  Record r(f);
  l.noise = choice(r.must("rule"), ruleWords, "rule for noise", l.noise);
  l.noiseLower = decibels(r.may("lower"));
  l.noiseUpper = decibels(r.may("upper"));
  l.noiseLimit = decibels(r.may("limit"));
  l.noiseSource = text(r.must("source"));
  r.finish();
  if ((l.noiseLower && l.noiseUpper && *l.noiseLower > *l.noiseUpper) ||
      (l.noiseUpper && l.noiseLimit && *l.noiseUpper > *l.noiseLimit))
    f.error("the levels do not rise: lower, upper, limit");
}

void readVibration(const Field& f, model::WorkLimits& l) {
  constexpr Limits<base::Count> sane = {base::Count{100'000}, base::Count::whole(20),
                                        "from 0.1 m/s2 to 20 m/s2"};
  Record r(f);
  l.vibrationAction = amount(r.may("action"), "m/s2", sane);
  l.vibrationLimit = amount(r.may("limit"), "m/s2", sane);
  l.vibrationSource = text(r.must("source"));
  r.finish();
  if (l.vibrationAction && l.vibrationLimit && *l.vibrationLimit < *l.vibrationAction)
    f.error("the limit is below the action value");
}

void readDust(const Field& f, model::WorkLimits& l) {
  constexpr Limits<base::Count> sane = {base::Count{10'000}, base::Count::whole(50),
                                        "from 0.01 mg/m3 to 50 mg/m3"};
  Record r(f);
  l.hardwoodDust = amount(r.may("hardwood"), "mg/m3", sane);
  l.softwoodDust = amount(r.may("softwood"), "mg/m3", sane);
  l.dustProtection = text(r.must("protection"));
  l.dustSource = text(r.must("source"));
  r.finish();
}

model::WorkLimits readLimits(const Field& f) {
  constexpr Word<bool> heatWords[] = {{"heat index", true}, {"apparent temperature", false}};
  model::WorkLimits l;
  if (!f.isGiven()) return l;
  Record r(f);
  if (const Field noise = r.must("noise"); noise.isGiven()) readNoise(noise, l);
  if (const Field vibration = r.may("vibration"); vibration.isGiven()) readVibration(vibration, l);
  if (const Field dust = r.must("dust"); dust.isGiven()) readDust(dust, l);
  if (const Field heat = r.must("heat"); heat.isGiven()) {
    Record h(heat);
    l.usesHeatIndex = choice(h.must("form"), heatWords, "form of heat", l.usesHeatIndex);
    l.heatSource = text(h.must("source"));
    h.finish();
  }
  if (const Field lead = r.may("lead"); lead.isGiven()) {
    Record h(lead);
    l.leadUntil = whole(h.must("until"), {1900, 2100, "a year from 1900 to 2100"}, 1900);
    l.leadSource = text(h.must("source"));
    h.finish();
  }
  if (const Field equipment = r.must("equipment"); equipment.isGiven()) {
    Record e(equipment);
    for (const auto& word : wearWords) {
      if (const Field grade = e.may(word.name); grade.isGiven()) l.equipment[word.name] = text(grade);
    }
    e.finish();
  }
  r.finish();
  return l;
}

std::string digits(const Field& f) {
  std::string s = text(f);
  if (s.find_first_not_of("0123456789") != std::string::npos)
    f.error(inQuotes(s) + " is not written in digits alone");
  return s;
}

model::Dialling readDialling(const Field& f) {
  model::Dialling d;
  Record r(f);
  d.country = digits(r.must("country"));
  d.trunk = digits(r.must("trunk"));
  d.abroad = digits(r.must("abroad"));
  d.digits = whole(r.may("digits"), {1, 15, "from 1 to 15"}, 0);
  r.finish();
  return d;
}

}  // namespace

model::Region readRegion(Record& r) {
  constexpr Word<const char*> topicWords[] = {{"safety", "safety"},
                                              {"waste", "waste"},
                                              {"lead", "lead"},
                                              {"treated", "treated"},
                                              {"rights", "rights"}};
  constexpr Word<bool> dateWords[] = {{"day first", false}, {"month first", true}};
  model::Region region;
  region.name = text(r.must("name"));
  region.language = text(r.must("language"));
  readCurrency(r.must("currency"), region);
  region.tax = readTax(r.must("tax"));
  region.units = choice(r.must("units"), unitWords, "system of units", region.units);
  region.paper = choice(r.must("paper"), paperWords, "paper", region.paper);
  region.monthFirst = choice(r.must("dates"), dateWords, "order of dates", region.monthFirst);
  if (const Field f = r.must("numbers"); f.isGiven()) {
    Record n(f);
    region.numbers.decimal = sign(n.must("decimal"));
    region.numbers.group = sign(n.must("group"));
    n.finish();
    if (region.numbers.decimal.empty()) f.error("the decimal sign is empty");
    if (region.numbers.decimal == region.numbers.group) f.error("the decimal sign also parts the thousands");
  }
  region.emergencyNumber = text(r.must("emergency"));
  if (const Field f = r.may("telephone"); f.isGiven()) region.dialling = readDialling(f);
  region.powerCutout = text(r.must("cutout"));
  for (const Field& item : r.must("authorities").items()) {
    Record a(item);
    model::Authority authority;
    const Field about = a.must("about");
    if (const auto known = chosen(about, topicWords, "matter of an authority")) authority.about = *known;
    authority.name = text(a.must("name"));
    a.finish();
    region.authorities.push_back(std::move(authority));
  }
  region.limits = readLimits(r.must("limits"));
  if (const Field f = r.may("deposit"); f.isGiven()) {
    Record d(f);
    region.depositMost = quantity(d.must("most"), parseShare, toWhole, base::Share::whole(100));
    region.depositSource = text(d.must("source"));
    d.finish();
  }
  if (const Field f = r.may("cancellation"); f.isGiven()) {
    Record d(f);
    region.cancellation = text(d.must("text"));
    region.cancellationSource = text(d.must("source"));
    d.finish();
  }
  if (const Field f = r.may("weather"); f.isGiven()) {
    Record w(f);
    region.normals = readNormals(w);
    w.finish();
  }
  return region;
}

}  // namespace input
