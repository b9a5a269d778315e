#include "sheets/facts/facts_price.h"

#include "model/lookup.h"
#include "sheets/facts/facts_common.h"

#include <algorithm>

namespace sheets {
namespace {

using Kind = model::LineKind;

std::string unitWords(const model::PriceLine& line, const Formatter& w) {
  const std::int64_t n = line.quantity.millionths / 1'000'000;
  switch (line.unit) {
    case model::LineUnit::Area:
      return w.areaUnit();
    case model::LineUnit::Volume:
      return w.volumeUnit();
    case model::LineUnit::Days:
      return w.counted("price.days", n);
    case model::LineUnit::Lot:
      return w("price.lot");
  }
  return {};
}

const char* materialKey(model::Work work) {
  switch (work) {
    case model::Work::Wash:
      return "price.materials.wash";
    case model::Work::Fix:
      return "price.materials.fix";
    case model::Work::Sand:
      return "price.materials.sand";
    case model::Work::Oil:
      return "price.materials.oil";
  }
  return "";
}

Facts lineFacts(const model::PriceLine& line, const model::JobResult& x, const Formatter& w,
                const std::string& group, bool withCosts) {
  const auto isWork = [&](model::Work k) { return Fact::yes(line.kind == Kind::Work && line.work == k); };
  int coats = 0;
  for (const auto& c : x.estimate.coats) coats = line.deck == c.deck ? std::max(coats, c.coat) : coats;
  const auto passes = static_cast<std::int64_t>(x.c.job.sanding.size());
  const bool isCounted = line.unit != model::LineUnit::Area && line.unit != model::LineUnit::Volume;
  Facts f{{"group", group},
          {"wash", isWork(model::Work::Wash)},
          {"fix", isWork(model::Work::Fix)},
          {"sand", isWork(model::Work::Sand)},
          {"oil", isWork(model::Work::Oil)},
          {"preparation", Fact::yes(line.kind == Kind::Preparation)},
          {"oil_for_all", Fact::yes(line.kind == Kind::Product)},
          {"consumables", Fact::yes(line.kind == Kind::Consumables)},
          {"travel", Fact::yes(line.kind == Kind::Travel)},
          {"disposal", Fact::yes(line.kind == Kind::Disposal)},
          {"materials", line.kind == Kind::Consumables ? capitalised(materialWords(x, w)) : ""},
          {"passes", w.times(static_cast<int>(passes))},
          {"coats", capitalised(w.counted("coats.count", coats))},
          {"quantity", w.number(line.quantity, isCounted ? 0 : 2)},
          {"unit", unitWords(line, w)},
          {"amount", w.money(line.amount)}};
  if (withCosts) f.emplace_back("cost", w.money(line.cost));
  return f;
}

FactList linesOf(const model::JobResult& x, const Formatter& w, bool withCosts) {
  FactList list;
  std::string last;
  for (const auto& line : x.price.lines) {
    const std::string group = line.deck
                                  ? deckLetter(*line.deck) + "\u00A0\u00A0" + x.c.job.areas[*line.deck].name
                                  : w("price.all_decks");
    list.push_back(lineFacts(line, x, w, group == last ? "" : group, withCosts));
    last = group;
  }
  return list;
}

/// All outlays of one kind: 'nine visits, 2028 to 2036'.
Facts outlayFacts(const model::TenYears& t, model::TenYears::Kind kind, int firstYear, const Formatter& w) {
  using Kind = model::TenYears::Kind;
  std::int64_t n = 0;
  base::Money each;
  std::string from, to;
  for (const auto& o : t.outlays) {
    if (o.kind != kind) continue;
    each = o.amount;
    to = std::to_string(firstYear + o.year);
    if (n++ == 0) from = to;
  }
  return {{"years", n > 2    ? w.range(from, to)
                    : n == 2 ? w.joined({from, to})
                             : from},
          {"what", kind == Kind::Today   ? w("ten_years.today")
                   : kind == Kind::Visit ? w.counted("ten_years.visits", n)
                                         : w.counted("ten_years.sandings", n)},
          {"each", n > 1 ? w.money(each) : ""},
          {"amount", w.money(each * n)}};
}

Facts tenYearsFacts(const model::JobResult& x, const Formatter& w) {
  using Kind = model::TenYears::Kind;
  const model::TenYears t = x.tenYears.value_or(model::TenYears{});
  const auto basis = x.c.firm.tenYears.value_or(model::TenYearsBasis{});
  const int first = static_cast<int>(std::chrono::year_month_day{x.plan.finished.day}.year());
  FactList rows;
  bool sands = false;
  for (const auto kind : {Kind::Today, Kind::Visit, Kind::Sanding}) {
    const bool isPaid = std::any_of(t.outlays.begin(), t.outlays.end(),
                                    [&](const auto& outlay) { return outlay.kind == kind; });
    if (isPaid) rows.push_back(outlayFacts(t, kind, first, w));
    sands = sands || (isPaid && kind == Kind::Sanding);
  }
  const auto part =
      t.sum > base::Money{} ? base::mulDiv(x.price.total.minor, 100, t.sum.minor, base::Round::HalfUp) : 0;
  return {{"asked", Fact::yes(x.tenYears.has_value())},
          {"span", w.range(std::to_string(first), std::to_string(first + 9))},
          {"rows", std::move(rows)},
          {"sum", w.money(t.sum)},
          {"about", roughMoney(t.sum, w)},
          {"today_share", w.share(base::Share::whole(part))},
          {"worth", roughMoney(t.presentValue, w)},
          {"per_year", roughMoney(t.perYear, w)},
          {"rate", w.share(basis.discountRate)},
          {"rise", basis.priceRise.isZero() ? "" : w.share(basis.priceRise)},
          {"between", w.counted("waits.months", x.c.product->times.maintenanceMonths)},
          {"sands", Fact::yes(sands)}};
}

}  // namespace

std::string roughMoney(base::Money m, const Formatter& w) {
  const auto& region = w.region();
  std::int64_t coins = 1, step = 1;
  for (int i = 0; i < region.currencyDigits; ++i) coins *= 10;
  std::int64_t whole = base::divide(m.minor, coins, base::Round::HalfUp);
  while (whole / step >= 1000) step *= 10;
  whole = base::divide(whole, step, base::Round::HalfUp) * step;
  return region.numbers.currencyBefore + w.number(base::Count::whole(whole), 0) +
         region.numbers.currencyAfter;
}

std::string materialWords(const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> words;
  for (const auto work : {model::Work::Wash, model::Work::Fix, model::Work::Sand, model::Work::Oil}) {
    if (model::asksFor(x.c.job.work, work)) words.push_back(w(materialKey(work)));
  }
  return oneLine(words, w);
}

void addPrice(Facts& facts, const model::JobResult& x, const Formatter& w, bool withCosts) {
  const auto& p = x.price;
  const auto& pricing = x.c.job.price;
  const auto& region = *x.c.region;
  const base::Share rate = pricing.tax.value_or(region.tax.rate);
  facts.emplace_back("currency",
                     Facts{{"name", region.currencyName},
                           {"sign", region.numbers.currencyBefore + region.numbers.currencyAfter}});
  facts.emplace_back("price", Facts{{"lines", linesOf(x, w, withCosts)},
                                    {"subtotal", w.money(p.subtotal)},
                                    {"has_discount", Fact::yes(p.discount.minor > 0)},
                                    {"discount", "\u2212" + w.money(p.discount)},
                                    {"discount_share", w.share(pricing.discount)},
                                    {"discount_reason", pricing.discountReason},
                                    {"net", w.money(p.net)},
                                    {"net_sign", w.signedMoney(p.net)},
                                    {"has_tax", Fact::yes(rate.millionths > 0)},
                                    {"tax_name", region.tax.name},
                                    {"tax_title", capitalised(region.tax.name)},
                                    {"tax_rate", w.share(rate)},
                                    {"tax", w.money(p.tax)},
                                    {"total", w.money(p.total)},
                                    {"total_sign", w.signedMoney(p.total)}});
  FactList options;
  for (std::size_t i = 0; i < pricing.options.size(); ++i) {
    options.push_back({{"text", pricing.options[i].text}, {"price", w.money(p.options[i])}});
  }
  facts.emplace_back("has_options", Fact::yes(!options.empty()));
  facts.emplace_back("options", std::move(options));
  FactList stages;
  for (std::size_t i = 0; i < p.stages.size(); ++i) {
    const bool isDeposit = i == 0 && p.deposit.minor > 0, isLast = !isDeposit && p.stages[i].when.empty();
    stages.push_back(
        {{"share", w.share(p.stages[i].share)},
         {"is_deposit", Fact::yes(isDeposit)},
         {"is_last", Fact::yes(isLast)},
         {"waits", Fact::yes(isDeposit && x.c.job.customer.isUninvited && region.cancellation.isStandstill)},
         {"when", isDeposit || isLast ? "" : p.stages[i].when},
         {"amount", w.money(p.stages[i].amount)}});
  }
  facts.emplace_back("stages", std::move(stages));
  facts.emplace_back("ten_years", tenYearsFacts(x, w));
}

}  // namespace sheets
