#include "app/charts.h"

#include "sheets/facts_decks.h"

namespace app {
namespace {

using About = figures::PricePart::About;

About aboutOf(const model::PriceLine& line) {
  switch (line.kind) {
    case model::LineKind::Work:
      break;
    case model::LineKind::Preparation:
      return About::Cover;
    case model::LineKind::Product:
      return About::Product;
    case model::LineKind::Consumables:
      return About::Materials;
    case model::LineKind::Travel:
      return About::Travel;
    case model::LineKind::Disposal:
      return About::Disposal;
  }
  switch (line.work.value_or(model::Work::Wash)) {
    case model::Work::Wash:
      return About::Wash;
    case model::Work::Fix:
      return About::Fix;
    case model::Work::Sand:
      return About::Sand;
    case model::Work::Oil:
      return About::Oil;
  }
  return About::Wash;
}

std::string nameOf(About about, const sheets::Computed& x, const sheets::Words& w) {
  const bool isStain = x.c.product->kind == model::ProductKind::FilmStain;
  switch (about) {
    case About::Wash:
      return w("price_chart.wash");
    case About::Fix:
      return w("price_chart.fix");
    case About::Sand:
      return w("price_chart.sand");
    case About::Oil:
      return w(isStain ? "price_chart.stain" : "price_chart.oil");
    case About::Cover:
      return w("price_chart.cover");
    case About::Product:
      return w(isStain ? "price_chart.product_stain" : "price_chart.product_oil");
    case About::Materials:
      return w("price_chart.materials");
    case About::Travel:
      return w("price_chart.travel");
    case About::Disposal:
      return w("price_chart.disposal");
    case About::Tax:
      return sheets::capitalised(x.c.region->tax.name);
  }
  return {};
}

}  // namespace

typeset::Drawing litresChartOf(const sheets::Computed& x, const figures::Pen& pen, typeset::Dim width) {
  const sheets::Words w(*x.c.region, x.language);
  const auto litres = sheets::printedLitres(x, w);
  const std::int64_t step = w.isMetric() ? 100'000 : 10'000;  // millionths of a litre or a gallon
  std::vector<figures::LitreRow> rows;
  for (std::size_t i = 0; i < litres.size(); ++i) {
    if (litres[i].empty()) continue;
    figures::LitreRow row{sheets::deckLetter(i) + "\u00A0\u00A0" + x.c.job.areas[i].name, {}};
    for (const auto n : litres[i]) row.coats.push_back({n * step});
    rows.push_back(std::move(row));
  }
  return figures::litresChart(rows, pen, width);
}

typeset::Drawing priceChartOf(const sheets::Computed& x, const figures::Pen& pen, typeset::Dim width) {
  const sheets::Words w(*x.c.region, x.language);
  const auto& price = x.price;
  std::map<About, base::Money> sums;
  for (const auto& line : price.lines) sums[aboutOf(line)] += line.amount;
  // Thousandths of a coin, so that the largest remainders get the coins that rounding leaves over.
  constexpr std::int64_t coin = 1000;
  std::vector<std::int64_t> shares;
  for (const auto& [about, sum] : sums)
    shares.push_back(price.subtotal.minor <= 0 ? 0
                                               : base::mulDiv(price.net.minor * coin, sum.minor,
                                                              price.subtotal.minor, base::Round::HalfUp));
  const auto coins = sheets::apportioned(shares, coin);
  std::vector<figures::PricePart> parts;
  const auto add = [&](About about, base::Money amount) {
    if (amount.minor > 0) parts.push_back({about, nameOf(about, x, w), amount, w.money(amount)});
  };
  std::size_t i = 0;
  for (const auto& [about, sum] : sums) add(about, {coins[i++]});
  add(About::Tax, price.tax);
  const std::string name = price.discount.minor > 0
                               ? w("price_chart.total_less", {{"discount", w.share(x.c.job.price.discount)}})
                               : w("price_chart.total");
  return figures::priceChart(parts, {name, w.signedMoney(price.total)}, pen, width);
}

}  // namespace app
