#include "app/pack/charts.h"

#include "base/units.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

using typeset::Dim;
using About = drawings::PricePart::About;

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

std::string nameOf(About about, const model::JobResult& x, const sheets::Formatter& w) {
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

/// A scale from one value to another, in the units of the values.
struct Scale {
  double from, to;

  drawings::Gauge with(double value, const std::vector<double>& marks) const {
    const auto on = [&](double v) { return static_cast<int>(std::lround((v - from) / (to - from) * 1000)); };
    drawings::Gauge gauge{on(value), {}};
    for (const double mark : marks) gauge.marks.push_back(on(mark));
    return gauge;
  }
};

template <class Day, class Value>
double highest(const std::vector<Day>& days, Value value) {
  double most = 0;
  for (const auto& day : days) most = std::max(most, value(day));
  return most;
}

}  // namespace

void addGauges(typeset::Drawings& drawings, const model::JobResult& x, const drawings::Pen& pen) {
  const auto& e = x.exposure;
  const auto& limits = e.limits;
  const auto add = [&](const char* name, const Scale& scale, double value, const std::vector<double>& marks) {
    if (!marks.empty()) drawings.emplace(name, drawings::gauge(scale.with(value, marks), pen, Dim::mm(30)));
  };
  std::vector<double> marks;
  for (const auto& level : {limits.noise.lower, limits.noise.upper}) {
    if (level) marks.push_back(*level);
  }
  add("gauge-noise", {70, 100}, highest(e.noise, [](const auto& d) { return d.level; }), marks);
  marks.clear();
  for (const auto& value : {limits.vibration.action, limits.vibration.limit}) {
    if (value) marks.push_back(base::floating(*value));
  }
  add("gauge-vibration", {0, 7.5}, highest(e.vibration, [](const auto& d) { return d.a8; }), marks);
  // The bands of the heat index begin at 80, 90 and 103 F.
  const auto celsius = [](double fahrenheit) { return (fahrenheit - 32) / 1.8; };
  add("gauge-heat", {10, 50}, highest(e.heat, [](const auto& d) { return d.celsius; }),
      {celsius(80), celsius(90), celsius(103)});
}

typeset::Drawing litresChartOf(const model::JobResult& x, const drawings::Pen& pen, typeset::Dim width) {
  const sheets::Formatter w(*x.c.region, x.language);
  const auto litres = sheets::printedLitres(x, w);
  const std::int64_t step = w.isMetric() ? 100'000 : 10'000;  // millionths of a litre or a gallon
  std::vector<drawings::LitreRow> rows;
  for (std::size_t i = 0; i < litres.size(); ++i) {
    if (litres[i].empty()) continue;
    drawings::LitreRow row{sheets::deckLetter(i) + "\u00A0\u00A0" + x.c.job.areas[i].name, {}};
    for (const auto n : litres[i]) row.coats.push_back({n * step});
    rows.push_back(std::move(row));
  }
  return drawings::litresChart(rows, pen, width);
}

typeset::Drawing priceChartOf(const model::JobResult& x, const drawings::Pen& pen, typeset::Dim width) {
  const sheets::Formatter w(*x.c.region, x.language);
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
  std::vector<drawings::PricePart> parts;
  const auto add = [&](About about, base::Money amount) {
    if (amount.minor > 0) parts.push_back({about, nameOf(about, x, w), amount, w.money(amount)});
  };
  std::size_t i = 0;
  for (const auto& [about, sum] : sums) add(about, {coins[i++]});
  add(About::Tax, price.tax);
  const std::string name = price.discount.minor > 0
                               ? w("price_chart.total_less", {{"discount", w.share(x.c.job.price.discount)}})
                               : w("price_chart.total");
  return drawings::priceChart(parts, {name, w.signedMoney(price.total)}, pen, width);
}

}  // namespace app
