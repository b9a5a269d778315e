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

}  // namespace

model::Region readRegion(Record& r) {
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
  region.powerCutout = text(r.must("cutout"));
  for (const Field& item : r.must("authorities").items()) {
    Record a(item);
    model::Authority authority;
    authority.about = text(a.must("about"));
    authority.name = text(a.must("name"));
    a.finish();
    region.authorities.push_back(std::move(authority));
  }
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
  return region;
}

}  // namespace input
