// Sizes, litres, tins, hours, costs and price of a job. Exact; pure functions from value to value.
#pragma once

#include "model/estimate.h"

namespace estimate {

// ---- measuring (measure.cpp)

/// Area and perimeter of one shape. Polygons by the shoelace formula; triangles by Heron's; circles with pi
/// to 15 digits. Lengths are exact, areas rounded once to the square micrometre.
struct Flat {
  base::Area area;
  base::Length perimeter;
};
Flat measureShape(const model::Shape& shape);

/// Width and height of the smallest upright box around a shape as it lies on the plan.
model::Place extent(const model::Shape& shape);

/// True when no two edges of the outline touch or cross but at their common corner. At least three points.
bool isSimple(const std::vector<model::Place>& points);

model::Measures measureDeck(const model::Deck& deck);

// ---- litres (coverage.cpp)

/// Spreading rate of each coat of a deck: the job's own rates, or the product's table for the uptake of
/// timber and state; a test patch replaces the first and scales the later ones in the same proportion.
std::vector<model::CoatNeed> coatsOf(const model::Case& c, const model::Content& content, std::size_t deck,
                                     const model::Measures& measures);

// ---- tins (tins.cpp)

/// The cheapest set of tins that holds at least 'need'; among equals the fewest tins, then the least left
/// over. Exact for any sizes and prices. An empty set for no need; 'tins' must not be empty and hold sizes
/// above zero.
model::TinSet cheapestTins(base::Volume need, const std::vector<model::Tin>& tins);

// ---- money (tax.cpp)

/// Tax on net amounts by a region's rule: on their sum, or on each line and then added up.
base::Money tax(const std::vector<base::Money>& net, const model::TaxRule& rule);
/// The tax contained in an amount that includes it: 1/11 at 10 %, 3/23 at 15 %.
base::Money taxWithin(base::Money gross, const model::TaxRule& rule);
/// Digits after the point of a currency's smallest coin, by ISO 4217; nothing for an unknown code.
std::optional<int> currencyDigits(const std::string& code);

// ---- the whole

/// Everything but money. 'days' is the number of days on site: 0 for a first pass, before there is a plan.
model::Estimate makeEstimate(const model::Case& c, const model::Content& content, int days);

/// The quote's lines, discount, tax, total, deposit and stages, and the costs behind them.
model::Price makePrice(const model::Case& c, const model::Content& content, const model::Estimate& e);

}  // namespace estimate
