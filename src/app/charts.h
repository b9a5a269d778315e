// A computed job becomes the charts of its documents.
#pragma once

#include "figures/figures.h"
#include "sheets/make_facts.h"

namespace app {

/// Where the litres go, in the figures of the litre table.
typeset::Drawing litresChartOf(const sheets::Computed& x, const figures::Pen& pen, typeset::Dim width);

/// What the price is made of: the lines of the quote by kind, each less its share of the discount, and the
/// tax. Holds no cost.
typeset::Drawing priceChartOf(const sheets::Computed& x, const figures::Pen& pen, typeset::Dim width);

}  // namespace app
