// The days of a job at a glance, in words.
#pragma once

#include "drawings/drawings.h"
#include "sheets/facts/day_parts.h"

namespace app {

/// Every day from the first on site to the one the customer may walk on it.
std::vector<drawings::GlanceDay> glanceOf(const std::vector<sheets::Day>& days, const model::JobResult& x,
                                          const sheets::Formatter& w);

}  // namespace app
