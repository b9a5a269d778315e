// A computed job becomes the charts of its documents.
#pragma once

#include "app/compute.h"
#include "figures/figures.h"

namespace app {

/// Where the litres go, in the figures of the litre table.
typeset::Drawing litresChartOf(const Computation& x, const Shipped& shipped, const figures::Pen& pen,
                               typeset::Dim width);

/// What the price is made of: the lines of the quote by kind, each less its share of the discount, and the
/// tax. Holds no cost.
typeset::Drawing priceChartOf(const Computation& x, const figures::Pen& pen, typeset::Dim width);

}  // namespace app
