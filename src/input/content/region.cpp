#include "base/currency.h"
#include "input/content/content_parts.h"
#include "input/yaml/words.h"
#include "model/lookup.h"

namespace input {
namespace {

constexpr const char* lawExample = "title and year of the rule";
constexpr const char* limitsExample =
    "{noise: {rule: average of 8 hours, protector: SNR, upper: 85 dB, source: title and year of the rule}, "
    "dust: {protection: P2, source: title and year of the rule}, "
    "heat: {form: apparent temperature, source: title and year of the rule}, equipment: {gloves: EN 374}}";

/// Signs and separators keep their spaces: ' €' after an amount, a no-break space between thousands.
std::string sign(const Field& f) {
  const std::string s = f.word().value_or("");
  if (s.size() > 16) f.error("the sign is longer than 16 bytes", "write it as printed, like '$'");
  return s;
}

void readCurrency(const Field& f, model::Region& region) {
  if (!f.isGiven()) return;
  Record r(f);
  const Field code = r.must("code", "NZD");
  region.currency = text(code);
  if (!region.currency.empty() &&
      (region.currency.size() != 3 ||
       region.currency.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") != std::string::npos))
    code.error(inQuotes(region.currency) + " is not a currency code",
               "write three capitals (ISO 4217), like NZD");
  region.currencyName = text(r.must("name", "New Zealand dollars"));
  const int usual = base::currencyDigits(region.currency).value_or(2);
  region.currencyDigits = whole(r.may("digits"), {0, 3, "from 0 to 3"}, usual);
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
  t.name = text(r.must("name", "GST"));
  t.rate = quantity(r.must("rate", "15 %"), parseShare, {{0}, base::Share::whole(50), "from 0 % to 50 %"});
  t.rounding = choice(r.must("rounding", "half up"), roundWords, "rounding", t.rounding);
  t.onLines = choice(r.must("on", "total"), onWords, "base of the tax", t.onLines);
  t.source = text(r.must("source", lawExample));
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

model::NoiseLimits readNoise(Record& r) {
  constexpr Word<model::NoiseRule> ruleWords[] = {{"average of 8 hours", model::NoiseRule::Average8h},
                                                  {"osha", model::NoiseRule::Osha}};
  model::NoiseLimits l;
  l.rule = choice(r.must("rule", "average of 8 hours"), ruleWords, "rule for noise", l.rule);
  l.lower = decibels(r.may("lower"));
  l.upper = decibels(r.may("upper"));
  l.limit = decibels(r.may("limit"));
  constexpr Word<model::ProtectorRule> protectorWords[] = {{"class", model::ProtectorRule::Class},
                                                           {"SNR", model::ProtectorRule::Snr},
                                                           {"NRR", model::ProtectorRule::Nrr}};
  l.protector = choice(r.must("protector", "SNR"), protectorWords, "rule for ear protectors", l.protector);
  if (const Field loss = r.may("real_world_loss"); loss.isGiven())
    l.realWorldLoss = wholeWith(loss, "dB", {0, 20, "from 0 dB to 20 dB"});
  l.source = text(r.must("source", lawExample));
  if ((l.lower && l.upper && *l.lower > *l.upper) || (l.upper && l.limit && *l.upper > *l.limit))
    r.field().error("the levels do not rise: lower, upper, limit", "check the three against their source");
  return l;
}

model::VibrationLimits readVibration(Record& r) {
  constexpr Limits<base::Count> sane = {base::Count{100'000}, base::Count::whole(20),
                                        "from 0.1 m/s2 to 20 m/s2"};
  model::VibrationLimits l;
  l.action = amount(r.may("action"), "m/s2", sane);
  l.limit = amount(r.may("limit"), "m/s2", sane);
  l.source = text(r.must("source", lawExample));
  if (l.action && l.limit && *l.limit < *l.action)
    r.field().error("the limit is below the action value", "check both against their source");
  return l;
}

model::DustLimits readDust(Record& r) {
  constexpr Limits<base::Count> sane = {base::Count{10'000}, base::Count::whole(50),
                                        "from 0.01 mg/m3 to 50 mg/m3"};
  model::DustLimits l;
  l.hardwood = amount(r.may("hardwood"), "mg/m3", sane);
  l.softwood = amount(r.may("softwood"), "mg/m3", sane);
  l.protection = text(r.must("protection", "P2"));
  l.source = text(r.must("source", lawExample));
  return l;
}

model::HeatLimits readHeat(Record& r) {
  constexpr Word<bool> formWords[] = {{"heat index", true}, {"apparent temperature", false}};
  model::HeatLimits l;
  l.usesHeatIndex =
      choice(r.must("form", "apparent temperature"), formWords, "form of heat", l.usesHeatIndex);
  l.source = text(r.must("source", lawExample));
  return l;
}

/// A rule for every day, or a list of rules one after another: the first has no 'from', the last no 'until'.
template <class Rule, class Read>
void readInTurn(const Field& f, model::Region& region, Rule model::WorkLimits::*kind, Read read) {
  if (!f.isGiven()) return;
  if (f.isEmptyList()) f.error("the list is empty", "write the rule that is in force");
  const auto rules = f.is(Node::Kind::List) ? f.items() : std::vector<Field>{f};
  std::optional<base::Date> follows;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    const bool isFirst = i == 0, isLast = i + 1 == rules.size();
    Record r(rules[i]);
    const Field from = isFirst ? r.may("from") : r.must("from", "2026-12-01");
    const Field until = isLast ? r.may("until") : r.must("until", "2026-11-30");
    if (isFirst && from.isGiven()) from.error("the first rule has no 'from'", "put the rule before it first");
    if (isLast && until.isGiven())
      until.error("the last rule has no 'until'", "add the rule that follows it, with its 'from:'");
    const auto start = from.isGiven() && !isFirst ? date(from) : base::Date{};
    if (follows && from.isGiven() && start != *follows)
      from.error("the rule before it ends on " + base::isoDate(*follows - std::chrono::days{1}),
                 "write from: " + base::isoDate(*follows));
    const Rule rule = read(r);
    r.finish();
    if (isFirst) region.limits.*kind = rule;
    else region.laterLimits.try_emplace(start, model::limitsOn(region, start));
    for (auto later = region.laterLimits.lower_bound(start); later != region.laterLimits.end(); ++later)
      later->second.*kind = rule;
    if (!isLast && until.isGiven()) follows = date(until) + std::chrono::days{1};
  }
}

void readLimits(const Field& f, model::Region& region) {
  if (!f.isGiven()) return;
  Record r(f);
  readInTurn(
      r.must("noise",
             "{rule: average of 8 hours, protector: SNR, upper: 85 dB, source: title and year of the rule}"),
      region, &model::WorkLimits::noise, readNoise);
  readInTurn(r.may("vibration"), region, &model::WorkLimits::vibration, readVibration);
  readInTurn(r.must("dust", "{protection: P2, source: title and year of the rule}"), region,
             &model::WorkLimits::dust, readDust);
  readInTurn(r.must("heat", "{form: apparent temperature, source: title and year of the rule}"), region,
             &model::WorkLimits::heat, readHeat);
  if (const Field lead = r.may("lead"); lead.isGiven()) {
    Record h(lead);
    region.leadUntil = whole(h.must("until", "1980"), {1900, 2100, "a year from 1900 to 2100"}, 1900);
    region.leadSource = text(h.must("source", lawExample));
    h.finish();
  }
  if (const Field falls = r.must("falls", "{from: 0 m, source: title and year of the rule}");
      falls.isGiven()) {
    Record h(falls);
    region.falls.from =
        quantity(h.must("from", "0 m"), parseLength, {base::Length{}, base::metres(5), "from 0 m to 5 m"});
    region.falls.source = text(h.must("source", lawExample));
    h.finish();
  }
  if (const Field equipment = r.must("equipment", "{gloves: EN 374}"); equipment.isGiven()) {
    Record e(equipment);
    for (const auto& word : wearWords) {
      if (const Field grade = e.may(word.name); grade.isGiven()) region.equipment[word.name] = text(grade);
    }
    e.finish();
  }
  r.finish();
}

/// '10 %', or a fraction like '1/3' that no share says exactly.
void readMost(const Field& f, model::DepositCap& cap) {
  if (!f.isGiven()) return;
  if (f.is(Node::Kind::Word) && f.node()->word == "1/3") {
    cap.whole = 3;
    return;
  }
  cap.part = quantity(f, parseShare, toWhole, base::Share::whole(100)).millionths;
  cap.whole = base::Share::whole(100).millionths;
}

model::DepositCap readDepositCap(const Field& f, const model::Region& region) {
  constexpr Word<model::SpecialOrders> orderWords[] = {{"added", model::SpecialOrders::Added},
                                                       {"instead", model::SpecialOrders::Instead}};
  model::DepositCap cap;
  Record r(f);
  for (const Field& state : r.may("states").items())
    cap.states.push_back(knownId(state, region.states, "state"));
  const Field from = r.may("from"), to = r.may("to"), most = r.may("most"), amount = r.may("amount");
  if (from.isGiven()) cap.from = money(from, region.currencyDigits);
  if (to.isGiven()) cap.to = money(to, region.currencyDigits);
  readMost(most, cap);
  if (amount.isGiven()) cap.amount = money(amount, region.currencyDigits);
  if (!most.isGiven() && !amount.isGiven())
    f.error("neither 'most' nor 'amount' is given",
            "write the share, like 'most: 10 %', the amount, or both");
  cap.specialOrders = choice(r.may("special_orders"), orderWords, "use of special orders", cap.specialOrders);
  cap.isAdvice = yesNo(r.may("advice"), false);
  cap.source = text(r.must("source", lawExample));
  r.finish();
  return cap;
}

model::Cancellation readCancellation(const Field& f) {
  constexpr Word<model::CountedDays> countWords[] = {
      {"all days", model::CountedDays::All},
      {"working days", model::CountedDays::Working},
      {"working days and Saturdays", model::CountedDays::WorkingAndSaturdays}};
  constexpr Limits<int> sane = {1, 365, "from 1 to 365"};
  model::Cancellation c;
  Record r(f);
  c.text = text(r.must("text", "You may cancel within 5 working days."));
  c.days = whole(r.must("days", "5"), sane, 1);
  if (const Field days = r.may("uninvited_days"); days.isGiven()) c.uninvitedDays = whole(days, sane, 1);
  c.counted = choice(r.must("counted", "working days"), countWords, "way to count days", c.counted);
  c.isStandstill = yesNo(r.may("standstill"), false);
  c.source = text(r.must("source", lawExample));
  r.finish();
  return c;
}

std::string digits(const Field& f) {
  std::string s = text(f);
  if (s.find_first_not_of("0123456789") != std::string::npos)
    f.error(inQuotes(s) + " is not written in digits alone", "write it like '64'");
  return s;
}

model::Dialling readDialling(const Field& f) {
  model::Dialling d;
  Record r(f);
  d.country = digits(r.must("country", "'64'"));
  d.trunk = digits(r.must("trunk", "'0'"));
  d.abroad = digits(r.must("abroad", "'00'"));
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
  region.name = text(r.must("name", "New Zealand"));
  region.language = text(r.must("language", "en-NZ"));
  readCurrency(r.must("currency", "{code: NZD, name: New Zealand dollars}"), region);
  region.tax = readTax(r.must(
      "tax", "{name: GST, rate: 15 %, rounding: half up, on: total, source: title and year of the rule}"));
  region.units = choice(r.must("units", "metric"), unitWords, "system of units", region.units);
  region.paper = choice(r.must("paper", "a4"), paperWords, "paper", region.paper);
  region.monthFirst = choice(r.must("dates", "day first"), dateWords, "order of dates", region.monthFirst);
  if (const Field f = r.must("numbers", "{decimal: '.', group: ','}"); f.isGiven()) {
    Record n(f);
    region.numbers.decimal = sign(n.must("decimal", "'.'"));
    region.numbers.group = sign(n.must("group", "','"));
    n.finish();
    if (region.numbers.decimal.empty()) f.error("the decimal sign is empty", "write '.' or ','");
    if (region.numbers.decimal == region.numbers.group)
      f.error("the decimal sign also parts the thousands",
              "write another sign under 'group', or '' for none");
  }
  region.emergencyNumber = text(r.must("emergency", "'111'"));
  if (const Field f = r.may("telephone"); f.isGiven()) region.dialling = readDialling(f);
  if (const Field poison = r.may("poison"); poison.isGiven()) {
    Record p(poison);
    region.poisonLine = text(p.must("number", "'0800 000 000'"));
    region.poisonSource = text(p.must("source", "where the number stands"));
    p.finish();
  }
  region.powerCutout = text(r.must("cutout", "RCD"));
  for (const Field& item : r.must("authorities", "[{about: safety, name: WorkSafe New Zealand}]").items()) {
    Record a(item);
    model::Authority authority;
    const Field about = a.must("about", "safety");
    if (const auto known = chosen(about, topicWords, "matter of an authority")) authority.about = *known;
    authority.name = text(a.must("name", "WorkSafe New Zealand"));
    a.finish();
    region.authorities.push_back(std::move(authority));
  }
  readLimits(r.must("limits", limitsExample), region);
  if (const Field f = r.may("states"); f.isGiven()) {
    Record s(f);
    for (const auto& [id, at, name] : s.all()) region.states[id] = text(name);
    s.finish();
  }
  region.holidays = readHolidays(r.may("holidays"), region.states);
  for (const Field& item : r.may("deposit").items())
    region.depositCaps.push_back(readDepositCap(item, region));
  if (const Field f = r.may("cancellation"); f.isGiven()) region.cancellation = readCancellation(f);
  if (const Field f = r.may("new_job"); f.isGiven()) {
    Record n(f);
    constexpr std::pair<const char*, const char*> keys[] = {
        {"phone", "03 555 0100"},         {"latitude", "-45.00"}, {"longitude", "169.00"},
        {"timezone", "Pacific/Auckland"}, {"timber", "kwila"},    {"start", "2027-02-15"}};
    for (const auto& [key, example] : keys) region.newJob[key] = text(n.must(key, example));
    if (!region.states.empty()) {
      const std::string& first = region.states.begin()->first;
      region.newJob["state"] = knownId(n.must("state", first.c_str()), region.states, "state");
    }
    n.finish();
  }
  if (const Field f = r.may("weather"); f.isGiven()) {
    Record w(f);
    region.normals = readNormals(w);
    const auto north = degrees(w.must("latitude", "-45.00"), 90),
               east = degrees(w.must("longitude", "169.00"), 180);
    if (north && east)
      region.normals.place = {static_cast<double>(*north) / 1e6, static_cast<double>(*east) / 1e6};
    w.finish();
  }
  return region;
}

}  // namespace input
