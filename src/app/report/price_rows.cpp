#include "app/report/price_rows.h"

#include "app/report/csv.h"
#include "base/quantity_words.h"

namespace app {
namespace {

using model::LineKind;

struct Name {
  const char *kind, *word;  // a key below 'price_chart'
};

Name nameOf(const model::PriceLine& line, bool isStain) {
  switch (line.kind) {
    case LineKind::Work:
      break;
    case LineKind::Preparation:
      return {"preparation", "cover"};
    case LineKind::Product:
      return {"product", isStain ? "product_stain" : "product_oil"};
    case LineKind::Consumables:
      return {"consumables", "materials"};
    case LineKind::Travel:
      return {"travel", "travel"};
    case LineKind::Disposal:
      return {"disposal", "disposal"};
  }
  switch (line.work.value_or(model::Work::Oil)) {
    case model::Work::Wash:
      return {"wash", "wash"};
    case model::Work::Fix:
      return {"fix", "fix"};
    case model::Work::Sand:
      return {"sand", "sand"};
    case model::Work::Oil:
      return {"oil", isStain ? "stain" : "oil"};
  }
  throw std::logic_error("internal error: unknown line of a price");
}

std::string unitOf(model::LineUnit unit, bool isUs) {
  switch (unit) {
    case model::LineUnit::Area:
      return isUs ? "ft2" : "m2";
    case model::LineUnit::Volume:
      return isUs ? "gal" : "L";
    case model::LineUnit::Days:
      return "day";
    case model::LineUnit::Lot:
      return "lot";
  }
  throw std::logic_error("internal error: unknown unit of a price");
}

/// '5.75': a point, no groups, no more digits than it has.
std::string plainNumber(std::int64_t millionths) {
  std::string s = base::decimal(millionths, 6, ".", "");
  s.erase(s.find_last_not_of('0') + 1);
  if (s.back() == '.') s.pop_back();
  return s;
}

}  // namespace

std::vector<PriceRow> priceRows(const model::JobResult& x) {
  const bool isUs = x.c.region->units == model::UnitSystem::UsCustomary,
             isStain = x.c.product->kind == model::ProductKind::FilmStain;
  std::vector<PriceRow> rows;
  for (const auto& line : x.price.lines) {
    const Name name = nameOf(line, isStain);
    const auto area = line.deck ? std::optional(x.c.job.areas[*line.deck].name) : std::nullopt;
    rows.push_back({name.kind, x.language(std::string("price_chart.") + name.word), area, line.quantity,
                    unitOf(line.unit, isUs), line.amount});
  }
  return rows;
}

std::string plainMoney(base::Money m, int digits) {
  const bool isNegative = m.minor < 0;
  std::string s = std::to_string(isNegative ? -m.minor : m.minor);
  const auto places = static_cast<std::size_t>(digits);
  if (s.size() <= places) s.insert(0, places + 1 - s.size(), '0');
  if (places > 0) s.insert(s.size() - places, 1, '.');
  return (isNegative ? "-" : "") + s;
}

std::string rateOf(const PriceRow& row, int digits) {
  constexpr base::Wide one = 1'000'000;
  base::Wide finer = 1;
  for (;; ++digits, finer *= 10) {
    const base::Money rate{
        base::divide(finer * row.amount.minor * one, row.quantity.millionths, base::Round::HalfUp)};
    if (base::divide(base::Wide{rate.minor} * row.quantity.millionths, finer * one, base::Round::HalfUp) ==
        row.amount.minor)
      return plainMoney(rate, digits);
  }
}

std::string priceCsv(const model::JobResult& x) {
  const int digits = x.c.region->currencyDigits;
  const std::string tax = plainNumber(x.c.job.price.tax.value_or(x.c.region->tax.rate).millionths);
  std::string s = byteOrderMark + csvLine({"ref", "customer", "kind", "text", "area", "quantity", "unit",
                                           "rate", "amount", "tax_pct", "currency"});
  std::vector<PriceRow> rows = priceRows(x);
  if (const base::Money less = base::Money{} - x.price.discount; less < base::Money{})
    rows.push_back(
        {"discount", x.language("office.discount"), std::nullopt, base::Count::whole(1), "lot", less});
  for (const auto& row : rows)
    s += csvLine({x.c.job.ref, x.c.job.customer.name, row.kind, row.text, row.area.value_or(""),
                  plainNumber(row.quantity.millionths), row.unit, rateOf(row, digits),
                  plainMoney(row.amount, digits), tax, x.c.region->currency});
  return s;
}

}  // namespace app
