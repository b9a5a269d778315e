// A computed job becomes the charts of its documents.
#pragma once

#include "drawings/drawings.h"
#include "model/job_result.h"
#include "typeset/drawing_request.h"

namespace app {

/// Where the litres go, in the figures of the litre table.
typeset::Drawing litresChartOf(const model::JobResult& x, const drawings::Pen& pen, typeset::Dim width);

/// What the price is made of: the lines of the quote by kind, each less its share of the discount, and the
/// tax. Holds no cost.
typeset::Drawing priceChartOf(const model::JobResult& x, const drawings::Pen& pen, typeset::Dim width);

/// 'gauge-noise', 'gauge-vibration' and 'gauge-heat': the hardest day on scales of 70 to 100 dB(A), 0 to
/// 7.5 m/s2 and 10 to 50 C, with the region's levels marked. Where it names none there is no drawing.
void addGauges(typeset::Drawings& drawings, const model::JobResult& x, const drawings::Pen& pen);

}  // namespace app
